import { exact } from '../../compute/exact.ts'
import { type LimitsOf, limitsFor } from '../../compute/limits.ts'
import type { Block, Movement, Plan } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { Exact } from '../../model/quantities.ts'
import type { PlannedItem, ScheduledItem } from '../../model/schedule.ts'
import type { Estimator } from '../../model/vocabulary.ts'
import { titleOfItem } from '../common/exposures.ts'
import { groupedBy } from '../common/groups.ts'
import { isHeavy, isOnceAWeek } from '../common/heavy.ts'
import { originOf } from '../common/origins.ts'
import { blockSessions, type DatedSession, type PlacedSession, planSessions } from '../common/placed-sessions.ts'
import { distinctPlaces, headOf, placeOfItem } from '../common/places.ts'
import { weeksInWords } from '../common/weeks.ts'
import { inWords } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import page from './order-in-session.md'

export const orderInSession: Rule = {
	code: 'order-in-session',
	area: 'shape',
	level: 'warning',
	summary: 'An item stands before or after one that it should not.',
	source: 'the `not before` and `not after` of the movements; common practice',
	fix: 'none',
	since: '0.1.0',
	page,
	check: { block: checkBlock, plan: checkPlan },
}

/** Two items in the wrong order. */
interface Misplaced<S extends PlacedSession> {
	readonly session: S
	/** The one that is reported. */
	readonly item: PlannedItem
	readonly other: PlannedItem
	readonly why: /** Its own definition says so. */
		| { readonly kind: 'fact'; readonly side: 'before' | 'after'; readonly pattern: string }
		/** Main work after an accessory for the same. */
		| { readonly kind: 'main-after-accessory'; readonly shared: string }
		/** A heavy set after work that tires the back. */
		| { readonly kind: 'heavy-after-tiring' }
}

interface HeavyMark {
	readonly percent: Exact | undefined
	readonly estimator: Estimator
	readonly origin: string
}

/** A first item of fewer sets wakes up, and tires nobody (common practice). */
const wakingSets = 3
const half = exact('0.5')

/** Of several accessories of one movement the first stands for all: a session may be long. */
function misplaced<S extends PlacedSession>(session: S, mark: HeavyMark): readonly Misplaced<S>[] {
	const items = session.items.filter(item => item.working)
	const waking = items[0] && countSure(items[0]) < wakingSets ? items[0] : undefined
	const groupOf = groupsOf(session)
	const place = new Map(items.map((item, index) => [item, index]))
	const lastMain = new Map(items.filter(isMain).map(item => [item.movement?.pattern?.value, item]))
	const firstMain = new Map<string | undefined, PlannedItem>()
	const accessories = new Map<string, PlannedItem>()
	return items.flatMap((item, index): Misplaced<S>[] => {
		const byFact = (item.movement?.order ?? []).flatMap(({ side, pattern }): Misplaced<S>[] => {
			const other = side === 'before' ? lastMain.get(pattern) : firstMain.get(pattern)
			const isBroken = other !== undefined && (side === 'after' || (place.get(other) ?? 0) > index)
			return isBroken ? [{ session, item, other, why: { kind: 'fact', side, pattern } }] : []
		})
		const byOrder = [...accessories.values()]
			.filter(other => !saysSo(other, item))
			.flatMap((other): Misplaced<S>[] => {
				const isApart = groupOf.get(item) !== groupOf.get(other) && other !== waking
				const shared = isMain(item) && isApart ? sharedWork(item, other) : undefined
				if (shared !== undefined) return [{ session, item, other, why: { kind: 'main-after-accessory', shared } }]
				const isHeavyAfter = mark.percent !== undefined && isTiring(other) && isHeavy(item, mark.percent, mark.estimator)
				return isHeavyAfter ? [{ session, item, other, why: { kind: 'heavy-after-tiring' } }] : []
			})
		const { movementName, movement, role } = item
		if (isMain(item) && !firstMain.has(movement?.pattern?.value)) firstMain.set(movement?.pattern?.value, item)
		if (role === 'accessory' && !accessories.has(movementName.text)) accessories.set(movementName.text, item)
		return [...byFact, ...byOrder]
	})
}

/** Does the accessory's own definition say that it does not stand before that item? Then it is reported itself. */
function saysSo({ movement }: PlannedItem, item: PlannedItem): boolean {
	if (!isMain(item)) return false
	return movement?.order.some(fact => fact.side === 'before' && fact.pattern === item.movement?.pattern?.value) ?? false
}

/** Items that go back to back are of one group. */
function groupsOf({ items }: PlacedSession): ReadonlyMap<PlannedItem, number> {
	let group = 0
	return new Map(items.map(item => [item, item.item.withItemAbove ? group : ++group]))
}

function countSure({ sets }: PlannedItem): number {
	return sets.filter(set => !set.optional).length
}

function isMain({ role }: PlannedItem): boolean {
	return role === 'main' || role === 'test'
}

/** "the pattern hinge", "hamstrings and glutes"; nothing where they share none. */
function sharedWork(item: PlannedItem, other: PlannedItem): string | undefined {
	const pattern = item.movement?.pattern?.value
	if (pattern !== undefined && pattern !== 'other' && pattern === other.movement?.pattern?.value) return `the pattern ${pattern}`
	const ofOther = muscles(other.movement)
	const shared = muscles(item.movement).filter(muscle => ofOther.includes(muscle))
	return shared.length === 0 ? undefined : inWords(shared)
}

function muscles(movement: Movement | undefined): readonly string[] {
	return (movement?.muscles ?? []).filter(({ share }) => share.compare(half) >= 0).map(({ muscle }) => muscle)
}

/** Once a week and no more, or a stability movement that loads the back. */
function isTiring(item: PlannedItem): boolean {
	const { movement } = item
	const loadsBack = muscles(movement).some(muscle => muscle === 'erectors' || muscle === 'upper-back')
	return isOnceAWeek(item) || (movement?.trains?.value[0] === 'stability' && loadsBack)
}

function markFor(whose: LimitsOf, programme: Programme): HeavyMark {
	const { heavy, estimator } = limitsFor(whose, programme)
	return { percent: heavy?.value.fromPercent, estimator: estimator?.value ?? 'epley', origin: heavy?.origin ?? 'common practice' }
}

function inBlock(block: Block, programme: Programme): readonly Misplaced<PlacedSession>[] {
	return programme.derived(block, workOutInBlock)
}

function workOutInBlock(block: Block, programme: Programme): readonly Misplaced<PlacedSession>[] {
	const mark = markFor(block, programme)
	return blockSessions(block, programme).flatMap(session => misplaced(session, mark))
}

function checkBlock(block: Block, programme: Programme): Finding[] {
	return groupedBy(inBlock(block, programme), one => String(one.item.item.span.start)).map(same => {
		const places = same.map(({ other }) => ({
			definition: block,
			span: headOf(other.item),
			message: 'The other one stands here.',
		}))
		return { span: headOf(same[0].item.item), ...said(same, programme, block), related: distinctPlaces(places) }
	})
}

/** What a plan's changes, and its lifter's loads, bring into the wrong order. */
function checkPlan(plan: Plan, programme: Programme): Finding[] {
	const mark = markFor(plan.lifter.text, programme)
	const key = ({ session, item, other }: Misplaced<PlacedSession>) =>
		`${session.session.name.text} ${session.blockWeek} ${item.movementName.text} ${other.movementName.text}`
	const known = new Map<Block, ReadonlySet<string>>()
	const isInBlock = (one: Misplaced<DatedSession>) => {
		const { block } = one.session.run
		const keys = known.get(block) ?? new Set(inBlock(block, programme).map(key))
		known.set(block, keys)
		return keys.has(key(one))
	}
	const own = planSessions(plan, programme)
		.flatMap(session => misplaced(session, mark))
		.filter(one => !isInBlock(one))
	const cause = ({ session, item }: Misplaced<DatedSession>) =>
		`${session.run.monday} ${session.session.name.text} ${item.movementName.text}`
	return groupedBy(own, cause).map(same => {
		const places = same.flatMap(({ item, other, session }) => [
			placeOfItem(item as ScheduledItem, session, `${titleOfItem(item)} stands here.`),
			placeOfItem(other as ScheduledItem, session, `${titleOfItem(other)} stands here.`),
		])
		return { span: same[0].session.run.run.header, ...said(same, programme, plan.lifter.text), related: distinctPlaces(places) }
	})
}

function said(
	same: readonly [Misplaced<PlacedSession>, ...Misplaced<PlacedSession>[]],
	programme: Programme,
	whose: LimitsOf,
): Pick<Finding, 'message' | 'source'> {
	const [{ item, why }] = same
	const title = titleOfItem(item)
	const weeks = weeksInWords(same.map(one => one.session.runWeek))
	const titles = (ones: readonly Misplaced<PlacedSession>[]) => inWords([...new Set(ones.map(one => titleOfItem(one.other)))])
	if (why.kind === 'fact') {
		const ofKind = same.filter(one => one.why.kind === 'fact')
		const origin = item.movement ? originOf(item.movement, programme) : 'common practice'
		return {
			message: `${title} stands ${why.side} ${titles(ofKind)} in ${weeks}; its definition says not ${why.side} main work of the pattern ${why.pattern} (${origin}). Put it ${why.side === 'before' ? 'behind' : 'in front'}.`,
			source: origin,
		}
	}
	const parts = groupedBy(same, one => `${one.why.kind} ${one.other.movementName.text}`).map(ones => {
		const [one] = ones
		const other = titleOfItem(one.other)
		if (one.why.kind === 'main-after-accessory') return `${other} (both train ${one.why.shared})`
		return isOnceAWeek(one.other) ? `${other} (once a week, for it tires)` : `${other} (it tires the back)`
	})
	const isMainWork = same.some(one => one.why.kind === 'main-after-accessory')
	const mark = markFor(whose, programme)
	const what = isMainWork ? `${title}, main work,` : `${title}, heavy work from ${mark.percent?.toString() ?? ''}%,`
	const origin = isMainWork ? 'common practice' : mark.origin
	return {
		message: `${what} comes after ${inWords(parts)} in ${weeks}; what asks for most comes first (${origin}). Put it in front.`,
		source: origin,
	}
}
