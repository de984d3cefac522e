import { daysBetween } from '../../compute/calendar.ts'
import { compare, decimal, exact, hundred, larger, one, smaller, zero } from '../../compute/exact.ts'
import { implementFor } from '../../compute/implement.ts'
import { type Limit, limitsFor } from '../../compute/limits.ts'
import { loadableStep } from '../../compute/loading.ts'
import { massText } from '../../compute/mass.ts'
import { lastTrainingWeek } from '../../compute/outline.ts'
import { leastPercent, mostPercent } from '../../compute/percents.ts'
import { compareDays } from '../../compute/session-days.ts'
import type { Block, Lifter } from '../../model/definitions.ts'
import type { SetGroup } from '../../model/prescription.ts'
import type { Finding, RelatedPlace } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { Exact } from '../../model/quantities.ts'
import { titleOfItem } from '../common/exposures.ts'
import { groupedBy } from '../common/groups.ts'
import { liftOf } from '../common/heavy.ts'
import { liftedKilograms } from '../common/lifted.ts'
import { withoutLoneDeloads } from '../common/lone-deloads.ts'
import type { DatedSession, PlacedSession } from '../common/placed-sessions.ts'
import { headOf, placeOfItem } from '../common/places.ts'
import { type Proposal, soundOnes, withGroups, withItem } from '../common/proposals.ts'
import { findingsOn, type PlanFinding } from '../common/run-findings.ts'
import { isTested, type Measure, type TopLoad, topLoads } from '../common/top-loads.ts'
import { blockWeeks, type CalendarWeek, calendarWeeks, type WeekInRow } from '../common/week-rows.ts'
import { weeksInWords } from '../common/weeks.ts'
import type { Rule } from '../rule.ts'
import page from './load-jump.md'
import { loadSpan } from './rep-max.ts'

const code = 'load-jump'

export const loadJump: Rule = {
	code,
	area: 'dose',
	level: 'warning',
	summary: 'The top load of a movement rises from one training week to the next by more than the limit.',
	source: 'the `load rises at most …% a week` of the limits',
	fix: 'to confirm',
	since: '0.1.0',
	page,
	check: {
		block: checkBlock,
		plan: (plan, programme) => findingsOn(plan, programme, ofLifter),
	},
}

/** Two top loads of a movement, and by how much they differ. */
interface Jump<S extends PlacedSession> {
	readonly before: TopLoad<S>
	readonly now: TopLoad<S>
	/** At fewer reps it is the max that they ask for that counts. */
	readonly byMax: boolean
	/** Percent by which it rises. */
	readonly rise: Exact
	/** Week against week, of work that goes up each session. */
	readonly isBySession: boolean
}

/** So many days without work are a break: what comes after it is another rule's. */
const breakDays = 14

/** Under half of the max a few points more are a great part of little: the rise is taken of this percent at least (common practice). */
const leastShare = exact(50)

/** What goes up each session may go up in a week by so many times the limit: beginners do (common practice). */
const timesBySession = exact(2)

/** What is no jump from a load of one of so many weeks before is none, be there a lighter week between. */
const weeksBack = 4

/** @param half The least that the rise is taken of, in the measure of the loads; `undefined` where the max is not known. */
function jumpOf<S extends PlacedSession>(
	{ before, now, steps }: Comparison<S>,
	limit: Exact,
	half: Exact | undefined,
): Jump<S> | undefined {
	if (before.kind !== now.kind || before.load.to.compare(zero) <= 0) return undefined
	const byMax = now.amount.compare(before.amount) < 0
	// Only reps have a max to compare.
	if (byMax && now.kind !== 'reps') return undefined
	const [is, was] = byMax
		? [maxOf(now.load.from, now.amount), maxOf(before.load.to, before.amount)]
		: [now.load.from, before.load.to]
	const of = byMax || half === undefined ? was : larger(was, half)
	const isBySession = steps !== undefined
	const most = isBySession ? limit.mul(timesBySession) : limit
	if (is.sub(was).div(of).mul(hundred).compare(most) <= 0) return undefined
	return { before, now, byMax, rise: is.div(was).sub(one).mul(hundred), isBySession }
}

/** Is it no jump from what was done in one of the weeks before: for as many reps or more, or at as high a max? */
function isHandled<S extends PlacedSession>(
	{ now }: Jump<S>,
	week: number,
	weeks: readonly WeekInRow<S>[],
	measure: Measure<S>,
	limit: Exact,
	half: Exact | undefined,
): boolean {
	return weeks.some(each => {
		const isRecent = each.week < week && each.week >= week - weeksBack
		const top = isRecent ? topLoads(each.sessions, measure).get(now.item.movementName.text) : undefined
		if (top?.kind !== now.kind || top.load.to.compare(zero) <= 0) return false
		if (top.amount.compare(now.amount) >= 0) return jumpOf({ before: top, now }, limit, half) === undefined
		return now.kind === 'reps' && maxOf(top.load.from, top.amount).compare(maxOf(now.load.from, now.amount)) >= 0
	})
}

/** The max that a load for so many reps asks for. Source: Epley 1985 (formula from memory). */
function maxOf(load: Exact, reps: Exact): Exact {
	return load.mul(one.add(reps.div(exact(30))))
}

/** Two top loads of a movement of which the later is held against the earlier. */
interface Comparison<S extends PlacedSession> {
	readonly before: TopLoad<S>
	readonly now: TopLoad<S>
	/** Of work that goes up each session, week against week: how it came from one to the other, each time over the heaviest before. */
	readonly steps?: readonly Comparison<S>[]
}

/**
 * A week's top loads beside those of the last training week; of work that goes up each session first each beside the session before it,
 * be it in the same week.
 */
function comparisons<S extends PlacedSession>(
	last: readonly S[],
	week: readonly S[],
	measure: Measure<S>,
): readonly (readonly Comparison<S>[])[] {
	const before = topLoads(last, measure)
	return [...topLoads(week, measure)].map(([movement, now]) => {
		const base = before.get(movement)
		const own = (session: S): S => ({
			...session,
			items: (session.items as readonly S['items'][number][]).filter(item => item.movementName.text === movement),
		})
		const isBySession = week.some(session =>
			own(session).items.some(item => item.item.changes.some(one => one.each === 'session')),
		)
		if (!isBySession) return base ? [{ before: base, now }] : []
		const known = [...inOrder(last), ...inOrder(week)].flatMap(session => {
			const top = topLoads([own(session)], measure).get(movement)
			return top ? [{ isNow: week.includes(session), session, top }] : []
		})
		// Another item's session before it may be the lighter day of the week: then the heaviest since the week before counts.
		const heaviestBefore = (index: number) =>
			topLoads(
				known.slice(0, index).map(one => own(one.session)),
				measure,
			).get(movement)
		const bySession = known.flatMap(({ isNow, top }, index): Comparison<S>[] => {
			const earlier = known[index - 1]?.top
			const heaviest = earlier?.item.item === top.item.item ? earlier : base && heaviestBefore(index)
			return isNow && heaviest ? [{ before: heaviest, now: top }] : []
		})
		if (base === undefined) return bySession
		const steps = known.flatMap(({ isNow, top }, index): Comparison<S>[] => {
			const heaviest = heaviestBefore(index)
			return isNow && heaviest ? [{ before: heaviest, now: top }] : []
		})
		return [...bySession, { before: base, now, steps }]
	})
}

function inOrder<S extends PlacedSession>(sessions: readonly S[]): readonly S[] {
	return sessions.toSorted((a, b) => (a.placed && b.placed ? compareDays(a.placed, b.placed) : 0))
}

// In a block ---------------------------------------------------------------------------------------------------------------------------

function jumpsInBlock(block: Block, programme: Programme): readonly Jump<PlacedSession>[] {
	return programme.derived(block, workOutInBlock)
}

/** By percent alone: kilograms wait for the lifter's gym, whose steps they go up by. */
function workOutInBlock(block: Block, programme: Programme): readonly Jump<PlacedSession>[] {
	const { loadRise, estimator } = limitsFor(block, programme)
	const formula = estimator?.value ?? 'epley'
	if (loadRise === undefined) return []
	const measure: Measure<PlacedSession> = (set, item) => {
		// On top of bodyweight a percent of what is added says little of the whole: the lifter's plan knows it.
		if (item.movement?.loadAdded) return undefined
		const from = leastPercent(set, item, formula)
		const to = mostPercent(set, item, formula)
		return from && to && { from, to }
	}
	const weeks = blockWeeks(block, programme)
	return weeks.flatMap(week => {
		if (week.deload) return []
		const last = lastTrainingWeek(weeks, week.week)
		const base = last !== undefined && !isBreak(last, week, weeks) ? last : undefined
		const between = weeks.filter(each => each.week >= (base ?? week).week && each.week <= week.week)
		return comparisons(base?.sessions ?? [], week.sessions, measure).flatMap(ofMovement => {
			const jumps = ofMovement.flatMap((comparison): Jump<PlacedSession>[] => {
				const jump = jumpOf(comparison, loadRise.value, leastShare)
				if (jump === undefined || isTested(liftOf(jump.now.item), between, liftOf)) return []
				return isHandled(jump, week.week, weeks, measure, loadRise.value, leastShare) ? [] : [jump]
			})
			return jumps.slice(0, 1)
		})
	})
}

/** Weeks without work between two others, long enough to be a break whatever the days. */
function isBreak(
	last: WeekInRow<PlacedSession>,
	week: WeekInRow<PlacedSession>,
	weeks: readonly WeekInRow<PlacedSession>[],
): boolean {
	const empty = weeks.filter(each => each.week > last.week && each.week < week.week && !each.hasWork)
	return 7 * empty.length >= breakDays
}

function checkBlock(block: Block, programme: Programme): Finding[] {
	const limit = limitsFor(block, programme).loadRise
	if (limit === undefined) return []
	return groupedBy(jumpsInBlock(block, programme), jump => String(jump.now.item.item.span.start)).map(same => {
		const [jump] = same
		const shown = (top: TopLoad<PlacedSession>) => `${amountText(top)} at ${percentText(top.load.from)}`
		const when = (top: TopLoad<PlacedSession>) => `in week ${top.session.runWeek}`
		const others = same.slice(1).map(each => each.now.session.runWeek)
		const also = others.length === 0 ? '' : ` So it does in ${weeksInWords(others)}.`
		return {
			span: loadSpan(jump.now),
			message: `${messageOf(jump, shown, when, percentText, limit)}${also}`,
			source: limit.origin,
			related: [
				{ definition: block, span: headOf(jump.before.item.item), message: `Week ${jump.before.session.runWeek}.` },
				limitPlace(limit),
			],
			corrections: soundOnes(code, block, programme, () => [
				...lowered(jump, limit.value, block),
				...smallerStep(jump, limit.value, block),
			]),
		}
	})
}

function percentText(percent: Exact): string {
	return `${decimal(percent, 1)}%`
}

/** The highest half percent that the limit allows, in the place where the percent is written. */
function lowered({ before, now, byMax }: Jump<PlacedSession>, limit: Exact, block: Block): Proposal<Block>[] {
	const { group } = now.set
	const { load } = group
	const isWritten = now.item.changeCount === 0 && now.item.sessionChangeCount === 0 && now.item.from !== 'deload-fill'
	if (!isWritten || load?.kind !== 'percent' || load.of !== undefined || !load.percent.from.equals(load.percent.to)) return []
	const share = limit.div(hundred)
	const most = byMax
		? maxOf(before.load.to, before.amount).mul(one.add(share)).div(maxOf(one, now.amount))
		: before.load.to.add(larger(before.load.to, leastShare).mul(share))
	const percent = smaller(inHalves(most), load.percent.from)
	const after: SetGroup = { ...group, load: { ...load, percent: { from: percent, to: percent } } }
	return [
		{
			correction: {
				title: `Take ${percentText(percent)} in week ${now.session.blockWeek}`,
				edits: [{ span: load.span, text: `at ${percentText(percent)}` }],
			},
			changed: withGroups(block, each => (each === group ? after : each)),
		},
	]
}

/** The highest step of half percents that the limit allows, in place of an `each week add …%` that is too long. */
function smallerStep({ before, now }: Jump<PlacedSession>, limit: Exact, block: Block): Proposal<Block>[] {
	const { item } = now.item
	const [change, another] = item.changes
	const isOwnStep = before.item.item === item && now.item.from === 'every-week'
	if (!isOwnStep || change === undefined || another || change.each !== 'week' || change.unit !== '%') return []
	const amount = inHalves(larger(before.load.to, leastShare).mul(limit).div(hundred))
	if (amount.compare(zero) <= 0 || amount.compare(change.amount) >= 0) return []
	const text = `each week add ${percentText(amount)}`
	return [
		{
			correction: { title: `Add ${percentText(amount)} each week`, edits: [{ span: change.span, text }] },
			changed: withItem(block, item, each => ({ ...each, changes: [{ ...change, amount }] })),
		},
	]
}

function inHalves(percent: Exact): Exact {
	return percent.mul(exact(2)).floor().div(exact(2))
}

// In a lifter's calendar ---------------------------------------------------------------------------------------------------------------

function ofLifter(lifter: Lifter, programme: Programme): readonly PlanFinding[] {
	const limit = limitsFor(lifter.name.text, programme).loadRise
	if (limit === undefined) return []
	const measure: Measure<DatedSession> = (set, item) => liftedKilograms(set, item, lifter)
	const weeks = withoutLoneDeloads(calendarWeeks(lifter, programme))
	const jumps = weeks.flatMap(week => {
		if (week.deload) return []
		const last = lastTrainingWeek(weeks, week.week)
		const base = last?.isWhole && !isPause(last, week, weeks) ? last : undefined
		const between = weeks.filter(each => each.week >= (base ?? week).week && each.week <= week.week)
		return comparisons(base?.sessions ?? [], week.sessions, measure).flatMap(ofMovement => {
			const jumps = ofMovement.flatMap((comparison): Jump<DatedSession>[] => {
				const { now, steps } = comparison
				const jump = jumpOf(comparison, limit.value, halfOf(now))
				if (jump === undefined || isTested(liftOf(now.item), between, liftOf)) return []
				// A week of several of the least steps is no jump.
				const isLong = isMoreThanAStep(jump) && (steps === undefined || steps.some(isMoreThanAStep))
				const isFine = isOther(jump) || !isLong || isHandled(jump, week.week, weeks, measure, limit.value, halfOf(now))
				return isFine || isInBlock(jump, programme) ? [] : [jump]
			})
			return jumps.slice(0, 1)
		})
	})
	const signature = ({ now }: Jump<DatedSession>) =>
		`${now.session.plan.name.text} ${now.session.run.monday} ${now.item.movementName.text}`
	return groupedBy(jumps, signature).map((same): PlanFinding => {
		const [jump] = same
		const { before, now } = jump
		const shown = (top: TopLoad<DatedSession>) => {
			const { computed } = top.set
			return `${amountText(top)} at ${computed.exact ? massText({ amount: computed.load ?? computed.exact, unit: computed.unit }) : ''}`
		}
		const others = same.slice(1).map(each => each.now.session.runWeek)
		const also = others.length === 0 ? '' : ` So it does in ${weeksInWords(others)} of the block.`
		const kilograms = (amount: Exact) => `${decimal(amount, 1)} kg`
		return {
			plan: now.session.plan,
			finding: {
				span: now.session.run.run.header,
				message: `${messageOf(jump, shown, top => `on ${top.session.date}`, kilograms, limit)}${also}`,
				source: limit.origin,
				related: [
					placeOfItem(before.item, before.session, `On ${before.session.date}.`),
					placeOfItem(now.item, now.session, `On ${now.session.date}.`),
					limitPlace(limit),
				],
			},
		}
	})
}

/** Kilograms that are half of what the load is a percent of. */
function halfOf({ load, item, set }: TopLoad<DatedSession>): Exact | undefined {
	const percent = set.computed.percent?.from
	if (percent === undefined || percent.compare(zero) <= 0 || item.movement?.loadAdded) return undefined
	return load.from.div(percent).mul(leastShare)
}

function isPause(last: CalendarWeek, week: CalendarWeek, weeks: readonly CalendarWeek[]): boolean {
	const days = weeks
		.filter(each => each.week >= last.week && each.week <= week.week)
		.flatMap(each => each.sessions.filter(session => session.items.some(item => item.working)).map(session => session.date))
	return days.some((date, index) => index > 0 && daysBetween(days[index - 1] ?? date, date) > breakDays)
}

/** What a swap has put in place of another movement beside what it was before, or another max under it: the two loads do not compare. */
function isOther({ before, now }: Jump<DatedSession>): boolean {
	const swapped = (top: TopLoad<DatedSession>) => top.item.changedBy === 'swap'
	return swapped(before) !== swapped(now) || before.set.computed.reference?.best !== now.set.computed.reference?.best
}

/** A single step of the gym's is the least there is; where it states no masses nobody knows the step. */
function isMoreThanAStep({ before, now }: Pick<Jump<DatedSession>, 'before' | 'now'>): boolean {
	const { movement } = now.item
	const { load, unit } = now.set.computed
	const last = before.set.computed
	const was = last.loadTo ?? last.load
	if (movement === undefined || load === undefined || was === undefined || last.unit !== unit) return false
	const { gym, uses } = now.session.scheduled
	const implement = implementFor(movement, gym, unit, uses)
	const above = 'missing' in implement ? undefined : loadableStep(was, implement, unit).above
	return above !== undefined && compare(load, above) > 0
}

/** The block says it, whoever runs it. */
function isInBlock({ now }: Jump<DatedSession>, programme: Programme): boolean {
	return jumpsInBlock(now.session.run.block, programme).some(
		jump =>
			jump.now.session.blockWeek === now.session.blockWeek && jump.now.item.movementName.text === now.item.movementName.text,
	)
}

// In words -----------------------------------------------------------------------------------------------------------------------------

function messageOf<S extends PlacedSession>(
	{ before, now, byMax, rise, isBySession }: Jump<S>,
	shown: (top: TopLoad<S>) => string,
	when: (top: TopLoad<S>) => string,
	load: (amount: Exact) => string,
	limit: Limit<Exact>,
): string {
	const max = (top: TopLoad<S>, end: Exact) => load(maxOf(end, top.amount))
	const how = byMax
		? `the max that this asks for goes from ${max(before, before.load.to)} to ${max(now, now.load.from)}, ${decimal(rise, 1)}% more`
		: `${decimal(rise, 1)}% more`
	return `${titleOfItem(now.item)} goes from ${shown(before)} ${when(before)} to ${shown(now)} ${when(now)}: ${how}; ${limitText(limit, isBySession)}. Take a smaller step.`
}

function limitText({ value, origin }: Limit<Exact>, isBySession: boolean): string {
	if (!isBySession) return `the limit is ${decimal(value)}% a week (${origin})`
	const most = decimal(value.mul(timesBySession))
	return `the limit is ${most}% a week for what goes up each session, twice the ${decimal(value)}% of all else (${origin})`
}

function amountText({ amount, kind }: TopLoad<PlacedSession>): string {
	const unit = kind === 'reps' ? (amount.equals(1) ? ' rep' : ' reps') : kind === 'carry' ? ' m' : ' s'
	return `${decimal(amount)}${unit}`
}

function limitPlace(limit: Limit<Exact>): RelatedPlace {
	return { definition: limit.definition, span: limit.span, message: 'The limit stands here.' }
}
