import { repsWithoutRest } from '../../compute/clusters.ts'
import { repsPossible } from '../../compute/estimates.ts'
import { hundred, zero } from '../../compute/exact.ts'
import { limitsFor } from '../../compute/limits.ts'
import { leastPercent } from '../../compute/percents.ts'
import { alikeSets } from '../../compute/volume/alike-sets.ts'
import type { Block } from '../../model/definitions.ts'
import type { Programme } from '../../model/programme.ts'
import type { Exact } from '../../model/quantities.ts'
import type { PlannedItem, PlannedSet, ScheduledSet } from '../../model/schedule.ts'
import type { ItemFault } from '../common/item-checks.ts'
import type { PlacedSession } from '../common/placed-sessions.ts'

/** A set of reps whose percent is known, and how many reps that percent allows. */
export interface RepSet extends ItemFault {
	/** Of a load on top of bodyweight, of both together. */
	readonly percent: Exact
	readonly possible: Exact
	/** Of a range the low end; of a set in clusters those of one, for the rest after it brings most of the strength back. */
	readonly reps: number
}

/**
 * The working sets of a session whose load is a percent of a best, or comes to one; of those that are done alike one. Left out are loads that come of the reps themselves (an
 * effort alone) and sets that are over the limit anyhow. Of a load on top of bodyweight the percent is one of both together, where the
 * bodyweight is known: a share of what is added says nothing about the whole.
 */
export function repSets(session: PlacedSession, whose: string | Block, programme: Programme): readonly RepSet[] {
	const { estimator, noSetAbove } = limitsFor(whose, programme)
	const formula = estimator?.value ?? 'epley'
	return session.items.flatMap(item =>
		item.working
			? alikeSets(item.sets).flatMap(({ set }): RepSet[] => {
					const written = isByReps(set) ? undefined : leastPercent(set, item, formula)
					const reps = repsWithoutRest(set)
					if (written === undefined || reps === undefined || isAbove(written, noSetAbove?.value)) return []
					const percent = item.movement?.loadAdded ? withBody(set) : written
					if (percent === undefined) return []
					const possible = percent.compare(hundred) > 0 ? zero : repsPossible(percent.div(hundred), formula)
					return possible === undefined ? [] : [{ item, set, cause: '', percent, possible, reps }]
				})
			: [],
	)
}

/** What is added and the body, in percent of the most that is added and the body. */
function withBody(set: PlannedSet | ScheduledSet): Exact | undefined {
	const { exact, reference } = 'computed' in set ? set.computed : { exact: undefined, reference: undefined }
	if (exact === undefined || reference?.body === undefined || reference.body.equals(zero)) return undefined
	return exact.add(reference.body).div(reference.amount.add(reference.body)).mul(hundred)
}

/** More reps than the percent allows, by more than a rep: formulas are no nearer than that. */
export function isBeyondRepMax({ reps, possible }: RepSet): boolean {
	return possible.add(1).compare(reps) < 0
}

function isByReps({ load }: PlannedSet): boolean {
	return load.kind === 'effort' || load.kind === 'none' || load.kind === 'warm-up'
}

function isAbove(percent: Exact, limit: Exact | undefined): boolean {
	return limit !== undefined && percent.compare(limit) > 0
}

/** The text that a set's load is written in. */
export function loadSpan({ set: { group } }: { readonly item: PlannedItem; readonly set: PlannedSet }) {
	return group.load?.span ?? group.ramp?.span ?? group.span
}

/** " of bodyweight and load together", where the percent is one of both. */
export function ofBothInWords({ item }: RepSet): string {
	return item.movement?.loadAdded ? ' of bodyweight and load together' : ''
}
