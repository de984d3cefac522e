import type { Gym } from '../model/definitions.ts'
import type { Exact, Unit } from '../model/quantities.ts'
import { compare, exact, rounded, zero } from './exact.ts'
import type { Free, Implement, NotLoaded } from './implement.ts'
import { inUnit } from './mass.ts'
import { aroundInRow } from './mass-row.ts'
import { mapNeighbours, type Neighbours } from './neighbours.ts'

/** What becomes of a load that is asked for. */
export interface Loaded {
	/** In the unit that was asked for. */
	readonly load: Exact
	/** Discs a side, heaviest first, in the unit that was asked for; `undefined` where no bar is loaded. */
	readonly perSide: readonly Exact[] | undefined
	/** The load asked for is more than the gym can make: `load` is the heaviest that it has. */
	readonly beyond: boolean
	/** The load asked for is under the empty bar or the lightest mass: `load` is that. */
	readonly under: boolean
}

/** Places of a load without stated masses: nobody weighs a sled finer. */
const freePlaces = 2

const two = exact(2)

/**
 * A load this little over the heaviest one is rounded to it like any other, not out of reach: half of the usual smallest step
 * (common practice).
 */
const littleOver: Readonly<Record<Unit, Exact>> = { kg: exact('1.25'), lb: exact('2.5') }

/** A load that an implement can make, in its own unit. */
interface Candidate {
	readonly load: Exact
	readonly discs: readonly Exact[] | undefined
}

/**
 * The load nearest to `target` that the implement can make; a tie goes down, because the lighter of two equal errors is the safer one.
 * `round` is the gym's rule. `target` and the result are in `unit`.
 */
export function nearestLoad(target: Exact, implement: Implement, unit: Unit, round: Gym['round']): Loaded | NotLoaded {
	// Discs cannot take weight off a lifter: what assists has no stated masses.
	if (implement.kind === 'free' || (implement.kind === 'discs' && compare(target, zero) < 0)) {
		return { load: rounded(target, freePlaces), perSide: undefined, beyond: false, under: false }
	}
	const wanted = inUnit({ amount: target, unit }, implement.unit)
	const { under, at, over } = around(wanted, implement)
	const chosen = at ?? choose(wanted, under, over, round)
	if (chosen === undefined) return { missing: 'loadable', reason: noMass(implement) }
	const back = (amount: Exact): Exact => inUnit({ amount, unit: implement.unit }, unit)
	return {
		load: back(chosen.load),
		perSide: chosen.discs?.map(back),
		beyond: at === undefined && over === undefined && compare(wanted.sub(chosen.load), littleOver[implement.unit]) > 0,
		under: at === undefined && under === undefined,
	}
}

/** The loads next to a load, in `unit`: `undefined` where there is none. An implement without masses has no steps. */
export function loadableStep(
	load: Exact,
	implement: Implement,
	unit: Unit,
): { readonly below: Exact | undefined; readonly above: Exact | undefined } {
	if (implement.kind === 'free') return { below: undefined, above: undefined }
	const next = mapNeighbours(around(inUnit({ amount: load, unit }, implement.unit), implement), candidate =>
		inUnit({ amount: candidate.load, unit: implement.unit }, unit),
	)
	return { below: next.under, above: next.over }
}

function choose(
	wanted: Exact,
	under: Candidate | undefined,
	over: Candidate | undefined,
	round: Gym['round'],
): Candidate | undefined {
	if (under === undefined || over === undefined) return under ?? over
	if (round !== 'nearest') return round === 'down' ? under : over
	return compare(wanted.sub(under.load), over.load.sub(wanted)) <= 0 ? under : over
}

function around(wanted: Exact, implement: Exclude<Implement, Free>): Neighbours<Candidate> {
	switch (implement.kind) {
		case 'row':
			return mapNeighbours(aroundInRow(wanted, implement.ranges), load => ({ load, discs: undefined }))
		case 'discs':
			return mapNeighbours(implement.sums.around(wanted), ({ total }) => ({ load: total, discs: undefined }))
		case 'bar': {
			const empty = implement.mass.add(implement.collars)
			const side = implement.side.around(wanted.sub(empty).div(two))
			return mapNeighbours(side, ({ total, discs }) => ({ load: empty.add(total.mul(two)), discs }))
		}
	}
}

/** Only a row can be without a mass: a bar is one, and no discs at all are nothing added. */
function noMass(implement: Exclude<Implement, Free>): string {
	const what = implement.kind === 'discs' ? 'discs' : implement.name.replaceAll('-', ' ')
	return `The gym states no mass for its ${what} that can be used`
}
