import type { PlannedItem, PlannedLoad, PlannedSet } from '../../model/schedule.ts'
import { exact, hundred } from '../exact.ts'
import { isComputedWarmUp, leadingSet } from './warm-up.ts'

/**
 * The sets up to a test whose load is open, in percent of the last known best for as many reps as are tested: 5 reps at 50 %, 3 at 70 %,
 * 2 at 80 % and 1 at 90 %, with 3 min of rest before what is heavy. From there on the lifter goes up as it feels. Source: common practice.
 */
const leadUpScheme = [
	{ reps: 5, percent: 50, restSeconds: 90 },
	{ reps: 3, percent: 70, restSeconds: 180 },
	{ reps: 2, percent: 80, restSeconds: 180 },
	{ reps: 1, percent: 90, restSeconds: 180 },
] as const

/**
 * A session's items with the sets that lead up to its tests: in the warm-up of that movement, where the session has one that leaves its
 * sets open, else right before the test, as a warm-up of its own. A warm-up with sets of its own, or one before a test that goes back to
 * back with another item, stays as it is.
 */
export function withLeadUps(items: readonly PlannedItem[]): readonly PlannedItem[] {
	return items.flatMap(item => {
		const sets = item.item.withItemAbove ? [] : leadUpSets(item)
		if (item.from === 'computed-warm-up') {
			const test = items.find(one => isOfOneMovement(one, item) && leadUpSets(one).length > 0)
			return [test === undefined ? item : { ...item, sets: leadUpSets(test) }]
		}
		const hasWarmUp = items.some(
			one => one.role === 'warm-up' && isOfOneMovement(one, item) && (one.sets.length > 0 || isComputedWarmUp(one.item)),
		)
		if (sets.length === 0 || hasWarmUp) return [item]
		const leadUp: PlannedItem = { ...item, role: 'warm-up', from: 'computed-warm-up', sets, working: false }
		return [leadUp, item]
	})
}

/** Empty where it is no test, or its load is written, or it has no reps that a best could say the load of. */
function leadUpSets({ role, item, sets }: PlannedItem): readonly PlannedSet[] {
	const [first] = sets
	if (role !== 'test' || first?.work.kind !== 'reps' || sets.some(set => set.load.kind !== 'none')) return []
	const tested = first.work.reps.from
	return leadUpScheme.map(({ reps, percent, restSeconds }) => leadingSet(item, reps, exact(restSeconds), loadOf(percent, tested)))
}

/** A share of the best, or, where more reps than one are tested, of the load that it gives for as many. */
function loadOf(percent: number, tested: number): PlannedLoad {
	const share = exact(percent)
	if (tested === 1) return { kind: 'percent', percent: { from: share, to: share }, of: 'best', added: [] }
	return { kind: 'rm', reps: tested, share: share.div(hundred), added: [] }
}

function isOfOneMovement(a: PlannedItem, b: PlannedItem): boolean {
	return a.movementName.text === b.movementName.text
}
