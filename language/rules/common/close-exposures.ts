import { exact } from '../../compute/exact.ts'
import { leastPercent } from '../../compute/percents.ts'
import type { Movement } from '../../model/definitions.ts'
import type { Estimator } from '../../model/vocabulary.ts'
import { type Exposure, exposuresOf } from './exposures.ts'
import type { PlacedSession } from './placed-sessions.ts'

/** Two exposures of a movement, one after the other, on days that are closer than its definition asks for. */
export interface ClosePair<S extends PlacedSession> {
	readonly movement: Movement
	readonly apartDays: number
	readonly earlier: Exposure<S>
	readonly later: Exposure<S>
	/** Days from one to the other. */
	readonly gap: number
}

/** A main lift under this percent asks for no day between (common practice). */
const restedFrom = exact(70)

/** Over all sessions that have a day, also across the borders of weeks, blocks and plans. */
export function closePairs<S extends PlacedSession>(sessions: readonly S[], estimator: Estimator): readonly ClosePair<S>[] {
	const placed = sessions.filter(session => session.day !== undefined)
	return [...exposuresOf(placed).values()].flatMap(exposures => {
		const movement = exposures[0]?.items[0]?.item.movement
		const apartDays = movement?.apartDays?.value
		if (movement === undefined || apartDays === undefined) return []
		const counted = exposures.filter(exposure => !isLight(exposure, estimator)).sort((a, b) => dayOf(a) - dayOf(b))
		return counted.flatMap((later, index): ClosePair<S>[] => {
			const earlier = counted[index - 1]
			const gap = earlier === undefined ? apartDays : dayOf(later) - dayOf(earlier)
			return earlier !== undefined && gap < apartDays ? [{ movement, apartDays, earlier, later, gap }] : []
		})
	})
}

function dayOf(exposure: Exposure<PlacedSession>): number {
	return exposure.session.day ?? 0
}

/** Main work that is known to stay under the mark. */
function isLight(exposure: Exposure<PlacedSession>, estimator: Estimator): boolean {
	return exposure.items.every(
		({ item }) =>
			item.role === 'main' && item.sets.every(set => (leastPercent(set, item, estimator)?.compare(restedFrom) ?? 1) < 0),
	)
}
