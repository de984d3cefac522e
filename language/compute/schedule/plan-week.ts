import type { Plan } from '../../model/definitions.ts'
import type { CalendarDate } from '../../model/quantities.ts'
import type { ScheduledRun } from '../../model/schedule.ts'
import { daysBetween, mondayOf } from '../calendar.ts'

/** The first day that a plan can have work on: its start, else the monday of its earliest run; `undefined` where nothing gives a date. */
export function firstPlanDay(plan: Plan, runs: readonly ScheduledRun[]): CalendarDate | undefined {
	return plan.start?.value ?? runs.map(run => run.monday).sort()[0]
}

/** Week of the plan: calendar weeks since the one that holds its first day, from 1. */
export function planWeekOf(date: CalendarDate, firstDay: CalendarDate): number {
	return Math.floor(daysBetween(mondayOf(firstDay), date) / 7) + 1
}
