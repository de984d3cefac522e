import type { ExactRange } from '../../model/quantities.ts'
import type { PlannedSet } from '../../model/schedule.ts'
import { reserveOf } from '../effort.ts'
import { compare, exact, zero } from '../exact.ts'

/**
 * Fewest and most reps that a set would reach if nothing were kept back: its reps and its reps in reserve. `undefined` without reps, and
 * in clusters: no formula knows what a short rest gives back.
 */
export function repsToFailure({
	work,
	effort,
	clusters,
}: Pick<PlannedSet, 'work' | 'effort' | 'clusters'>): ExactRange | undefined {
	if (work.kind !== 'reps' || clusters !== undefined) return undefined
	const values = effort === undefined ? [] : [effort.value.from, effort.value.to]
	const reserves = values.map(value => reserveOf({ scale: effort?.scale ?? 'rir', value })).sort(compare)
	return { from: exact(work.reps.from).add(reserves[0] ?? zero), to: exact(work.reps.to).add(reserves.at(-1) ?? zero) }
}
