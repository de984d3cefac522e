import { blockAt, type Place } from './place.ts'

/** A number of a week, or several, as it would be written. */
export interface WeekCandidate {
	readonly text: string
	readonly detail: string
}

/** The weeks of the item at hand that no line of its own says yet, one by one and all that follow each other; deload weeks that fill themselves are left out. */
export function unwrittenWeeks(place: Place): WeekCandidate[] {
	const block = blockAt(place)
	const item = block?.sessions.flatMap(session => session.items).findLast(one => one.span.start < place.offset)
	if (!block?.weeks || !item) return []
	const isIn = (weeks: readonly { readonly from: number; readonly to: number }[], week: number) =>
		weeks.some(range => range.from <= week && week <= range.to)
	const filled = block.deload?.sets || block.deload?.load ? block.deload.weeks : []
	// The line that is being written says nothing yet.
	const written = item.weekLines.filter(line => line.prescription || line.skip).flatMap(line => line.weeks)
	const all = Array.from({ length: block.weeks.value }, (_, index) => index + 1)
	const open = all.filter(week => !isIn(written, week) && !isIn(filled, week))
	const single = open.map(week => ({ text: String(week), detail: 'not written yet' }))
	const [first] = open
	const last = open.findLast((week, index) => first !== undefined && week === first + index)
	return first !== undefined && last !== undefined && last > first
		? [...single, { text: `${first}-${last}`, detail: 'not written yet' }]
		: single
}
