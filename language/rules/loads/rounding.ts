import { exact, hundred } from '../../compute/exact.ts'
import { implementFor } from '../../compute/implement.ts'
import { nearestLoad } from '../../compute/loading.ts'
import type { Exact, Unit } from '../../model/quantities.ts'
import type { DatedSet } from '../common/plan-sets.ts'

/** A load that is no farther away than this, in percent of itself or in its unit, is rounded without a word (common practice). */
export const roundingPercent = exact('2.5')
export const roundingAmount: Readonly<Record<Unit, Exact>> = { kg: exact('1.25'), lb: exact('2.5') }

/** The load nearest to an exact one that the gym has for a set, whichever way the gym rounds; `undefined` where none can be known. */
export function nearestFor({ item, session, set }: DatedSet, wanted: Exact): Exact | undefined {
	const { unit } = set.computed
	const implement = item.movement && implementFor(item.movement, session.scheduled.gym, unit, session.scheduled.uses)
	if (implement === undefined || 'missing' in implement) return undefined
	const loaded = nearestLoad(wanted, implement, unit, 'nearest')
	return 'missing' in loaded ? undefined : loaded.load
}

/** How far a load is from what is wanted. */
export function distance(load: Exact, wanted: Exact): Exact {
	return load.sub(wanted).abs()
}

/** Is it far enough to be another load than the one that was meant? */
export function isFar(load: Exact, wanted: Exact, unit: Unit): boolean {
	const off = distance(load, wanted)
	return off.compare(roundingAmount[unit]) > 0 && isFarInPercent(load, wanted)
}

export function isFarInPercent(load: Exact, wanted: Exact): boolean {
	return distance(load, wanted).mul(hundred).compare(wanted.abs().mul(roundingPercent)) > 0
}
