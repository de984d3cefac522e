import { schedulePlan } from '../../compute/schedule.ts'
import type { Plan } from '../../model/definitions.ts'
import type { Programme } from '../../model/programme.ts'
import type { CalendarDate } from '../../model/quantities.ts'
import type { ScheduledRun } from '../../model/schedule.ts'

/** A run with the last day that it takes up. */
export interface RunSpan {
	readonly plan: Plan
	readonly run: ScheduledRun
	readonly lastDay: CalendarDate
}

/** The runs of a plan that have a place on the calendar, by their first week. */
export function runsOf(plan: Plan, programme: Programme): readonly RunSpan[] {
	const spans = schedulePlan(plan, programme).runs.map(run => ({ plan, run, lastDay: run.lastDay }))
	return spans.sort((a, b) => (a.run.monday < b.run.monday ? -1 : a.run.monday > b.run.monday ? 1 : 0))
}

/** Has every run of a plan a place? Where one has none, nobody knows where the plan ends. */
export function isPlaced(plan: Plan, programme: Programme): boolean {
	return schedulePlan(plan, programme).runs.length === plan.runs.length
}
