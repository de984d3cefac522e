import type { PlannedSet, ScheduledSet } from '../../model/schedule.ts'

/** Sets that follow each other and ask for the same: what is worked out of one holds for each. */
export interface AlikeSets<S extends PlannedSet> {
	readonly set: S
	readonly count: number
}

/** The sets of an item in their order, those of one group together where nothing tells them apart, as most of `4 x 5` are. */
export function alikeSets<S extends PlannedSet>(sets: readonly S[]): readonly AlikeSets<S>[] {
	const alike: { set: S; count: number }[] = []
	for (const set of sets) {
		const last = alike.at(-1)
		if (last !== undefined && isAlike(last.set, set)) last.count++
		else alike.push({ set, count: 1 })
	}
	return alike
}

/** Sets of one group share what they are made of: whether it is the same thing is enough to ask. */
function isAlike(a: PlannedSet | ScheduledSet, b: PlannedSet | ScheduledSet): boolean {
	const loadOf = (set: PlannedSet | ScheduledSet) => ('computed' in set ? set.computed : undefined)
	return a.group === b.group && a.optional === b.optional && a.work === b.work && a.load === b.load && loadOf(a) === loadOf(b)
}
