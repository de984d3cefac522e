import type { Block, Item } from '../model/definitions.ts'
import type { Prescription } from '../model/prescription.ts'
import type { Programme } from '../model/programme.ts'
import type { BlockOutline, PlannedItem, PlannedSession, PlannedWeek } from '../model/schedule.ts'
import { fills, lightened } from './outline/deload.ts'
import { type PlannedGroup, plannedGroup, setsOf } from './outline/planned-group.ts'
import { changeCount, progressed } from './outline/progression.ts'
import { firstMainItem, isComputedWarmUp, warmUpSets } from './outline/warm-up.ts'
import { covers, isProgressed, lineOf, weekCount } from './outline/week-choice.ts'

/** Every week, session, item and set of a block, without a lifter's numbers; kept until something that it read changes. */
export function outlineBlock(block: Block, programme: Programme): BlockOutline {
	return programme.derived(block, workOutOutline)
}

/** The same, worked out anew: for a block that a plan has changed, which is no definition of its own. */
export function workOutOutline(block: Block, programme: Programme): BlockOutline {
	const numbers = Array.from({ length: weekCount(block) }, (_, index) => index + 1)
	const drafts = new Map<number, WeekDraft>()
	// Training weeks first: a deload week is filled from one.
	for (const isDeload of [false, true]) {
		for (const week of numbers) {
			if (covers(block.deload?.weeks ?? [], week) === isDeload) drafts.set(week, draftWeek(block, week, isDeload, drafts))
		}
	}
	const weeks = numbers.flatMap(week => finishWeek(block, drafts.get(week), programme))
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

/** An item in a week, before its groups are spread over sets. */
interface ItemDraft {
	readonly item: Item
	readonly from: PlannedItem['from']
	readonly groups: readonly PlannedGroup[]
	readonly changeCount: number
	readonly filledFrom: number | undefined
}

interface WeekDraft {
	readonly week: number
	readonly deload: boolean
	readonly hasWork: boolean
	readonly items: ReadonlyMap<Item, ItemDraft>
}

function draftWeek(block: Block, week: number, deload: boolean, drafts: ReadonlyMap<number, WeekDraft>): WeekDraft {
	const source = deload ? lastTrainingWeek([...drafts.values()], week) : undefined
	const items = new Map<Item, ItemDraft>()
	for (const session of block.sessions) {
		for (const item of session.items) items.set(item, draftItem(item, block, week, deload, source))
	}
	const hasWork = [...items.values()].some(draft => isWorking(draft.item) && draft.groups.length > 0)
	return { week, deload, hasWork, items }
}

function draftItem(item: Item, block: Block, week: number, deload: boolean, source: WeekDraft | undefined): ItemDraft {
	const draft = (from: ItemDraft['from'], groups: readonly PlannedGroup[], changes = 0, filledFrom?: number): ItemDraft => {
		return { item, from, groups, changeCount: changes, filledFrom }
	}
	const groupsOf = (prescription: Prescription | undefined, changes: number) =>
		(prescription?.groups ?? [])
			.map(group => plannedGroup(group, block.percentsOf?.value ?? 'best'))
			.map(group => progressed(group, item.changes, changes))

	const line = lineOf(item, week)
	if (line?.skip) return draft('skip', [])
	const count = isProgressed(item, line) ? changeCount(item, block, week) : 0
	if (line !== undefined) return draft('week-line', groupsOf(line.prescription, count), count)
	if (isComputedWarmUp(item)) return draft('computed-warm-up', [])
	const deloadLine = deload ? block.deload : undefined
	if (deloadLine !== undefined && fills(deloadLine)) {
		// A block that begins with its deload has no training week to go by: the prescription for every week is what there is.
		const model = source === undefined ? draft('every-week', groupsOf(item.everyWeek, count), count) : source.items.get(item)
		const groups = (model?.groups ?? []).map(group => lightened(group, deloadLine))
		if (groups.length > 0) return draft('deload-fill', groups, model?.changeCount, source?.week)
		return draft(model?.from === 'skip' ? 'skip' : 'none', [])
	}
	return item.everyWeek === undefined ? draft('none', []) : draft('every-week', groupsOf(item.everyWeek, count), count)
}

function finishWeek(block: Block, draft: WeekDraft | undefined, programme: Programme): readonly PlannedWeek[] {
	if (draft === undefined) return []
	const { week, deload, hasWork } = draft
	const sessions = block.sessions.map((session): PlannedSession => {
		const items = session.items.flatMap(item => finishItem(draft.items.get(item), programme))
		const main = firstMainItem(items)
		return {
			session,
			items: items.map(planned =>
				planned.from === 'computed-warm-up' ? { ...planned, sets: warmUpSets(planned.item, planned.movement, main) } : planned,
			),
		}
	})
	return [{ week, deload, hasWork, sessions }]
}

function finishItem(draft: ItemDraft | undefined, programme: Programme): readonly PlannedItem[] {
	if (draft === undefined) return []
	const { item, from, groups, changeCount, filledFrom } = draft
	const sets = groups.flatMap(group => setsOf(group, item.role))
	return [
		{
			item,
			role: item.role,
			movementName: item.movement,
			movement: programme.find('movement', item.movement.text),
			from,
			changeCount,
			filledFrom,
			sets,
			working: isWorking(item) && sets.length > 0,
		},
	]
}

/** Main, accessory or test: what counts for caps, needs and volume. */
function isWorking(item: Item): boolean {
	return item.role === 'main' || item.role === 'accessory' || item.role === 'test'
}
