import type { CountRange, Exact, ExactRange } from '../../model/quantities.ts'
import { larger, zero } from '../exact.ts'

export const noCount: CountRange = { from: 0, to: 0 }
export const nothing: ExactRange = { from: zero, to: zero }

export function addCounts(a: CountRange, b: CountRange): CountRange {
	return { from: a.from + b.from, to: a.to + b.to }
}

export function addRanges(a: ExactRange, b: ExactRange): ExactRange {
	return { from: a.from.add(b.from), to: a.to.add(b.to) }
}

export function times(range: ExactRange, factor: Exact): ExactRange {
	return { from: range.from.mul(factor), to: range.to.mul(factor) }
}

/** The greater of both ends; `undefined` is no value at all. */
export function highest(a: ExactRange | undefined, b: ExactRange | undefined): ExactRange | undefined {
	if (a === undefined || b === undefined) return a ?? b
	return { from: larger(a.from, b.from), to: larger(a.to, b.to) }
}

/** The values of two maps, added key by key. */
export function addMaps<K, V>(a: ReadonlyMap<K, V>, b: ReadonlyMap<K, V>, add: (a: V, b: V) => V): ReadonlyMap<K, V> {
	if (b.size === 0) return a
	const sum = new Map(a)
	for (const [key, value] of b) {
		const known = sum.get(key)
		sum.set(key, known === undefined ? value : add(known, value))
	}
	return sum
}
