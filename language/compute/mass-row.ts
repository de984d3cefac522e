import type { Exact } from '../model/quantities.ts'
import { compare, larger, one, smaller, zero } from './exact.ts'
import type { Neighbours } from './neighbours.ts'

/** Masses from–to, `by` apart, of which `to` need not be one; a single mass where both ends are equal. */
export interface MassRange {
	readonly from: Exact
	readonly to: Exact
	/** Above 0 where the ends differ. */
	readonly by: Exact
}

/** The masses of a row (dumbbells, a stack, stones) around a mass, worked out without listing them all. */
export function aroundInRow(mass: Exact, ranges: readonly MassRange[]): Neighbours<Exact> {
	let row: Neighbours<Exact> = { under: undefined, at: undefined, over: undefined }
	for (const range of ranges) {
		const { under, at, over } = aroundInRange(mass, range)
		row = {
			under: row.under && under ? larger(row.under, under) : (row.under ?? under),
			at: row.at ?? at,
			over: row.over && over ? smaller(row.over, over) : (row.over ?? over),
		}
	}
	return row
}

function aroundInRange(mass: Exact, { from, to, by }: MassRange): Neighbours<Exact> {
	const single = from.equals(to)
	const last = single ? zero : to.sub(from).div(by).floor()
	/** Steps from the first mass to the one that is looked for. */
	const way = single ? mass.sub(from) : mass.sub(from).div(by)
	const before = smaller(way.ceil().sub(one), last)
	const after = larger(way.floor().add(one), zero)
	const at = (step: Exact): Exact => from.add(step.mul(by))
	return {
		under: compare(before, zero) >= 0 ? at(before) : undefined,
		at: way.d === 1n && compare(way, zero) >= 0 && compare(way, last) <= 0 ? mass : undefined,
		over: compare(after, last) <= 0 ? at(after) : undefined,
	}
}
