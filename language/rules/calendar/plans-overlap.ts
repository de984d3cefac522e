import type { Lifter } from '../../model/definitions.ts'
import type { Programme } from '../../model/programme.ts'
import type { CalendarDate } from '../../model/quantities.ts'
import { planSessions } from '../common/placed-sessions.ts'
import { findingsOn, type PlanFinding } from '../common/run-findings.ts'
import { titleOf } from '../common/titles.ts'
import { counted, inWords } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import { type RunSpan, runsOf } from './lifter-runs.ts'
import page from './plans-overlap.md'

export const plansOverlap: Rule = {
	code: 'plans-overlap',
	area: 'calendar',
	level: 'warning',
	summary: 'Two plans of a lifter have main work on one date, or target one lift at a time.',
	source: 'common practice',
	fix: 'none',
	since: '0.1.0',
	page,
	check: { plan: (plan, programme) => findingsOn(plan, programme, overlaps) },
}

/** Each pair of runs of two plans once, on the run that begins later. */
function overlaps(lifter: Lifter, programme: Programme): readonly PlanFinding[] {
	const runs = programme
		.plansOf(lifter.name.text)
		.flatMap(plan => runsOf(plan, programme))
		.sort((a, b) => (a.run.firstDay < b.run.firstDay ? -1 : a.run.firstDay > b.run.firstDay ? 1 : 0))
	return runs.flatMap((later, index) =>
		runs.slice(0, index).flatMap(earlier => {
			const found = earlier.plan === later.plan ? undefined : overlap(earlier, later, programme)
			return found === undefined ? [] : [{ plan: later.plan, finding: found }]
		}),
	)
}

function overlap(earlier: RunSpan, later: RunSpan, programme: Programme): PlanFinding['finding'] | undefined {
	const mains = mainDates(later, programme)
	const dates = [...mainDates(earlier, programme)].filter(date => mains.has(date)).sort()
	const targets = later.run.firstDay > earlier.lastDay ? [] : sharedTargets(earlier, later)
	const titles = inWords(targets.map(name => titleOf('movement', name, programme)))
	const [until] = [earlier.lastDay, later.lastDay].sort()
	const faults = [
		...(dates.length > 0 ? [`have main work on the same date ${inDates(dates)}`] : []),
		...(targets.length > 0 ? [`both target ${titles} from ${later.run.firstDay} to ${until}`] : []),
	]
	if (faults.length === 0) return undefined
	const lifter = titleOf('lifter', later.plan.lifter.text, programme)
	return {
		span: later.run.run.header,
		message: `Two plans of ${lifter}, ${earlier.plan.name.text} and ${later.plan.name.text}, ${faults.join(', and ')} (one plan at a time for one lift: common practice). Let one wait for the other, or put the work of both into one plan.`,
		source: 'common practice',
		related: [{ definition: earlier.plan, span: earlier.run.run.header, message: 'The other plan runs this.' }],
	}
}

function mainDates({ plan, run }: RunSpan, programme: Programme): ReadonlySet<CalendarDate> {
	const sessions = planSessions(plan, programme).filter(session => session.run === run)
	return new Set(sessions.filter(({ items }) => items.some(item => item.role === 'main' && item.working)).map(one => one.date))
}

function sharedTargets(earlier: RunSpan, later: RunSpan): readonly string[] {
	const names = later.run.block.targets.map(target => target.text)
	return [...new Set(names)].filter(name => earlier.run.block.targets.some(target => target.text === name))
}

/** "once, on 2026-10-05", "3 times, first on 2026-10-05" */
function inDates(dates: readonly CalendarDate[]): string {
	return dates.length === 1 ? `once, on ${dates[0]}` : `${counted(dates.length, 'time')}, first on ${dates[0]}`
}
