import type { Breakdown, Movement, Need, Plan } from '../model/definitions.ts'
import type { Programme } from '../model/programme.ts'
import type { CalendarDate, Exact } from '../model/quantities.ts'
import type { ScheduledSession } from '../model/schedule.ts'
import { links } from '../model/vocabulary.ts'
import { mondayOf } from './calendar.ts'
import { exact, smaller, zero } from './exact.ts'
import { type FailingLift, failingLifts } from './failing-lifts.ts'
import { schedulePlan } from './schedule.ts'

/** The failing lifts of a plan's lifter that the plan targets or has as main work. */
export function declaredBreakdowns(plan: Plan, programme: Programme): readonly FailingLift[] {
	const lifter = programme.find('lifter', plan.lifter.text)
	if (!lifter) return []
	const trained = trainedLifts(plan, programme)
	return failingLifts(lifter, programme).filter(({ lift }) => trained.has(lift))
}

function trainedLifts(plan: Plan, programme: Programme): ReadonlySet<string> {
	const { runs, sessions } = schedulePlan(plan, programme)
	const targets = runs.flatMap(run => run.block.targets.map(name => name.text))
	const mains = sessions.flatMap(session =>
		session.items.filter(item => item.role === 'main').map(item => item.movementName.text),
	)
	return new Set([...targets, ...mains])
}

/** Does a movement answer a breakdown: named by it, or, where it names none, by its first link? The lift that fails never does. */
export function answers(movement: Movement, breakdown: Breakdown, failing: ReadonlySet<string>): boolean {
	const name = movement.name.text
	if (failing.has(name)) return false
	if (breakdown.answeredBy.length > 0) return breakdown.answeredBy.some(answer => answer.text === name)
	return movement.trains?.value[0] !== undefined && movement.trains.value[0] === breakdown.weakLinks?.value[0]
}

/** As much of a session as needs ask for. */
export interface SessionWork {
	readonly items: readonly {
		readonly movement: Movement | undefined
		readonly working: boolean
		readonly sets: readonly { readonly optional: boolean }[]
	}[]
}

/** One need of a breakdown against what a week holds of it. */
export interface NeedOfWeek {
	readonly need: Need
	/** The week has fewer sessions where this is less than the need's own amount: then it asks for all of them. */
	readonly needed: Exact
	/** Sets at the low end (a muscle's by its shares), or sessions with answering work. */
	readonly found: Exact
}

/** What a week's sessions hold of each need of a breakdown, at the low end of what they leave open. */
export function needsOfWeek(
	breakdown: Breakdown,
	failing: ReadonlySet<string>,
	sessions: readonly SessionWork[],
): readonly NeedOfWeek[] {
	return breakdown.needs.map((need): NeedOfWeek => {
		const amounts = sessions.map(session => amountIn(session, need, breakdown, failing))
		if (need.unit === 'sets') return { need, needed: need.amount, found: amounts.reduce((sum, one) => sum.add(one), zero) }
		const withWork = sessions.filter(session => session.items.some(item => item.working)).length
		const found = exact(amounts.filter(amount => amount.compare(zero) > 0).length)
		return { need, needed: smaller(need.amount, exact(withWork)), found }
	})
}

/** The needs of a breakdown that a week's sessions do not meet. */
export function shortages(
	breakdown: Breakdown,
	failing: ReadonlySet<string>,
	sessions: readonly SessionWork[],
): readonly NeedOfWeek[] {
	return needsOfWeek(breakdown, failing, sessions).filter(({ needed, found }) => found.compare(needed) < 0)
}

/** Sets of a session that count for a need. */
function amountIn(session: SessionWork, need: Need, breakdown: Breakdown, failing: ReadonlySet<string>): Exact {
	return session.items.reduce((sum, { movement, sets, working }) => {
		if (!working || !movement || !answers(movement, breakdown, failing)) return sum
		return sum.add(exact(sets.filter(set => !set.optional).length).mul(shareOf(movement, need, breakdown)))
	}, zero)
}

/** What one set of an answering movement counts for a need. */
function shareOf(movement: Movement, need: Need, breakdown: Breakdown): Exact {
	if (!(links as readonly string[]).includes(need.what)) {
		return movement.muscles.find(({ muscle }) => muscle === need.what)?.share ?? zero
	}
	// Where a breakdown asks for both links, each movement counts for its own.
	const asksForBoth = links.every(link => breakdown.needs.some(other => other.what === link))
	return asksForBoth && movement.trains?.value[0] !== need.what ? zero : exact(1)
}

/** All sessions of a lifter, over all plans, in the calendar week that begins on this monday. */
export function sessionsOfWeek(lifter: string, monday: CalendarDate, programme: Programme): readonly ScheduledSession[] {
	return programme
		.plansOf(lifter)
		.flatMap(plan => schedulePlan(plan, programme).sessions)
		.filter(session => mondayOf(session.date) === monday)
}
