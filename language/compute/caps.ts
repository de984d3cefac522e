import type { FrequencyCap } from '../model/definitions.ts'
import type { PlannedItem } from '../model/schedule.ts'
import type { Estimator } from '../model/vocabulary.ts'
import { leastPercent } from './percents.ts'

/**
 * Does a day with these items of a movement count for its cap? Each working item does; with `from 75%` only where a set is sure to be at
 * or above it.
 */
export function countsForCap({ fromPercent }: FrequencyCap, items: readonly PlannedItem[], estimator: Estimator): boolean {
	const working = items.filter(item => item.working)
	if (fromPercent === undefined) return working.length > 0
	return working.some(item =>
		item.sets.some(set => !set.optional && (leastPercent(set, item, estimator)?.compare(fromPercent) ?? -1) >= 0),
	)
}

/** `on monday` and `on day 1` may turn out to be one day: as few days as they can be. `days` says of each whether its weekday is known. */
export function leastDays(days: readonly boolean[]): number {
	const placed = days.filter(isPlaced => isPlaced).length
	return Math.max(placed, days.length - placed)
}
