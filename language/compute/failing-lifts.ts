import type { Breakdown, Fails, Lifter } from '../model/definitions.ts'
import type { Programme } from '../model/programme.ts'
import type { CalendarDate } from '../model/quantities.ts'

/** A lift that breaks, as a lifter's `fails` line says, with the breakdown that it names. */
export interface FailingLift {
	readonly lift: string
	readonly breakdown: Breakdown
	readonly fails: Fails
}

/** The failing lifts of a lifter; a line whose breakdown nobody defines says nothing. */
export function failingLifts(lifter: Lifter, programme: Programme): readonly FailingLift[] {
	return lifter.fails.flatMap(fails => {
		const breakdown = programme.find('breakdown', fails.breakdown.text)
		return breakdown ? [{ lift: fails.movement.text, breakdown, fails }] : []
	})
}

/** Does a line with `from` and `until` hold on every day from `first` to `last`? */
export function isInForce(
	line: { readonly from: CalendarDate | undefined; readonly until: CalendarDate | undefined },
	first: CalendarDate,
	last: CalendarDate = first,
): boolean {
	return (line.from ?? first) <= first && last <= (line.until ?? last)
}
