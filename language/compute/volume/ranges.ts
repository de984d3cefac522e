import type { CountRange, Exact, ExactRange } from '../../model/quantities.ts'
import { exact, larger, zero } from '../exact.ts'

export const noCount: CountRange = { from: 0, to: 0 }
export const nothing: ExactRange = { from: zero, to: zero }

export function addCounts(a: CountRange, b: CountRange): CountRange {
	return { from: a.from + b.from, to: a.to + b.to }
}

/** Most of what is added up is nothing, and stays as it is. */
export function addRanges(a: ExactRange, b: ExactRange): ExactRange {
	if (a === nothing) return b
	if (b === nothing) return a
	const from = a.from.add(b.from)
	return { from, to: a.from === a.to && b.from === b.to ? from : a.to.add(b.to) }
}

export function sumCounts(counts: readonly CountRange[]): CountRange {
	return counts.reduce(addCounts, noCount)
}

export function sumRanges(ranges: readonly ExactRange[]): ExactRange {
	return ranges.reduce(addRanges, nothing)
}

/** Both ends worked out alike: once where they are the same number, as they are unless the text leaves room. */
export function eachEnd(range: ExactRange, of: (end: Exact) => Exact): ExactRange {
	const from = of(range.from)
	return { from, to: range.from === range.to ? from : of(range.to) }
}

export function times(range: ExactRange, factor: Exact): ExactRange {
	return eachEnd(range, end => end.mul(factor))
}

/** Each end of a range, as often as that end of the count says. */
export function timesCount(range: ExactRange, count: CountRange): ExactRange {
	const from = range.from.mul(exact(count.from))
	return { from, to: range.from === range.to && count.from === count.to ? from : range.to.mul(exact(count.to)) }
}

/** The greater of both ends; `undefined` is no value at all. */
export function highest(a: ExactRange | undefined, b: ExactRange | undefined): ExactRange | undefined {
	if (a === undefined || b === undefined) return a ?? b
	return { from: larger(a.from, b.from), to: larger(a.to, b.to) }
}

/** The values of maps, put together key by key. */
export function sumMaps<K, V>(maps: readonly ReadonlyMap<K, V>[], sum: (values: readonly V[]) => V): ReadonlyMap<K, V> {
	const byKey = new Map<K, V[]>()
	for (const map of maps) {
		for (const [key, value] of map) {
			const known = byKey.get(key)
			if (known === undefined) byKey.set(key, [value])
			else known.push(value)
		}
	}
	return new Map([...byKey].map(([key, values]) => [key, sum(values)]))
}
