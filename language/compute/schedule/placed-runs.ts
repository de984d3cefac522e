import type { Plan } from '../../model/definitions.ts'
import type { Programme } from '../../model/programme.ts'
import type { CalendarDate } from '../../model/quantities.ts'
import type { ScheduledRun } from '../../model/schedule.ts'
import { addDays, mondayOf } from '../calendar.ts'
import { weekCount } from '../outline/week-choice.ts'

/**
 * The plan's runs on the calendar, one after the other: each from the monday after the one before, or from the calendar week of its own
 * `from`. A run whose place depends on an unknown block or a missing start has none and is left out.
 */
export function placedRuns(plan: Plan, programme: Programme): readonly ScheduledRun[] {
	const start = plan.start?.value
	const placed: ScheduledRun[] = []
	let next: CalendarDate | undefined = start && mondayOf(start)
	for (const run of plan.runs) {
		const monday: CalendarDate | undefined = run.from === undefined ? next : mondayOf(run.from)
		const block = programme.find('block', run.block.text)
		if (block === undefined || monday === undefined) {
			next = undefined
			continue
		}
		const weeks = weekCount(block)
		const firstDay = start !== undefined && start > monday ? start : monday
		placed.push({ run, block, firstDay, monday, weeks })
		next = addDays(monday, 7 * weeks)
	}
	return placed
}
