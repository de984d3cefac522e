import { addDays, daysBetween } from '../../compute/calendar.ts'
import { decimal, exact, hundred } from '../../compute/exact.ts'
import type { Lifter, Plan } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { Exact } from '../../model/quantities.ts'
import { groupedBy } from '../common/groups.ts'
import { liftOf } from '../common/heavy.ts'
import { type DatedSession, lifterSessions } from '../common/placed-sessions.ts'
import { titleOf } from '../common/titles.ts'
import { trainingWeeks } from '../common/training-weeks.ts'
import { calendarWeeksInWords } from '../common/weeks.ts'
import { inWords } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import page from './no-taper.md'

/** Percent of the mean of the earlier weeks, from which the last days before a meet are no taper. */
const most = exact(70)
const published = 'Bosquet et al. 2007: volume down by 41-60% over two weeks, load and days as before'

export const noTaper: Rule = {
	code: 'no-taper',
	area: 'calendar',
	level: 'info',
	summary: 'The last 7 days before a meet have more than 70% of the lifts of the weeks three to six weeks out.',
	source: 'Bosquet et al. 2007; the 70% is common practice',
	fix: 'none',
	since: '0.1.0',
	page,
	check: { plan: checkPlan },
}

function checkPlan(plan: Plan, programme: Programme): Finding[] {
	const lifter = programme.find('lifter', plan.lifter.text)
	return lifter === undefined ? [] : plan.meets.flatMap(meet => checkMeet(meet, plan, lifter, programme))
}

function checkMeet({ on, span }: Plan['meets'][number], plan: Plan, lifter: Lifter, programme: Programme): Finding[] {
	const last = lifterSessions(lifter, programme).filter(({ date }) => date < on && date >= addDays(on, -7))
	const runs = [...new Set(last.filter(session => session.plan === plan).map(session => session.run))]
	const targets = new Set(runs.flatMap(run => run.block.targets.map(target => target.text)))
	const weeks = groupedBy(
		trainingWeeks(lifter, programme).filter(({ monday }) => isThreeToSixWeeks(daysBetween(monday, on))),
		week => week.monday,
	)
	const lifts = liftsOf(last, targets)
	const before = liftsOf(
		weeks.flatMap(([week]) => week.sessions),
		targets,
	)
	if (lifts === undefined || before === undefined || before === 0) return []
	const mean = exact(before).div(exact(weeks.length))
	const percent = exact(lifts).div(mean).mul(hundred)
	if (percent.compare(most) <= 0) return []
	const titles = inWords([...targets].map(name => titleOf('movement', name, programme)))
	const change = percent.equals(hundred) ? 'as many' : lessOrMore(percent)
	return [
		{
			span,
			message: `In the 7 days before the meet on ${on} the plan has ${lifts} lifts of ${titles}, against ${decimal(mean, 1)} a week in ${calendarWeeksInWords(weeks.map(([week]) => week.monday))}: ${change}. Published tapers bring the volume down by 41-60% over two weeks and keep the load (Bosquet et al. 2007); less than 30% down is asked about.`,
			source: published,
			related: runs.map(run => ({ definition: plan, span: run.run.header, message: 'The last days before the meet.' })),
		},
	]
}

/** Weeks are counted by their mondays: the one three weeks out begins 21 to 27 days before the meet. */
function isThreeToSixWeeks(days: number): boolean {
	return days >= 21 && days < 49
}

/**
 * Number of lifts of some lifts, and of what is a percent of them: working sets, at the low end of what is left open; `undefined` where
 * a set has as many reps as a time holds.
 */
function liftsOf(sessions: readonly DatedSession[], lifts: ReadonlySet<string>): number | undefined {
	const items = sessions.flatMap(session => session.items.filter(item => item.working))
	const sets = items.filter(item => lifts.has(item.movementName.text) || lifts.has(liftOf(item))).flatMap(item => item.sets)
	if (sets.some(set => set.work.kind === 'reps-in-time')) return undefined
	return sets.reduce((sum, { work, optional, eachSide }) => {
		const reps = work.kind === 'reps' && !optional ? work.reps.from : 0
		return sum + (eachSide ? 2 * reps : reps)
	}, 0)
}

function lessOrMore(percent: Exact): string {
	const [change, word] = percent.compare(hundred) > 0 ? [percent.sub(hundred), 'up'] : [hundred.sub(percent), 'down']
	return `${decimal(change, 0)}% ${word}`
}
