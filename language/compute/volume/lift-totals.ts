import type { CountRange, Exact, ExactRange } from '../../model/quantities.ts'
import { exact } from '../exact.ts'
import { addCounts, addRanges, eachEnd, highest, noCount, nothing, times } from './ranges.ts'

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

export const noLifts: LiftTotals = {
	sets: noCount,
	reps: noCount,
	tonnage: nothing,
	relative: nothing,
	weighted: { reps: 0, percents: nothing },
	top: undefined,
	zones: zoneStarts.map(() => noCount),
	underTension: nothing,
	hold: nothing,
	carry: nothing,
	exposures: new Set(),
	unknown: { load: 0, percent: 0, time: 0 },
	excludedSets: 0,
}

export function addLifts(a: LiftTotals, b: LiftTotals): LiftTotals {
	return {
		sets: addCounts(a.sets, b.sets),
		reps: addCounts(a.reps, b.reps),
		tonnage: addRanges(a.tonnage, b.tonnage),
		relative: addRanges(a.relative, b.relative),
		weighted: { reps: a.weighted.reps + b.weighted.reps, percents: addRanges(a.weighted.percents, b.weighted.percents) },
		top: highest(a.top, b.top),
		zones: zoneStarts.map((_, zone) => addCounts(a.zones[zone] ?? noCount, b.zones[zone] ?? noCount)),
		underTension: addRanges(a.underTension, b.underTension),
		hold: addRanges(a.hold, b.hold),
		carry: addRanges(a.carry, b.carry),
		exposures: a.exposures.size === 0 ? b.exposures : new Set([...a.exposures, ...b.exposures]),
		unknown: {
			load: a.unknown.load + b.unknown.load,
			percent: a.unknown.percent + b.unknown.percent,
			time: a.unknown.time + b.unknown.time,
		},
		excludedSets: a.excludedSets + b.excludedSets,
	}
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
