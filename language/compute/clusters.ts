import type { PlannedSet } from '../model/schedule.ts'

/**
 * The fewest reps of a set that are done without a rest: of a set in clusters those of one cluster, else all. `undefined` where a set has
 * no reps, or nobody knows how many.
 */
export function repsWithoutRest({ work, clusters }: Pick<PlannedSet, 'work' | 'clusters'>): number | undefined {
	return work.kind === 'reps' ? Math.min(work.reps.from, clusters?.reps ?? work.reps.from) : undefined
}
