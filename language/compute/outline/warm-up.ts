import type { Item, Movement } from '../../model/definitions.ts'
import type { SetGroup } from '../../model/prescription.ts'
import type { Exact } from '../../model/quantities.ts'
import type { PlannedItem, PlannedLoad, PlannedSet } from '../../model/schedule.ts'
import { exact, hundred } from '../exact.ts'
import { usualRest } from './planned-group.ts'

/**
 * The sets before the first working load where a coach leaves them open: 5 reps at 40 %, 3 at 60 % and 2 at 80 % of it. Source: common
 * practice.
 */
const warmUpScheme = [
	{ reps: 5, percent: 40 },
	{ reps: 3, percent: 60 },
	{ reps: 2, percent: 80 },
] as const

/** Is it a warm-up that leaves its sets to the tool? */
export function isComputedWarmUp(item: Item): boolean {
	return item.role === 'warm-up' && item.everyWeek === undefined && item.weekLines.every(line => line.skip)
}

/** The first main item of a session that has sets: its first working load is what warm-ups lead to. */
export function firstMainItem<T extends Pick<PlannedItem, 'role' | 'sets'>>(items: readonly T[]): T | undefined {
	return items.find(item => item.role === 'main' && item.sets.length > 0)
}

/**
 * Warm-up sets for the lift that the session's first main item trains. None for another lift: half of a squat's load says nothing about
 * a plank.
 */
export function warmUpSets(item: Item, movement: Movement | undefined, main: PlannedItem | undefined): readonly PlannedSet[] {
	if (main === undefined || liftOf(item.movement.text, movement) !== liftOf(main.movementName.text, main.movement)) return []
	return warmUpScheme.map(({ reps, percent }) => {
		const load: PlannedLoad = { kind: 'warm-up', share: exact(percent).div(hundred) }
		return leadingSet(item, reps, usualRest('warm-up'), load)
	})
}

/** A set that no text asks for, on the way to one that does; it stands where the item stands. */
export function leadingSet({ span }: Item, reps: number, restSeconds: Exact, load: PlannedLoad): PlannedSet {
	const group: SetGroup = {
		span,
		dose: span,
		sets: { from: 1, to: 1 },
		work: { kind: 'reps', reps: { from: reps, to: reps }, toFailure: false, orMore: false },
		load: undefined,
		ramp: undefined,
		effort: undefined,
		until: undefined,
		clusters: undefined,
		tempo: undefined,
		restSeconds: undefined,
		eachSide: false,
	}
	const { work, effort, until, clusters, tempo, eachSide } = group
	return { group, optional: false, work, load, effort, until, clusters, tempo, restSeconds, eachSide }
}

/** The lift whose best a movement's percents refer to. */
function liftOf(name: string, movement: Movement | undefined): string {
	return movement?.percentOf?.movement.text ?? name
}
