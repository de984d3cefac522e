import type { WeekLine } from '../../model/definitions.ts'
import type { CountRange } from '../../model/quantities.ts'
import type { TextEdit } from '../../model/reading.ts'
import { weeksInWords } from './weeks.ts'

/** No line is looked at for more weeks than a year has. */
const mostWeeks = 52

/** The weeks of a line, one by one. */
export function weeksOf(ranges: readonly CountRange[]): readonly number[] {
	const weeks = ranges.flatMap(({ from, to }) =>
		Array.from({ length: Math.min(to - from + 1, mostWeeks) }, (_, index) => from + index),
	)
	return [...new Set(weeks)].sort((a, b) => a - b)
}

/** "3", "3-5", "3, 7": weeks as they are written. */
export function weekNumbers(weeks: readonly number[]): string {
	return weeksInWords(weeks)
		.replace(/^weeks? /, '')
		.replace(' and ', ', ')
}

/** A line of the same work for other weeks. */
export function weekLineWithWeeks(line: WeekLine, weeks: readonly number[]): TextEdit {
	const { prescription, span } = line
	const numbers = `week ${weekNumbers(weeks)}: `
	if (prescription === undefined) return { span, text: `${numbers}skip` }
	return { span: { start: span.start, end: prescription.span.start }, text: numbers }
}
