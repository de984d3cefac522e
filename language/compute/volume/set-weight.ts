import type { ExactRange, Unit } from '../../model/quantities.ts'
import type { PlannedItem, PlannedSet, ScheduledSet } from '../../model/schedule.ts'
import type { Estimator } from '../../model/vocabulary.ts'
import { shareAt } from '../estimates.ts'
import { exact, hundred } from '../exact.ts'
import { repsToFailure } from '../loads/reps-to-failure.ts'
import { isOfTopSet } from '../loads/top-set.ts'
import { inUnit } from '../mass.ts'
import { eachEnd, highest, times } from './ranges.ts'
import type { SetWeight } from './totals.ts'

/** What a set of a plan weighs, in the plan's unit. */
export function scheduledWeight({ load: asked, computed }: ScheduledSet, unit: Unit): SetWeight {
	const { load, loadTo, unit: own } = computed
	const range = load && eachEnd({ from: load, to: loadTo ?? load }, amount => inUnit({ amount, unit: own }, unit))
	return { load: range, percent: isOfTopSet(asked) ? percentOnBar(computed) : computed.percent }
}

/** Back-off sets count as what is on the bar: that is what the coach has asked a share of. */
function percentOnBar({ load, loadTo, reference }: ScheduledSet['computed']): ExactRange | undefined {
	if (load === undefined || reference === undefined) return undefined
	return eachEnd({ from: load, to: loadTo ?? load }, end => end.div(reference.amount).mul(hundred))
}

/**
 * What a set weighs without a lifter: its percent, as far as the block alone gives it. Kilograms have none, and neither has a percent
 * that kilograms are added to, nor what reps give on top of somebody's bodyweight.
 */
export function plannedWeight(
	set: PlannedSet,
	{ sets, movement }: Pick<PlannedItem, 'sets' | 'movement'>,
	estimator: Estimator,
): SetWeight {
	const percentOf = (one: PlannedSet) => ownPercent(one, movement?.loadAdded ?? false, estimator)
	if (!isOfTopSet(set.load)) return { load: 'not-asked', percent: percentOf(set) }
	const others = sets.filter(other => !isOfTopSet(other.load)).map(percentOf)
	const top = others.reduce(highest, undefined)
	const { from, to } = set.load.percent
	const percent = top && { from: top.from.mul(from).div(hundred), to: top.to.mul(to).div(hundred) }
	return { load: 'not-asked', percent }
}

function ownPercent(set: PlannedSet, withBody: boolean, estimator: Estimator): ExactRange | undefined {
	const { load } = set
	if (load.kind === 'none' || load.kind === 'warm-up' || load.added.length > 0) return undefined
	switch (load.kind) {
		case 'percent':
			return load.percent
		case 'rm':
		case 'effort': {
			if (withBody) return undefined
			const reps = load.kind === 'rm' ? { from: exact(load.reps), to: exact(load.reps) } : repsToFailure(set)
			const least = reps && shareAt(reps.to, estimator)
			const most = reps && shareAt(reps.from, estimator)
			return least && most && times({ from: least, to: most }, load.share.mul(hundred))
		}
		case 'mass':
		case 'bodyweight':
		case 'of-bodyweight':
			return undefined
	}
}
