import { zero } from '../../compute/exact.ts'
import { inUnit } from '../../compute/mass.ts'
import type { Lifter } from '../../model/definitions.ts'
import type { ExactRange } from '../../model/quantities.ts'
import type { ScheduledItem, ScheduledSet } from '../../model/schedule.ts'

/**
 * Kilograms that a set moves, before rounding: with what is added to bodyweight, the lifter's own; `undefined` where that is not known.
 * Steps of rounding are no progress.
 */
export function liftedKilograms({ computed }: ScheduledSet, { movement }: ScheduledItem, lifter: Lifter): ExactRange | undefined {
	const { exact: from, exactTo, unit } = computed
	if (from === undefined) return undefined
	const body = lifter.bodyweight?.value
	if (movement?.loadAdded && body === undefined) return undefined
	const own = movement?.loadAdded && body ? inUnit(body, 'kg') : zero
	const kilograms = (amount: typeof from) => inUnit({ amount, unit }, 'kg').add(own)
	return { from: kilograms(from), to: kilograms(exactTo ?? from) }
}
