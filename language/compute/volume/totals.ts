import type { CountRange, ExactRange } from '../../model/quantities.ts'
import type { PlannedItem, PlannedSet } from '../../model/schedule.ts'
import type { Link } from '../../model/vocabulary.ts'
import { underTension } from '../duration.ts'
import { exact, zero } from '../exact.ts'
import { type LiftTotals, sumLifts, weightedBy, zonesOf } from './lift-totals.ts'
import { eachEnd, noCount, nothing, sumMaps, sumRanges, times, timesCount } from './ranges.ts'

/** Hard sets of a link, and their seconds under tension. */
export interface LinkTotals {
	readonly sets: ExactRange
	readonly seconds: ExactRange
}

/** What sets, items, sessions or weeks add up to. Working items alone count, but for the length of the session. */
export interface Totals {
	/** By movement. */
	readonly lifts: ReadonlyMap<string, LiftTotals>
	/** Hard sets by muscle: sets times the muscle's share. */
	readonly muscles: ReadonlyMap<string, ExactRange>
	/** By the first link of each movement: what needs are met by. */
	readonly links: ReadonlyMap<Link, LinkTotals>
	/** By both links, the second at one half: for charts. */
	readonly chartLinks: ReadonlyMap<Link, ExactRange>
	/** Estimated seconds of whole sessions; nothing for sets and items, whose rests depend on their session. */
	readonly seconds: ExactRange
}

export const noTotals: Totals = {
	lifts: new Map(),
	muscles: new Map(),
	links: new Map(),
	chartLinks: new Map(),
	seconds: nothing,
}

export function sumTotals(parts: readonly Totals[]): Totals {
	const [only] = parts
	if (only === undefined) return noTotals
	if (parts.length === 1) return only
	return {
		lifts: sumMaps(
			parts.map(part => part.lifts),
			sumLifts,
		),
		muscles: sumMaps(
			parts.map(part => part.muscles),
			sumRanges,
		),
		links: sumMaps(
			parts.map(part => part.links),
			some => ({ sets: sumRanges(some.map(one => one.sets)), seconds: sumRanges(some.map(one => one.seconds)) }),
		),
		chartLinks: sumMaps(
			parts.map(part => part.chartLinks),
			sumRanges,
		),
		seconds: sumRanges(parts.map(part => part.seconds)),
	}
}

/** All lifts of some totals, or those of some movements, as one. */
export function liftsTogether(totals: Totals, among: (movement: string) => boolean = () => true): LiftTotals {
	return sumLifts([...totals.lifts].flatMap(([movement, lift]) => (among(movement) ? [lift] : [])))
}

/** What one set weighs, where that can be known. */
export interface SetWeight {
	/** On the bar, or in each hand, in the plan's unit. `'not-asked'`: the totals are made without a lifter. */
	readonly load: ExactRange | 'not-asked' | undefined
	/** Percent of the reference. */
	readonly percent: ExactRange | undefined
}

const half = exact('0.5')

/** The totals of so many sets of an item that are done alike. `exposure` is their date, or their day in a block's week. */
export function setTotals(set: PlannedSet, item: PlannedItem, exposure: string, weight: SetWeight, count = 1): Totals {
	if (!item.working) return noTotals
	const { movement } = item
	const sets: CountRange = { from: set.optional ? 0 : count, to: count }
	const hardSets: ExactRange = { from: exact(sets.from), to: exact(sets.to) }
	const lift = liftOfSets(set, sets, movement?.hands ?? 1, exposure, weight)
	const [first, second] = movement?.trains?.value ?? []
	const charted = new Map<Link, ExactRange>()
	if (first !== undefined) charted.set(first, hardSets)
	if (second !== undefined && second !== first) charted.set(second, times(hardSets, half))
	return {
		lifts: new Map([[item.movementName.text, lift]]),
		muscles: new Map((movement?.muscles ?? []).map(({ muscle, share }) => [muscle, times(hardSets, share)])),
		links: first === undefined ? new Map() : new Map([[first, { sets: hardSets, seconds: lift.underTension }]]),
		chartLinks: charted,
		seconds: nothing,
	}
}

function liftOfSets(set: PlannedSet, sets: CountRange, hands: number, exposure: string, weight: SetWeight): LiftTotals {
	const { work } = set
	const written = work.kind === 'reps' ? work.reps : noCount
	const reps = { from: written.from * sets.from, to: written.to * sets.to }
	const seconds = underTension(work, set.tempo)
	// An assisted lift has nothing added, not less than nothing.
	const load = weight.load === 'not-asked' ? undefined : weight.load
	const lifted = load && eachEnd(load, atLeastNothing)
	const factor = exact(hands * (set.eachSide ? 2 : 1))
	const isLifted = work.kind === 'reps' || work.kind === 'reps-in-time'
	// As many reps as the time holds: their number is not known before, and what is made of it neither.
	const isUncounted = work.kind === 'reps-in-time'
	const unknown = {
		load: isLifted && (isUncounted || weight.load === undefined) ? sets.to : 0,
		percent: isLifted && (isUncounted || weight.percent === undefined) ? sets.to : 0,
		time: seconds === undefined ? sets.to : 0,
	}
	const unweighed = weight.load === 'not-asked' ? unknown.percent : unknown.load
	return {
		sets,
		reps,
		tonnage: lifted ? times(timesCount(lifted, reps), factor) : nothing,
		relative: weight.percent ? timesCount(weight.percent, reps) : nothing,
		weighted: weightedBy(reps.from, weight.percent),
		top: weight.percent,
		zones: zonesOf(reps, weight.percent?.from),
		underTension: seconds ? timesCount(seconds, sets) : nothing,
		hold: work.kind === 'hold' ? timesCount(work.seconds, sets) : nothing,
		carry: work.kind === 'carry' ? timesCount(work.metres, sets) : nothing,
		exposures: new Set([exposure]),
		unknown,
		excludedSets: Math.max(unweighed, unknown.time),
	}
}

function atLeastNothing(load: ExactRange['from']): ExactRange['from'] {
	return load.compare(zero) < 0 ? zero : load
}
