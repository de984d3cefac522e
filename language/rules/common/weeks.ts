import { daysBetween } from '../../compute/calendar.ts'
import type { CalendarDate } from '../../model/quantities.ts'
import { counted, inWords } from './words.ts'

/** "week 1", "weeks 1-3", "weeks 1-3 and 5": two neighbours are listed, three or more are a range. */
export function weeksInWords(weeks: Iterable<number>): string {
	const numbers = [...new Set(weeks)].sort((a, b) => a - b)
	const parts = stretches(numbers).map(({ from, to }) => (to - from === 0 ? `${from}` : `${from}-${to}`))
	return `week${numbers.length === 1 ? '' : 's'} ${inWords(parts)}`
}

/** "the week of 2026-10-05", "the weeks of 2026-10-05 and 2026-11-02", "the 3 weeks from 2026-10-05", by their mondays. */
export function calendarWeeksInWords(mondays: Iterable<CalendarDate>): string {
	const sorted = [...new Set(mondays)].sort()
	const first = sorted[0] ?? ''
	const last = sorted.at(-1) ?? first
	if (sorted.length > 2 && daysBetween(first, last) === 7 * (sorted.length - 1)) {
		return `the ${counted(sorted.length, 'week')} from ${first}`
	}
	return `the week${sorted.length === 1 ? '' : 's'} of ${inWords(sorted)}`
}

/** Numbers in a row, as first and last. */
function stretches(numbers: readonly number[]): readonly { readonly from: number; readonly to: number }[] {
	const found: { from: number; to: number }[] = []
	for (const number of numbers) {
		const last = found.at(-1)
		if (last !== undefined && last.to === number - 1) last.to = number
		else found.push({ from: number, to: number })
	}
	return found
}
