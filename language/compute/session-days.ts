import type { SessionDay } from '../model/definitions.ts'
import type { PartOfDay } from '../model/quantities.ts'
import { weekdayIndex } from './calendar.ts'

/**
 * Orders the days of a block's week: weekdays from monday, numbered days by their numbers (a plan gives them weekdays in that order), and
 * on one day the morning before what has no time of its own before the evening.
 */
export function compareDays(a: SessionDay, b: SessionDay): number {
	return placeOf(a) - placeOf(b) || compareParts(a.part, b.part)
}

/** Below 0 where the first is earlier in a day. */
export function compareParts(a: PartOfDay | undefined, b: PartOfDay | undefined): number {
	return orderOf(a) - orderOf(b)
}

/** "monday evening", "day 2". */
export function dayText({ weekday, number, part }: SessionDay): string {
	return `${weekday ?? `day ${number}`}${part === undefined ? '' : ` ${part}`}`
}

function placeOf({ weekday, number }: SessionDay): number {
	return weekday === undefined ? (number ?? 0) - 1 : weekdayIndex(weekday)
}

function orderOf(part: PartOfDay | undefined): number {
	return part === undefined ? 1 : part === 'morning' ? 0 : 2
}
