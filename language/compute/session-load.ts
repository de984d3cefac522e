import type { CalendarDate, Exact } from '../model/quantities.ts'
import type { Deviation } from '../model/vocabulary.ts'
import { addDays } from './calendar.ts'
import { exact, one, rounded, squareRoot, zero } from './exact.ts'

/**
 * Session load and what is made of it over a week. The ratio of acute to chronic load is left out on purpose: its two terms are not
 * independent, and as a measure of risk it does no better than a constant denominator (Impellizzeri et al. 2021, Sports Med,
 * doi 10.1007/s40279-020-01378-6; Lolli et al. 2017).
 */

/** Places that a square root and a running average are kept to. */
const places = 9

/** Rating (0–10) × minutes, in arbitrary units. Source: Foster 1998. */
export function sessionLoad(felt: { readonly rating: Exact; readonly seconds: Exact }): Exact {
	return felt.rating.mul(felt.seconds).div(exact(60))
}

/** The load of each of `days` days from `from` on; days without a session are 0, sessions of one day are summed. */
export function dailyLoads(
	sessions: readonly { readonly on: CalendarDate; readonly load: Exact }[],
	from: CalendarDate,
	days: number,
): readonly Exact[] {
	const byDate = new Map<CalendarDate, Exact>()
	for (const { on, load } of sessions) byDate.set(on, (byDate.get(on) ?? zero).add(load))
	return Array.from({ length: days }, (_, day) => byDate.get(addDays(from, day)) ?? zero)
}

export interface LoadSpread {
	readonly total: Exact
	readonly mean: Exact
	/** Standard deviation; to 9 places. */
	readonly deviation: Exact
	/** Mean / deviation; `undefined`, not infinite, where every day is the same. */
	readonly monotony: Exact | undefined
	/** Total × monotony. */
	readonly strain: Exact | undefined
}

/**
 * Weekly load, monotony and strain of the loads of seven days, rest days as 0. The sample deviation of a week is 8 % above the
 * population's, so the two give other numbers for the same week.
 *
 * Source: Foster 1998; rest days as 0 from memory.
 */
export function loadSpread(days: readonly Exact[], deviation: Deviation): LoadSpread {
	const total = days.reduce((sum, load) => sum.add(load), zero)
	const mean = total.div(exact(days.length))
	const squares = days.reduce((sum, load) => sum.add(load.sub(mean).mul(load.sub(mean))), zero)
	const variance = squares.div(exact(deviation === 'sample' ? days.length - 1 : days.length))
	const spread = squareRoot(variance, places)
	if (spread.equals(zero)) return { total, mean, deviation: zero, monotony: undefined, strain: undefined }
	const monotony = mean.div(spread)
	return { total, mean, deviation: spread, monotony, strain: total.mul(monotony) }
}

/**
 * Exponentially weighted average of daily loads after each day: λ × load + (1 − λ) × the day before, λ = 2 / (N + 1), begun with the
 * first day's load; to 9 places.
 *
 * Source: Williams, West, Cross, Stokes 2017, Br J Sports Med 51(3):209-210.
 */
export function weightedAverages(loads: readonly Exact[], spanDays: number): readonly Exact[] {
	const weight = exact(2).div(exact(spanDays + 1))
	let average: Exact | undefined
	return loads.map(load => {
		average = average === undefined ? load : rounded(weight.mul(load).add(one.sub(weight).mul(average)), places)
		return average
	})
}
