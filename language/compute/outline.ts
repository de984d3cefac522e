import type { Block, Item, Session } from '../model/definitions.ts'
import type { Prescription } from '../model/prescription.ts'
import type { Programme } from '../model/programme.ts'
import type { AddedByTimes, BlockOutline, PlannedItem, PlannedSession, PlannedWeek } from '../model/schedule.ts'
import { fills, lightened } from './outline/deload.ts'
import { type Placement, placementsOf } from './outline/placements.ts'
import { type PlannedGroup, plannedGroup, setsOf } from './outline/planned-group.ts'
import { type ChangeCounts, changeCounts, changed, noChanges, progressed } from './outline/progression.ts'
import { withLeadUps } from './outline/test-lead-up.ts'
import { firstMainItem, isComputedWarmUp, warmUpSets } from './outline/warm-up.ts'
import { covers, isThere, lineOf, weekCount } from './outline/week-choice.ts'

/** Every week, session, item and set of a block, without a lifter's numbers; kept until something that it read changes. */
export function outlineBlock(block: Block, programme: Programme): BlockOutline {
	return programme.derived(block, workOutOutline)
}

/** The same, worked out anew: for a block that a plan has changed, which is no definition of its own. */
export function workOutOutline(block: Block, programme: Programme, added?: AddedByTimes): BlockOutline {
	const placed = groupsBy(placedItems(block), one => one.week)
	const numbers = Array.from({ length: weekCount(block) }, (_, index) => index + 1)
	const drafts = new Map<number, WeekDraft>()
	// Training weeks first: a deload week is filled from one.
	for (const isDeload of [false, true]) {
		for (const week of numbers) {
			if (covers(block.deload?.weeks ?? [], week) !== isDeload) continue
			drafts.set(week, draftWeek(block, week, placed.get(week) ?? [], isDeload, drafts, added))
		}
	}
	const weeks = numbers.flatMap(week => finishWeek(drafts.get(week), programme, added))
	return { block, weeks }
}

/**
 * The nearest earlier week that is no deload and has work, at most 3 weeks back: what a deload week is filled from, and what a week's
 * loads and sets are compared with.
 */
export function lastTrainingWeek<T extends { readonly week: number; readonly deload: boolean; readonly hasWork: boolean }>(
	weeks: readonly T[],
	week: number,
): T | undefined {
	const earlier = weeks.filter(each => !each.deload && each.hasWork && each.week < week && each.week >= week - 3)
	return earlier.reduce<T | undefined>(
		(latest, each) => (latest === undefined || each.week > latest.week ? each : latest),
		undefined,
	)
}

/** A session on one of its days, and how often the changes of each of its items have acted by then. */
interface PlacedItems extends Placement {
	readonly counts: ReadonlyMap<Item, ChangeCounts>
}

function placedItems(block: Block): readonly PlacedItems[] {
	const placements = placementsOf(block)
	const counts = new Map<Placement, Map<Item, ChangeCounts>>(placements.map(placement => [placement, new Map()]))
	for (const [session, ofSession] of groupsBy(placements, placement => placement.session)) {
		for (const item of session.items) {
			const ofItem = changeCounts(item, block, ofSession)
			for (const [index, placement] of ofSession.entries()) counts.get(placement)?.set(item, ofItem[index] ?? noChanges)
		}
	}
	return placements.map(placement => ({ ...placement, counts: counts.get(placement) ?? new Map() }))
}

function groupsBy<T, K>(all: readonly T[], keyOf: (one: T) => K): ReadonlyMap<K, readonly T[]> {
	const groups = new Map<K, T[]>()
	for (const one of all) {
		const group = groups.get(keyOf(one))
		if (group) group.push(one)
		else groups.set(keyOf(one), [one])
	}
	return groups
}

/** An item on a day, before its groups are spread over sets. */
interface ItemDraft {
	readonly item: Item
	readonly from: PlannedItem['from'] | 'absent'
	readonly groups: readonly PlannedGroup[]
	readonly counts: ChangeCounts
	readonly filledFrom: number | undefined
}

interface SessionDraft extends Placement {
	readonly items: readonly ItemDraft[]
}

interface WeekDraft {
	readonly week: number
	readonly deload: boolean
	readonly hasWork: boolean
	readonly sessions: readonly SessionDraft[]
}

function draftWeek(
	block: Block,
	week: number,
	placed: readonly PlacedItems[],
	deload: boolean,
	drafts: ReadonlyMap<number, WeekDraft>,
	added: AddedByTimes | undefined,
): WeekDraft {
	const sessions = placed.map(({ counts, ...placement }): SessionDraft => {
		const { session } = placement
		const items = session.items.map((item, index) => {
			const source = deload ? sourceOf(session, index, week, [...drafts.values()]) : undefined
			return draftItem(item, block, week, counts.get(item) ?? noChanges, deload, source, added)
		})
		return { ...placement, items }
	})
	const hasWork = sessions.some(({ items }) => items.some(draft => isWorking(draft.item) && draft.groups.length > 0))
	return { week, deload, hasWork, sessions }
}

/** An item as it last was before a deload week: on the last day of its session in the last training week that has it. */
function sourceOf(session: Session, index: number, week: number, drafts: readonly WeekDraft[]): ItemSource | undefined {
	const itemIn = (draft: WeekDraft) => {
		const item = draft.sessions.findLast(one => one.session === session)?.items[index]
		return item?.from === 'absent' ? undefined : item
	}
	const last = lastTrainingWeek(
		drafts.filter(draft => itemIn(draft) !== undefined),
		week,
	)
	return last && { week: last.week, draft: itemIn(last) }
}

interface ItemSource {
	readonly week: number
	readonly draft: ItemDraft | undefined
}

function draftItem(
	item: Item,
	block: Block,
	week: number,
	counts: ChangeCounts,
	deload: boolean,
	source: ItemSource | undefined,
	added: AddedByTimes | undefined,
): ItemDraft {
	const draft = (
		from: ItemDraft['from'],
		groups: readonly PlannedGroup[],
		acted: ChangeCounts = noChanges,
		filledFrom?: number,
	): ItemDraft => {
		return { item, from, groups, counts: acted, filledFrom }
	}
	const groupsOf = (prescription: Prescription | undefined) =>
		(prescription?.groups ?? [])
			.map(group => plannedGroup(group, block.percentsOf?.value ?? 'best', item.role))
			.map(group => progressed(group, item.changes, counts))
			.map(group => (added ? changed(group, added.step, added.step.amount.mul(added.times)) : group))

	if (!isThere(item, week)) return draft('absent', [])
	const line = lineOf(item, week)
	if (line?.skip) return draft('skip', [])
	if (line !== undefined) return draft('week-line', groupsOf(line.prescription), counts)
	if (isComputedWarmUp(item)) return draft('computed-warm-up', [])
	const deloadLine = deload ? block.deload : undefined
	if (deloadLine !== undefined && fills(deloadLine)) {
		// A block that begins with its deload has no training week to go by: the prescription for every week is what there is.
		const model = source === undefined ? draft('every-week', groupsOf(item.everyWeek), counts) : source.draft
		const groups = (model?.groups ?? []).map(group => lightened(group, deloadLine))
		if (groups.length > 0) return draft('deload-fill', groups, model?.counts, source?.week)
		return draft(model?.from === 'skip' ? 'skip' : 'none', [])
	}
	return item.everyWeek === undefined ? draft('none', []) : draft('every-week', groupsOf(item.everyWeek), counts)
}

function finishWeek(draft: WeekDraft | undefined, programme: Programme, added: AddedByTimes | undefined): readonly PlannedWeek[] {
	if (draft === undefined) return []
	const { week, deload, hasWork } = draft
	const sessions = draft.sessions.map(({ session, day, items: drafts }): PlannedSession => {
		const items = drafts.flatMap(item => finishItem(item, programme, added))
		const main = firstMainItem(items)
		return {
			session,
			day,
			items: withLeadUps(items).map(planned =>
				planned.from === 'computed-warm-up' && planned.sets.length === 0
					? { ...planned, sets: warmUpSets(planned.item, planned.movement, main) }
					: planned,
			),
		}
	})
	return [{ week, deload, hasWork, sessions }]
}

function finishItem(
	{ item, from, groups, counts, filledFrom }: ItemDraft,
	programme: Programme,
	added: AddedByTimes | undefined,
): PlannedItem[] {
	if (from === 'absent') return []
	const sets = groups.flatMap(group => setsOf(group, item.role))
	const planned: PlannedItem = {
		item,
		role: item.role,
		movementName: item.movement,
		movement: programme.find('movement', item.movement.text),
		from,
		changeCount: counts.week,
		sessionChangeCount: counts.session,
		addedByTimes: added,
		filledFrom,
		sets,
		working: isWorking(item) && sets.length > 0,
	}
	return [planned]
}

/** Main, accessory or test: what counts for caps, needs and volume. */
function isWorking(item: Item): boolean {
	return item.role === 'main' || item.role === 'accessory' || item.role === 'test'
}
