import { repsWithoutRest } from '../../compute/clusters.ts'
import { compare, exact } from '../../compute/exact.ts'
import { alikeSets } from '../../compute/volume/alike-sets.ts'
import type { Work } from '../../model/prescription.ts'
import type { Exact, ExactRange } from '../../model/quantities.ts'
import type { PlannedItem, PlannedSet } from '../../model/schedule.ts'
import type { PlacedSession } from './placed-sessions.ts'

/** The heaviest work of a movement in a week. */
export interface TopLoad<S extends PlacedSession> {
	readonly session: S
	readonly item: S['items'][number]
	readonly set: S['items'][number]['sets'][number]
	/** Percent, or a mass, as the measure says. */
	readonly load: ExactRange
	/** Reps, seconds or metres; of a range the low end. */
	readonly amount: Exact
	readonly kind: Work['kind']
}

/** What a set weighs, always in the same unit; `undefined` where that cannot be known. */
export type Measure<S extends PlacedSession> = (
	set: S['items'][number]['sets'][number],
	item: S['items'][number],
	session: S,
) => ExactRange | undefined

/** By movement, over main and accessory work that is sure to be done. A movement of which any load is not known has none. */
export function topLoads<S extends PlacedSession>(sessions: readonly S[], measure: Measure<S>): ReadonlyMap<string, TopLoad<S>> {
	const tops = new Map<string, TopLoad<S>>()
	const unknown = new Set<string>()
	for (const session of sessions) {
		for (const item of session.items as readonly S['items'][number][]) {
			const name = item.movementName.text
			if (!item.working || item.role === 'test') continue
			for (const { set } of alikeSets(item.sets as readonly S['items'][number]['sets'][number][])) {
				if (set.optional) continue
				const load = measure(set, item, session)
				if (load === undefined) {
					unknown.add(name)
					continue
				}
				const top: TopLoad<S> = { session, item, set, load, ...amountOf(set) }
				const known = tops.get(name)
				if (known === undefined || isAbove(top, known)) tops.set(name, top)
			}
		}
	}
	for (const name of unknown) tops.delete(name)
	return tops
}

/** Heavier, or as heavy for more. */
function isAbove(a: TopLoad<PlacedSession>, b: TopLoad<PlacedSession>): boolean {
	const byLoad = compare(a.load.from, b.load.from)
	return byLoad > 0 || (byLoad === 0 && compare(a.amount, b.amount) > 0)
}

/** Of a set in clusters, the reps of one: that is what the load must be held for. */
function amountOf({ work, clusters }: PlannedSet): Pick<TopLoad<PlacedSession>, 'amount' | 'kind'> {
	switch (work.kind) {
		case 'reps':
			return { kind: 'reps', amount: exact(repsWithoutRest({ work, clusters }) ?? 0) }
		case 'carry':
			return { kind: 'carry', amount: work.metres.from }
		case 'hold':
		case 'time':
		case 'reps-in-time':
			return { kind: work.kind, amount: work.seconds.from }
	}
}

/** Was the lift tested in one of some weeks? What follows a test starts from another max. */
export function isTested(
	lift: string,
	weeks: readonly { readonly sessions: readonly PlacedSession[] }[],
	liftOf: (item: PlannedItem) => string,
) {
	return weeks.some(({ sessions }) =>
		sessions.some(({ items }) => items.some(item => item.working && item.role === 'test' && liftOf(item) === lift)),
	)
}
