import type { Breakdown, Movement, Need, Plan } from '../model/definitions.ts'
import type { Programme } from '../model/programme.ts'
import type { CalendarDate, Exact } from '../model/quantities.ts'
import type { ScheduledItem, ScheduledSession } from '../model/schedule.ts'
import type { Name, Span } from '../model/text.ts'
import { links } from '../model/vocabulary.ts'
import { addDays, mondayOf } from './calendar.ts'
import { exact, zero } from './exact.ts'
import { schedulePlan } from './schedule.ts'

/** A lifter's lift that fails in a known way, where a plan trains it. */
export interface DeclaredBreakdown {
	readonly breakdown: Breakdown
	readonly lift: Name
	/** The percent above which position is lost, where it is known. */
	readonly above: Exact | undefined
	/** The lifter's `fails` line. */
	readonly span: Span
	readonly from: CalendarDate | undefined
	readonly until: CalendarDate | undefined
}

/** The breakdowns that a plan's lifter has declared for lifts that the plan targets or has as main work. */
export function declaredBreakdowns(plan: Plan, programme: Programme): readonly DeclaredBreakdown[] {
	const lifter = programme.find('lifter', plan.lifter.text)
	if (!lifter) return []
	const trained = trainedLifts(plan, programme)
	return lifter.fails.flatMap(({ movement, breakdown: name, above, span, from, until }) => {
		const breakdown = programme.find('breakdown', name.text)
		return breakdown && trained.has(movement.text) ? [{ breakdown, lift: movement, above, span, from, until }] : []
	})
}

function trainedLifts(plan: Plan, programme: Programme): ReadonlySet<string> {
	const { runs, sessions } = schedulePlan(plan, programme)
	const targets = runs.flatMap(run => run.block.targets.map(name => name.text))
	const mains = sessions.flatMap(session =>
		session.items.filter(item => item.role === 'main').map(item => item.movementName.text),
	)
	return new Set([...targets, ...mains])
}

/** Is the declaration in force on any day of the week that begins on this monday? */
export function isInForce({ from, until }: Pick<DeclaredBreakdown, 'from' | 'until'>, monday: CalendarDate): boolean {
	return (from === undefined || from <= addDays(monday, 6)) && (until === undefined || until >= monday)
}

/**
 * Does work with a movement answer a breakdown? What `answered by` lists does; without that line, every movement whose first link is the
 * weak one. The lift that fails never answers its own breakdown.
 */
export function answersBreakdown(movement: Movement, breakdown: Breakdown, failing: ReadonlySet<string>): boolean {
	const name = movement.name.text
	if (failing.has(name)) return false
	if (breakdown.answeredBy.length > 0) return breakdown.answeredBy.some(one => one.text === name)
	const first = movement.trains?.value[0]
	return first !== undefined && first === breakdown.weakLinks?.value[0]
}

/** One need of a breakdown against what a week holds of it. */
export interface MetNeed {
	readonly need: Need
	/** Sets at the low end (a muscle's by its shares), or dates with answering work. */
	readonly found: Exact
}

/** What a calendar week of a lifter, over all plans, holds of what a breakdown needs. */
export function needsOfWeek(
	breakdown: Breakdown,
	failing: ReadonlySet<string>,
	sessions: readonly ScheduledSession[],
): readonly MetNeed[] {
	const answering = sessions.flatMap(({ date, items }) =>
		items
			.filter(item => item.working && item.movement && answersBreakdown(item.movement, breakdown, failing))
			.map(item => ({ date, item })),
	)
	return breakdown.needs.map(need => {
		const counted = answering
			.map(({ date, item }) => ({ date, sets: setsTowards(item, need.what) }))
			.filter(one => one.sets.s > 0n)
		const dates = new Set(counted.map(one => one.date))
		const found = need.unit === 'sessions' ? exact(dates.size) : counted.reduce((sum, one) => sum.add(one.sets), zero)
		return { need, found }
	})
}

/** The sets of an answering item that count for a need: each of them for a link, by the movement's share for a muscle. */
function setsTowards(item: ScheduledItem, what: string): Exact {
	const sets = exact(item.sets.filter(set => !set.optional).length)
	if ((links as readonly string[]).includes(what)) return sets
	const share = item.movement?.muscles.find(one => one.muscle === what)?.share
	return share ? sets.mul(share) : zero
}

/** All sessions of a lifter, over all plans, in the calendar week that begins on this monday. */
export function sessionsOfWeek(lifter: string, monday: CalendarDate, programme: Programme): readonly ScheduledSession[] {
	return programme
		.plansOf(lifter)
		.flatMap(plan => schedulePlan(plan, programme).sessions)
		.filter(session => mondayOf(session.date) === monday)
}
