import { exact } from '../../compute/exact.ts'
import { limitsFor } from '../../compute/limits.ts'
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
import { blockSessions, type PlacedSession, planSessions } from '../common/placed-sessions.ts'
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

/** A first item of fewer sets than this wakes up, and tires nobody (common practice). */
const wakingSets = 3
const half = exact('0.5')

function misplaced<S extends PlacedSession>(session: S, mark: HeavyMark): readonly Misplaced<S>[] {
	const items = session.items.filter(item => item.working)
	return items.flatMap((item, index): Misplaced<S>[] => {
		const earlier = items.slice(0, index)
		const later = items.slice(index + 1)
		const byFact = [
			...factsBroken(item, later, 'before').map(found => ({ session, item, ...found })),
			...factsBroken(item, earlier, 'after').map(found => ({ session, item, ...found })),
		]
		const others = earlier.filter(other => other.role === 'accessory' && !isBroken(other, item))
		return [...byFact, ...others.flatMap(other => afterAccessory(session, item, other, mark))]
	})
}

/** Main work of a pattern that the movement does not stand before, or after. */
function factsBroken(item: PlannedItem, others: readonly PlannedItem[], side: 'before' | 'after') {
	return (item.movement?.order ?? [])
		.filter(fact => fact.side === side)
		.flatMap(({ pattern }) => {
			const other = others.find(each => isMain(each) && each.movement?.pattern?.value === pattern)
			return other ? [{ other, why: { kind: 'fact' as const, side, pattern } }] : []
		})
}

/** Does the accessory's own definition say that it does not stand before that item? Then it is reported itself. */
function isBroken(accessory: PlannedItem, item: PlannedItem): boolean {
	return factsBroken(accessory, [item], 'before').length > 0
}

function afterAccessory<S extends PlacedSession>(
	session: S,
	item: PlannedItem,
	other: PlannedItem,
	mark: HeavyMark,
): Misplaced<S>[] {
	const shared = isMain(item) && !isTogether(session, item, other) && !wakesUp(session, other) && sharedWork(item, other)
	if (shared) return [{ session, item, other, why: { kind: 'main-after-accessory', shared } }]
	const isHeavyAfter = mark.percent !== undefined && isHeavy(item, mark.percent, mark.estimator) && isTiring(other)
	return isHeavyAfter ? [{ session, item, other, why: { kind: 'heavy-after-tiring' } }] : []
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

/** Back to back in one group. */
function isTogether(session: PlacedSession, item: PlannedItem, other: PlannedItem): boolean {
	const groupOf = (wanted: PlannedItem) => {
		let group = 0
		for (const each of session.items) {
			if (!each.item.withItemAbove) group++
			if (each === wanted) break
		}
		return group
	}
	return groupOf(item) === groupOf(other)
}

function wakesUp(session: PlacedSession, accessory: PlannedItem): boolean {
	const first = session.items.find(item => item.working)
	return first === accessory && accessory.sets.filter(set => !set.optional).length < wakingSets
}

/** Once a week and no more, or a stability movement that loads the back. */
function isTiring(item: PlannedItem): boolean {
	const { movement } = item
	const loadsBack = muscles(movement).some(muscle => muscle === 'erectors' || muscle === 'upper-back')
	return isOnceAWeek(item) || (movement?.trains?.value[0] === 'stability' && loadsBack)
}

function markFor(lifter: string | undefined, programme: Programme): HeavyMark {
	const { heavy, estimator } = limitsFor(lifter, programme)
	return { percent: heavy?.value.fromPercent, estimator: estimator?.value ?? 'epley', origin: heavy?.origin ?? 'common practice' }
}

function inBlock(block: Block, programme: Programme): readonly Misplaced<PlacedSession>[] {
	return programme.derived(block, workOutInBlock)
}

function workOutInBlock(block: Block, programme: Programme): readonly Misplaced<PlacedSession>[] {
	const mark = markFor(undefined, programme)
	return blockSessions(block, programme).flatMap(session => misplaced(session, mark))
}

function checkBlock(block: Block, programme: Programme): Finding[] {
	return groupedBy(inBlock(block, programme), one => String(one.item.item.span.start)).map(same => {
		const places = same.map(({ other }) => ({
			definition: block,
			span: headOf(other.item),
			message: 'The other one stands here.',
		}))
		return { span: headOf(same[0].item.item), ...said(same, programme, undefined), related: distinctPlaces(places) }
	})
}

/** What a plan's changes, and its lifter's loads, bring into the wrong order. */
function checkPlan(plan: Plan, programme: Programme): Finding[] {
	const mark = markFor(plan.lifter.text, programme)
	const key = ({ session, item, other }: Misplaced<PlacedSession>) =>
		`${session.session.name.text} ${session.blockWeek} ${item.movementName.text} ${other.movementName.text}`
	const own = planSessions(plan, programme)
		.flatMap(session => misplaced(session, mark))
		.filter(one => !inBlock(one.session.run.block, programme).some(known => key(known) === key(one)))
	const cause = ({ session, item }: Misplaced<(typeof own)[number]['session']>) =>
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
	lifter: string | undefined,
): Pick<Finding, 'message' | 'source'> {
	const [{ item, why }] = same
	const title = titleOfItem(item)
	const weeks = weeksInWords(same.map(one => one.session.blockWeek))
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
	const mark = markFor(lifter, programme)
	const what = isMainWork ? `${title}, main work,` : `${title}, heavy work from ${mark.percent?.toString() ?? ''}%,`
	const origin = isMainWork ? 'common practice' : mark.origin
	return {
		message: `${what} comes after ${inWords(parts)} in ${weeks}; what asks for most comes first (${origin}). Put it in front.`,
		source: origin,
	}
}
