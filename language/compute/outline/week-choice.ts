import type { Block, Item, WeekLine } from '../../model/definitions.ts'
import type { CountRange } from '../../model/quantities.ts'

/** A line for week 5000 of a block that does not say how long it is must not fill the memory. */
const mostWeeks = 52

/** Weeks of a block; where it does not say how many, as many as its lines reach. */
export function weekCount(block: Block): number {
	const reached = () => {
		const lines = block.sessions.flatMap(session => session.items).flatMap(item => item.weekLines)
		const ranges = [...lines, ...(block.deload === undefined ? [] : [block.deload])].flatMap(line => line.weeks)
		return ranges.reduce((most, range) => Math.max(most, range.to), 1)
	}
	return block.weeks?.value ?? Math.min(reached(), mostWeeks)
}

export function covers(ranges: readonly CountRange[], week: number): boolean {
	return ranges.some(range => range.from <= week && week <= range.to)
}

/** Does the item stand in a week at all? A plan may put another in its place for some weeks. */
export function isThere({ inWeeks, notInWeeks }: Item, week: number): boolean {
	return (inWeeks === undefined || covers(inWeeks, week)) && !covers(notInWeeks ?? [], week)
}

/** The item's own line for a week; of two for one week the first. */
export function lineOf(item: Item, week: number): WeekLine | undefined {
	return item.weekLines.find(line => covers(line.weeks, week))
}

/**
 * Does `each week …` act in a week that this line gives? Beside a prescription for every week a line is an exception, and stands as it
 * is written. Without one, a line for several weeks (`week 1-4: 3 x 30 s`) is what there is to progress; a line for one week still
 * stands as it is written.
 */
export function isProgressed(item: Item, line: WeekLine | undefined): boolean {
	if (line === undefined) return item.everyWeek !== undefined
	return item.everyWeek === undefined && line.weeks.reduce((sum, range) => sum + range.to - range.from + 1, 0) > 1
}
