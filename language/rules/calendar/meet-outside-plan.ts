import { daysBetween } from '../../compute/calendar.ts'
import type { Plan } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import { counted } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import { isPlaced, runsOf } from './lifter-runs.ts'
import page from './meet-outside-plan.md'

/** A meet may come so many days after the last block: the week after it. */
const mostDaysAfter = 7

export const meetOutsidePlan: Rule = {
	code: 'meet-outside-plan',
	area: 'calendar',
	level: 'warning',
	summary: 'A meet lies before the start of its plan, or more than a week after its last block.',
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
