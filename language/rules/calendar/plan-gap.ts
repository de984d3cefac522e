import { addDays, daysBetween } from '../../compute/calendar.ts'
import type { Plan } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { CalendarDate } from '../../model/quantities.ts'
import { planSessions } from '../common/placed-sessions.ts'
import { counted } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import { isPlaced, type RunSpan, runsOf } from './lifter-runs.ts'
import page from './plan-gap.md'

export const planGap: Rule = {
	code: 'plan-gap',
	area: 'calendar',
	level: 'info',
	summary: 'A week or more without a block lies between two blocks of a plan.',
	source: 'common practice',
	fix: 'none',
	since: '0.1.0',
	page,
	check: { plan: checkPlan },
}

function checkPlan(plan: Plan, programme: Programme): Finding[] {
	if (!isPlaced(plan, programme)) return []
	let last: RunSpan | undefined
	return runsOf(plan, programme).flatMap((next): Finding[] => {
		const before = last
		if (last === undefined || next.lastDay > last.lastDay) last = next
		if (before === undefined) return []
		const first = addDays(before.lastDay, 1)
		const days = daysBetween(first, next.run.monday)
		if (days - daysPaused(plan, first, next.run.monday) < 7 || trainsElsewhere(plan, first, next.run.monday, programme)) return []
		return [
			{
				span: next.run.run.header,
				message: `Between ${before.run.block.name.text} and ${next.run.block.name.text} ${days === 7 ? 'lies' : 'lie'} ${counted(days / 7, 'week')} with no block, ${first} to ${addDays(next.run.monday, -1)}; a week or more is asked about (common practice). Without its \`from\` a block follows the one before.`,
				source: 'common practice',
				related: [
					{ definition: plan, span: before.run.run.header, message: `The block before ends on ${before.lastDay}.` },
					...plan.meets
						.filter(meet => meet.on >= first && meet.on < next.run.monday)
						.map(meet => ({ definition: plan, span: meet.span, message: 'A meet lies between.' })),
				],
			},
		]
	})
}

/** How many days from one to before another lie in a pause: a coach who says why nothing is done has thought of it. */
function daysPaused({ pauses }: Plan, first: CalendarDate, before: CalendarDate): number {
	const days = Array.from({ length: Math.max(0, daysBetween(first, before)) }, (_, index) => addDays(first, index))
	return days.filter(day => pauses.some(pause => pause.from <= day && day <= pause.to)).length
}

/** A plan of the same lifter that fills the hole makes it none. */
function trainsElsewhere(plan: Plan, first: CalendarDate, before: CalendarDate, programme: Programme): boolean {
	return programme
		.plansOf(plan.lifter.text)
		.some(other => other !== plan && planSessions(other, programme).some(({ date }) => date >= first && date < before))
}
