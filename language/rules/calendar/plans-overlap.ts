import { daysBetween } from '../../compute/calendar.ts'
import { schedulePlan } from '../../compute/schedule.ts'
import type { Lifter, Plan } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { CalendarDate } from '../../model/quantities.ts'
import { groupedBy } from '../common/groups.ts'
import { planSessions } from '../common/placed-sessions.ts'
import { findingsOn, type PlanFinding } from '../common/run-findings.ts'
import { titleOf } from '../common/titles.ts'
import { weeksInWords } from '../common/weeks.ts'
import { counted, inWords } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import { type RunSpan, runsOf } from './lifter-runs.ts'
import page from './plans-overlap.md'

export const plansOverlap: Rule = {
	code: 'plans-overlap',
	area: 'calendar',
	level: 'warning',
	summary:
		'Two plans of a lifter have main work on one date or target one lift at a time; or a pause moves a block into the next one.',
	source: 'common practice',
	fix: 'none',
	since: '0.1.0',
	page,
	check: { plan: (plan, programme) => [...findingsOn(plan, programme, overlaps), ...pushedOut(plan, programme)] },
}

/** What a pause would move into a run that has a day of its own: it falls away. */
function pushedOut(plan: Plan, programme: Programme): Finding[] {
	const left = schedulePlan(plan, programme).leftOut.filter(one => one.why === 'overrun')
	return groupedBy(left, one => String(one.run.run.span.start)).map((same): Finding => {
		const { run } = same[0]
		const next = plan.runs.find(one => one.from !== undefined && one.span.start > run.run.span.start)
		const weeks = weeksInWords(same.map(one => one.runWeek))
		return {
			span: (next ?? run.run).header,
			message: `The pause moves ${counted(same.length, 'session')} of ${run.block.name.text} (${weeks}) to where ${next?.block.text ?? 'the next block'} begins on a day of its own, so ${same.length === 1 ? 'it falls' : 'they fall'} away. Without its \`from\`, ${next?.block.text ?? 'the next block'} would wait for ${same.length === 1 ? 'it' : 'them'}.`,
			source: 'common practice',
			level: 'info',
			related: [
				{ definition: plan, span: run.run.header, message: 'The block that is cut short.' },
				...plan.pauses.map(pause => ({ definition: plan, span: pause.span, message: 'The pause.' })),
			],
		}
	})
}

/** Each pair of plans once, on the first run of the one that begins later. */
function overlaps(lifter: Lifter, programme: Programme): readonly PlanFinding[] {
	const plans = programme
		.plansOf(lifter.name.text)
		.map(plan => runsOf(plan, programme))
		.filter(runs => runs.length > 0)
		.sort((a, b) => daysBetween(firstDayOf(b), firstDayOf(a)))
	return plans.flatMap((later, index) => plans.slice(0, index).flatMap(earlier => overlap(earlier, later, programme) ?? []))
}

function firstDayOf(runs: readonly RunSpan[]): CalendarDate {
	return runs[0]?.run.firstDay ?? ''
}

/** What the runs of one plan and those of another have at one time. */
function overlap(earlier: readonly RunSpan[], later: readonly RunSpan[], programme: Programme): PlanFinding | undefined {
	const pairs = later
		.flatMap(own =>
			earlier.map(other => ({ own, other, dates: sharedDates(own, other, programme), targets: sharedTargets(own, other) })),
		)
		.filter(({ dates, targets }) => dates.length > 0 || targets.length > 0)
	const [first] = pairs
	if (first === undefined) return undefined
	const { own, other } = first
	const dates = [...new Set(pairs.flatMap(pair => pair.dates))].sort()
	const targets = [...new Set(pairs.flatMap(pair => pair.targets))]
	const from = pairs.filter(pair => pair.targets.length > 0).map(pair => bothFrom(pair.own, pair.other))
	const titles = inWords(targets.map(name => titleOf('movement', name, programme)))
	const faults = [
		...(dates.length > 0 ? [`have main work on the same date ${inDates(dates)}`] : []),
		...(targets.length > 0 ? [`both target ${titles} from ${from.sort()[0]} on`] : []),
	]
	const lifter = titleOf('lifter', own.plan.lifter.text, programme)
	const finding = {
		span: own.run.run.header,
		message: `Two plans of ${lifter}, ${other.plan.name.text} and ${own.plan.name.text}, ${faults.join(', and ')} (one plan at a time for one lift: common practice). Let one wait for the other, or put the work of both into one plan.`,
		source: 'common practice',
		related: [{ definition: other.plan, span: other.run.run.header, message: 'The other plan runs this.' }],
	}
	return { plan: own.plan, finding }
}

function sharedDates(own: RunSpan, other: RunSpan, programme: Programme): readonly CalendarDate[] {
	const mains = mainDates(own, programme)
	return [...mainDates(other, programme)].filter(date => mains.has(date))
}

function mainDates({ plan, run }: RunSpan, programme: Programme): ReadonlySet<CalendarDate> {
	const sessions = planSessions(plan, programme).filter(session => session.run === run)
	return new Set(sessions.filter(({ items }) => items.some(item => item.role === 'main' && item.working)).map(one => one.date))
}

/** The lifts that both target, where there is a day that both take up. */
function sharedTargets(own: RunSpan, other: RunSpan): readonly string[] {
	const start = bothFrom(own, other)
	if (start > own.lastDay || start > other.lastDay) return []
	return own.run.block.targets.map(target => target.text).filter(name => other.run.block.targets.some(one => one.text === name))
}

/** The later of two first days. */
function bothFrom(own: RunSpan, other: RunSpan): CalendarDate {
	return [own.run.firstDay, other.run.firstDay].sort()[1]!
}

/** "once, on 2026-10-05", "3 times, first on 2026-10-05" */
function inDates(dates: readonly CalendarDate[]): string {
	return dates.length === 1 ? `once, on ${dates[0]}` : `${counted(dates.length, 'time')}, first on ${dates[0]}`
}
