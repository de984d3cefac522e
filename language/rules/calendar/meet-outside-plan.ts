import { daysBetween } from '../../compute/calendar.ts'
import { schedulePlan } from '../../compute/schedule.ts'
import type { Plan } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { CalendarDate } from '../../model/quantities.ts'
import type { ScheduledSession } from '../../model/schedule.ts'
import { counted, inWords } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import { isPlaced, runsOf } from './lifter-runs.ts'
import page from './meet-outside-plan.md'

/** A meet may come so many days after the last block: the week after it. */
const mostDaysAfter = 7

export const meetOutsidePlan: Rule = {
	code: 'meet-outside-plan',
	area: 'calendar',
	level: 'warning',
	summary: 'A meet lies before the start of its plan or more than a week after its last block, or a pause moves work past it.',
	source: 'common practice',
	fix: 'none',
	since: '0.1.0',
	page,
	check: { plan: checkPlan },
}

function checkPlan(plan: Plan, programme: Programme): Finding[] {
	const runs = isPlaced(plan, programme) ? runsOf(plan, programme) : []
	const [first] = runs
	const last = [...runs].sort((a, b) => daysBetween(b.lastDay, a.lastDay)).at(-1)
	if (first === undefined || last === undefined) return []
	const start = plan.start?.value ?? first.run.firstDay
	return plan.meets.flatMap(({ on, span }): Finding[] => {
		const after = daysBetween(last.lastDay, on)
		if (on < start) {
			const days = counted(daysBetween(on, start), 'day')
			const message = `The meet on ${on} is ${days} before this plan starts, on ${start}: nothing in it leads up to the meet (common practice). One of the two dates is not the one that was meant.`
			const related = plan.start && [{ definition: plan, span: plan.start.span, message: 'The plan starts here.' }]
			return [{ span, message, source: 'common practice', related: related ?? [] }]
		}
		const late = movedPast(on, plan, programme)
		if (late.length > 0) return [{ span, ...ofPause(on, late, plan) }]
		if (after <= mostDaysAfter) return []
		return [
			{
				span,
				message: `The meet on ${on} is ${counted(after, 'day')} after the last block, which ends on ${last.lastDay}; up to ${mostDaysAfter} are usual (common practice). Start the plan later, or run another block before the meet.`,
				source: 'common practice',
				related: [{ definition: plan, span: last.run.run.header, message: 'The last block.' }],
			},
		]
	})
}

/**
 * The sessions that would be before a meet without the plan's pauses, and are after it with them, of a block that the meet now stands in
 * the middle of. A block that begins after the meet may be meant for then: nobody can tell.
 */
function movedPast(meet: CalendarDate, plan: Plan, programme: Programme): readonly ScheduledSession[] {
	if (plan.pauses.length === 0) return []
	return schedulePlan(plan, programme).sessions.filter(
		({ meant, date, movedFrom, run }) => meant <= meet && date > meet && movedFrom === undefined && run.firstDay <= meet,
	)
}

function ofPause(meet: CalendarDate, late: readonly ScheduledSession[], plan: Plan): Omit<Finding, 'span'> {
	const blocks = inWords([...new Set(late.map(session => session.run.block.name.text))])
	const run = late.at(-1)?.run.run
	return {
		message: `The pause moves ${counted(late.length, 'session')} of ${blocks} past the meet on ${meet}, to which they led up (common practice). Give the last block the day on which it must begin, with \`from\`: what no longer fits before it falls away.`,
		source: 'common practice',
		related: [
			...plan.pauses.map(pause => ({ definition: plan, span: pause.span, message: 'The pause.' })),
			...(run ? [{ definition: plan, span: run.header, message: 'The block that comes too late.' }] : []),
		],
	}
}
