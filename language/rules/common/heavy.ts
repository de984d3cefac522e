import { leastPercent } from '../../compute/percents.ts'
import type { Exact } from '../../model/quantities.ts'
import type { PlannedItem } from '../../model/schedule.ts'
import type { Estimator } from '../../model/vocabulary.ts'

/** Main or accessory work with a set that is sure to be done at or above the heavy mark of its reference, however the load is written. */
export function isHeavy(item: PlannedItem, mark: Exact, estimator: Estimator): boolean {
	if (item.role !== 'main' && item.role !== 'accessory') return false
	return item.sets.some(set => !set.optional && (leastPercent(set, item, estimator)?.compare(mark) ?? -1) >= 0)
}

/** The lift that a movement's percents refer to: for counting its heavy sessions. */
export function liftOf({ movement, movementName }: PlannedItem): string {
	return movement?.percentOf?.movement.text ?? movementName.text
}

/** May its movement be trained in one session a week only? */
export function isOnceAWeek({ movement }: PlannedItem): boolean {
	return movement?.caps.some(cap => cap.sessions === 1 && cap.fromPercent === undefined) ?? false
}
