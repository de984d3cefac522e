import type { Deload } from '../../model/definitions.ts'
import type { Exact, Mass } from '../../model/quantities.ts'
import type { PlannedLoad } from '../../model/schedule.ts'
import { exact, hundred, share, zero } from '../exact.ts'
import type { PlannedGroup } from './planned-group.ts'

/** Does the line say how to fill its weeks, or only which they are? */
export function fills(deload: Deload): boolean {
	return deload.sets !== undefined || deload.load !== undefined
}

/** A set group of a training week as the deload line makes it: its share of the sets, rounded down and at least 1, at its share of the load. */
export function lightened(group: PlannedGroup, deload: Deload): PlannedGroup {
	const ofSets = (sets: number) => {
		const left = share(deload.sets ?? hundred, exact(sets))
			.floor()
			.valueOf()
		return sets > 0 ? Math.max(left, 1) : sets
	}
	return {
		...group,
		sets: { from: ofSets(group.sets.from), to: ofSets(group.sets.to) },
		load: lighter(group.load, (deload.load ?? hundred).div(hundred)),
	}
}

/** The share acts on percent, kg or added mass. A share of the top set follows the top set, and help on an assisted lift stays. */
function lighter(load: PlannedLoad, by: Exact): PlannedLoad {
	if (load.kind === 'none' || load.kind === 'warm-up') return load
	const added = load.added.map((mass): Mass => ({ ...mass, amount: mass.amount.mul(by) }))
	switch (load.kind) {
		case 'percent':
			if (load.of === 'top-set') return load
			return { ...load, percent: { from: load.percent.from.mul(by), to: load.percent.to.mul(by) }, added }
		case 'of-bodyweight':
			return { ...load, percent: { from: load.percent.from.mul(by), to: load.percent.to.mul(by) }, added }
		case 'bodyweight':
			return load.extra !== undefined && load.extra.amount.compare(zero) < 0
				? load
				: { ...load, share: load.share.mul(by), added }
		case 'mass':
		case 'rm':
		case 'effort':
			return { ...load, share: load.share.mul(by), added }
	}
}
