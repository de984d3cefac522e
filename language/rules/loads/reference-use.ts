import type { Best, Lifter, Plan } from '../../model/definitions.ts'
import type { Programme } from '../../model/programme.ts'
import type { LoadReference } from '../../model/schedule.ts'
import { groupedBy } from '../common/groups.ts'
import { type DatedSet, workingSetsOf } from '../common/plan-sets.ts'

/** A best that loads of a plan are taken of, and the sets that do. */
export interface BestInUse {
	readonly best: Best
	readonly reference: LoadReference
	/** By date: the first one's run is the first to use it. */
	readonly sets: readonly [DatedSet, ...DatedSet[]]
}

/** The bests that a plan takes loads of. */
export function bestsInUse(plan: Plan, lifter: Lifter, programme: Programme): readonly BestInUse[] {
	const used = workingSetsOf(plan, programme).flatMap(one => {
		const { reference } = one.set.computed
		return reference && takesOfBest(one, lifter) ? [{ ...one, reference }] : []
	})
	return groupedBy(used, one => String(one.reference.best.span.start)).map(same => ({
		best: same[0].reference.best,
		reference: same[0].reference,
		sets: same,
	}))
}

/** Kilograms and shares of a top set are taken of no best, and neither is a base that is stated in kilograms. */
function takesOfBest({ item, set: { load } }: DatedSet, lifter: Lifter): boolean {
	if (load.kind === 'rm' || load.kind === 'effort') return true
	if (load.kind !== 'percent' || load.of === 'top-set') return false
	const lift = item.movement?.percentOf?.movement.text ?? item.movementName.text
	return load.of === 'best' || lifter.bases.findLast(base => base.movement.text === lift)?.mass === undefined
}
