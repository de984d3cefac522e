import type { Effort, PercentBase, SetGroup, Work } from '../../model/prescription.ts'
import type { CountRange, Exact } from '../../model/quantities.ts'
import type { PlannedLoad, PlannedSet } from '../../model/schedule.ts'
import type { Role } from '../../model/vocabulary.ts'
import { exact, one } from '../exact.ts'

/** A set group with the week's progression or deload worked in, before it is spread over its sets. */
export interface PlannedGroup {
	readonly written: SetGroup
	readonly sets: CountRange
	readonly work: Work
	/** Of a ramp: its two ends. */
	readonly load: PlannedLoad
	readonly effort: Effort | undefined
	/** The effort that ends the sets. */
	readonly until: Effort | undefined
}

/** `each week add 5000 sets` must not fill the memory. */
const mostSets = 200

/** `percentsOf` is what a bare percent refers to in this block. */
export function plannedGroup(written: SetGroup, percentsOf: PercentBase, role: Role): PlannedGroup {
	const { sets, work, effort, until } = written
	return { written, sets, work, load: plannedLoad(written, percentsOf, role), effort, until }
}

function plannedLoad({ load, ramp, effort, work }: SetGroup, percentsOf: PercentBase, role: Role): PlannedLoad {
	if (ramp !== undefined) return { kind: 'percent', percent: { from: ramp.from, to: ramp.to }, of: percentsOf, added: [] }
	switch (load?.kind) {
		case 'percent':
			return { kind: 'percent', percent: load.percent, of: load.of ?? percentsOf, added: [] }
		case 'mass':
			return { kind: 'mass', from: load.from, to: load.to, share: one, added: [] }
		case 'bodyweight':
			return { kind: 'bodyweight', extra: load.added, share: one, added: [] }
		case 'of-bodyweight':
			return { kind: 'of-bodyweight', percent: load.percent, added: [] }
		case 'rm':
			return { kind: 'rm', reps: load.reps, share: one, added: [] }
		case undefined:
			// No formula turns the effort of a hold or a carry into a load.
			// In a test it says when to stop, and the load is open.
			return effort !== undefined && work.kind === 'reps' && role !== 'test'
				? { kind: 'effort', share: one, added: [] }
				: { kind: 'none' }
	}
}

/** One entry for each set, in the order done: those beyond the low end of a range of sets are optional. */
export function setsOf(group: PlannedGroup, role: Role): readonly PlannedSet[] {
	const { written, sets, work, load, effort, until } = group
	return Array.from({ length: Math.min(sets.to, mostSets) }, (_, index) => ({
		group: written,
		optional: index >= sets.from,
		work,
		load: written.ramp === undefined || load.kind !== 'percent' ? load : rampStep(load, index, sets.from),
		effort,
		until,
		clusters: written.clusters,
		tempo: written.tempo,
		restSeconds: written.restSeconds ?? usualRest(role),
		eachSide: written.eachSide,
	}))
}

/** The sets that are sure to be done reach the top of the ramp; optional ones stay there. A single set is the top. */
function rampStep(ends: PlannedLoad & { kind: 'percent' }, index: number, sureSets: number): PlannedLoad {
	const { from, to } = ends.percent
	const way = sureSets < 2 || index >= sureSets ? one : exact(index).div(exact(sureSets - 1))
	const percent = from.add(to.sub(from).mul(way))
	return { ...ends, percent: { from: percent, to: percent } }
}

/** Seconds of rest where none are written: 3 min after main work and tests, 90 s after all else (common practice). */
export function usualRest(role: Role): Exact {
	return role === 'main' || role === 'test' ? exact(180) : exact(90)
}
