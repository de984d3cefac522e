import { schedulePlan } from '../../compute/schedule.ts'
import type { Plan } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { Rule } from '../rule.ts'
import page from './bad-date.md'

export const badDate: Rule = {
	code: 'bad-date',
	area: 'reading',
	level: 'error',
	summary: 'A date is not in the calendar, an end lies before its start, or a pause lies outside its plan.',
	source: 'the calendar (ISO 8601)',
	fix: 'safe',
	since: '0.1.0',
	page,
	check: { plan: checkPauses },
}

/** A pause before the plan begins, or after it has ended, moves nothing: most often the year is a slip. */
function checkPauses(plan: Plan, programme: Programme): Finding[] {
	const { runs } = schedulePlan(plan, programme)
	const begins = plan.start?.value ?? runs.map(run => run.monday).sort()[0]
	const ends = runs
		.map(run => run.lastDay)
		.sort()
		.at(-1)
	if (begins === undefined || ends === undefined || runs.length < plan.runs.length) return []
	// A member who begins on another day than the team may well have its pauses before or after the plan.
	const common = plan.teamPlan
	const isMembersOwn = common !== undefined && common.start?.value !== plan.start?.value
	return plan.pauses.flatMap((pause): Finding[] => {
		if (isMembersOwn && common.pauses.includes(pause)) return []
		const where = pause.to < begins ? `before this plan begins, on ${begins}` : `after this plan has ended, on ${ends}`
		if (pause.to >= begins && pause.from <= ends) return []
		return [
			{
				span: pause.span,
				message: `The pause from ${pause.from} to ${pause.to} lies ${where}, so it moves nothing. Is its year right?`,
				level: 'warning',
				related: plan.start ? [{ definition: plan, span: plan.start.span, message: 'The plan starts here.' }] : [],
			},
		]
	})
}
