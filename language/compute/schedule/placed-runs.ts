import type { Block, Plan, Run } from '../../model/definitions.ts'
import type { Programme } from '../../model/programme.ts'
import type { CalendarDate } from '../../model/quantities.ts'
import { addDays, mondayOf } from '../calendar.ts'
import { weekCount } from '../outline/week-choice.ts'

/** A run on the calendar, before pauses have moved anything on. */
export interface PlacedRun {
	readonly run: Run
	readonly block: Block
	/** Of the block, run once. */
	readonly blockWeeks: number
	/** How often the block is run. */
	readonly times: number
	/** Of week 1. */
	readonly monday: CalendarDate
	/** Runs that follow one another without a day of their own have the same; a pause moves them together. */
	readonly chain: number
}

/** `run X 52 times` of a block of a year must not fill the memory. */
const mostWeeks = 520

/**
 * The plan's runs on the calendar, one after the other: each from the monday after the one before, or from the calendar week of its own
 * `from`. A run whose place depends on an unknown block or a missing start has none and is left out.
 */
export function placedRuns(plan: Plan, programme: Programme): readonly PlacedRun[] {
	const start = plan.start?.value
	const placed: PlacedRun[] = []
	let next: CalendarDate | undefined = start && mondayOf(start)
	let chain = 0
	for (const run of plan.runs) {
		if (run.from !== undefined) chain++
		const monday: CalendarDate | undefined = run.from === undefined ? next : mondayOf(run.from)
		const block = programme.find('block', run.block.text)
		if (block === undefined || monday === undefined) {
			next = undefined
			continue
		}
		const blockWeeks = weekCount(block)
		const times = Math.max(1, Math.min(run.times, Math.floor(mostWeeks / blockWeeks)))
		placed.push({ run, block, blockWeeks, times, monday, chain })
		next = addDays(monday, 7 * blockWeeks * times)
	}
	return placed
}
