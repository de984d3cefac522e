import type { Exact, Mass } from '../model/quantities.ts'
import type { PlannedItem, PlannedSet, ScheduledSet } from '../model/schedule.ts'
import type { Estimator } from '../model/vocabulary.ts'
import { exact, zero } from './exact.ts'
import { isOfTopSet } from './loads/top-set.ts'
import { plannedWeight } from './volume/set-weight.ts'

const highestPercent = exact(150)

/**
 * The percent of its reference that a set is sure to reach: of a range the low end, for rules about too much. Without a lifter it is
 * known as far as the block alone gives it: not for kilograms, and not for a percent of a base.
 */
export function leastPercent(set: PlannedSet | ScheduledSet, item: PlannedItem, estimator: Estimator): Exact | undefined {
	if (isSlip(set)) return undefined
	if ('computed' in set) return set.computed.percent?.from
	return withoutAdded(set, item, estimator, mass => mass.amount.compare(zero) >= 0)?.from
}

/** The percent of its reference that a set does not pass, for rules about too little. */
export function mostPercent(set: PlannedSet | ScheduledSet, item: PlannedItem, estimator: Estimator): Exact | undefined {
	if (isSlip(set)) return undefined
	if ('computed' in set) return set.computed.percent?.to
	return withoutAdded(set, item, estimator, mass => mass.amount.compare(zero) <= 0)?.to
}

/** More than anyone lifts is reported as a number, and says nothing about the training. */
function isSlip({ group: { load } }: PlannedSet): boolean {
	return load?.kind === 'percent' && load.percent.to.compare(highestPercent) > 0
}

/** The percent of a block's set, where what progression lines add or take in kilograms only moves it to the one side. */
function withoutAdded(set: PlannedSet, item: PlannedItem, estimator: Estimator, oneSided: (added: Mass) => boolean) {
	const own = stripped(set, oneSided)
	const others = isOfTopSet(own.load)
		? item.sets.filter(each => !isOfTopSet(each.load)).map(each => stripped(each, oneSided))
		: none
	if (isOfBase(own) || others.some(isOfBase)) return undefined
	return plannedWeight(own, { sets: others, movement: item.movement }, estimator).percent
}

const none: readonly PlannedSet[] = []

function isOfBase({ load }: PlannedSet): boolean {
	return load.kind === 'percent' && load.of === 'base'
}

/** The set itself where nothing is added. */
function stripped(set: PlannedSet, oneSided: (added: Mass) => boolean): PlannedSet {
	const { load } = set
	if (load.kind === 'none' || load.kind === 'warm-up' || load.added.length === 0 || !load.added.every(oneSided)) return set
	return { ...set, load: { ...load, added: [] } }
}
