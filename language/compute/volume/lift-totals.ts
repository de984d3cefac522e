import type { CountRange, Exact, ExactRange } from '../../model/quantities.ts'
import { exact } from '../exact.ts'
import { eachEnd, highest, noCount, nothing, sumCounts, sumRanges, times } from './ranges.ts'

/** Where the intensity zones begin, in percent: [0, 70), [70, 80), [80, 90), [90, ∞). */
const zoneStarts = [0, 70, 80, 90].map(start => exact(start))

/** What the working sets of one movement add up to. What is a range in the text is a range here. */
export interface LiftTotals {
	readonly sets: CountRange
	/** Number of lifts. */
	readonly reps: CountRange
	/** Load × reps, for each hand and each side, in the plan's unit. */
	readonly tonnage: ExactRange
	/** Reps × percent of the reference. */
	readonly relative: ExactRange
	/** What the average is made of: reps that are sure to be done and have a percent, and reps × percent of them. */
	readonly weighted: { readonly reps: number; readonly percents: ExactRange }
	/** Top intensity, percent of the reference. */
	readonly top: ExactRange | undefined
	/** Lifts by zone, [0, 70), [70, 80), [80, 90) and [90, ∞) percent; a percent range counts by its low end. */
	readonly zones: readonly CountRange[]
	/** Seconds under tension. */
	readonly underTension: ExactRange
	/** Seconds of holds. */
	readonly hold: ExactRange
	/** Metres carried. */
	readonly carry: ExactRange
	/** Dates (or days of a block's week) with a working item. */
	readonly exposures: ReadonlySet<string>
	/** Sets that lack what a total is made of, and are left out of it. */
	readonly unknown: { readonly load: number; readonly percent: number; readonly time: number }
	/** Sets that are left out of any total but the average: each once. */
	readonly excludedSets: number
}

/** What some lifts add up to: in one go, since most of a plan's sums are made of many parts. */
export function sumLifts(lifts: readonly LiftTotals[]): LiftTotals {
	const [only] = lifts
	if (only !== undefined && lifts.length === 1) return only
	return {
		sets: sumCounts(lifts.map(lift => lift.sets)),
		reps: sumCounts(lifts.map(lift => lift.reps)),
		tonnage: sumRanges(lifts.map(lift => lift.tonnage)),
		relative: sumRanges(lifts.map(lift => lift.relative)),
		weighted: {
			reps: sum(lifts.map(lift => lift.weighted.reps)),
			percents: sumRanges(lifts.map(lift => lift.weighted.percents)),
		},
		top: lifts.map(lift => lift.top).reduce(highest, undefined),
		zones: zoneStarts.map((_, zone) => sumCounts(lifts.map(lift => lift.zones[zone] ?? noCount))),
		underTension: sumRanges(lifts.map(lift => lift.underTension)),
		hold: sumRanges(lifts.map(lift => lift.hold)),
		carry: sumRanges(lifts.map(lift => lift.carry)),
		exposures: new Set(lifts.flatMap(lift => [...lift.exposures])),
		unknown: {
			load: sum(lifts.map(lift => lift.unknown.load)),
			percent: sum(lifts.map(lift => lift.unknown.percent)),
			time: sum(lifts.map(lift => lift.unknown.time)),
		},
		excludedSets: sum(lifts.map(lift => lift.excludedSets)),
	}
}

function sum(numbers: readonly number[]): number {
	return numbers.reduce((all, one) => all + one, 0)
}

/** Average intensity in percent, weighted by the reps that are sure to be done; `undefined` where no set has a percent. */
export function averagePercent({ weighted }: LiftTotals): ExactRange | undefined {
	if (weighted.reps === 0) return undefined
	const reps = exact(weighted.reps)
	return eachEnd(weighted.percents, end => end.div(reps))
}

/** The reps of a set, in the zone of its percent. */
export function zonesOf(reps: CountRange, percent: Exact | undefined): readonly CountRange[] {
	const zone = percent === undefined ? -1 : zoneStarts.findLastIndex(start => percent.compare(start) >= 0)
	return zoneStarts.map((_, index) => (index === zone ? reps : noCount))
}

/** Percent × reps that are sure to be done. */
export function weightedBy(reps: number, percent: ExactRange | undefined): LiftTotals['weighted'] {
	if (percent === undefined || reps === 0) return { reps: 0, percents: nothing }
	return { reps, percents: times(percent, exact(reps)) }
}
