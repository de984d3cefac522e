import type { Pause } from '../../model/definitions.ts'
import type { CalendarDate } from '../../model/quantities.ts'
import { addDays, daysBetween } from '../calendar.ts'

/** What stands on a day or later stands so many days later. */
interface Shift {
	readonly from: CalendarDate
	readonly days: number
}

/**
 * What a plan's pauses do to work on these days: everything from the first day of a pause moves on, by as many whole weeks as it takes for
 * the first session in the pause to be past it. Weekdays and order stay what they are. A pause in which nothing stands moves nothing.
 */
export function shiftsOf(pauses: readonly Pause[], dates: readonly CalendarDate[]): readonly Shift[] {
	const shifts: Shift[] = []
	let days = [...dates].sort()
	for (const { from, to } of [...pauses].sort((a, b) => (a.from < b.from ? -1 : 1))) {
		const first = days.find(day => day >= from)
		if (first === undefined || first > to) continue
		const shift = { from, days: 7 * Math.ceil((daysBetween(first, to) + 1) / 7) }
		shifts.push(shift)
		days = days.map(day => movedOn(day, [shift]))
	}
	return shifts
}

/** The day on which work stands that was meant for that day. */
export function movedOn(date: CalendarDate, shifts: readonly Shift[]): CalendarDate {
	return shifts.reduce((day, shift) => (day < shift.from ? day : addDays(day, shift.days)), date)
}
