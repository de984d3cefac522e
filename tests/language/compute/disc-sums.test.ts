import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type DiscSum, DiscSums, type DiscSupply } from '../../../language/compute/disc-sums.ts'
import { exact } from '../../../language/compute/exact.ts'
import { decimals } from './samples.ts'

const reach = exact(1000)

function supply(discs: Readonly<Record<string, number | undefined>>): readonly DiscSupply[] {
	return Object.entries(discs).map(([mass, limit]) => ({ mass: exact(mass), limit }))
}

const unlimited = supply({
	1.25: undefined,
	2.5: undefined,
	5: undefined,
	10: undefined,
	15: undefined,
	20: undefined,
	25: undefined,
})

function discs(sum: DiscSum | undefined): readonly number[] | undefined {
	return sum?.discs.map(Number)
}

describe('the discs for a side', () => {
	test.each([
		['heaviest first, until it fits no more, would end at 25', { 25: 1, 20: 2 }, 40, [20, 20]],
		['fewest discs', { 10: 4, 5: 4, 20: 1 }, 20, [20]],
		['as few with a heavier first disc', { 25: 2, 20: 2, 15: 2, 10: 2 }, 35, [25, 10]],
		['as few with a heavier second disc', { 25: 1, 20: 2, 15: 3, 10: 2, 5: 2 }, 50, [25, 20, 5]],
		['the fewest, though they begin lighter', { 25: 1, 10: 3, 5: 1, 20: 2 }, 40, [20, 20]],
		['no limit', { 25: undefined }, 250, Array.from({ length: 10 }, () => 25)],
		['nothing on the bar', { 25: 2 }, 0, []],
	] as const)('%s', (_, limits, mass, expected) => {
		expect(discs(new DiscSums(supply(limits), reach).around(exact(mass)).at)).toEqual(expected)
	})

	test('what cannot be made has neighbours only', () => {
		const { under, at, over } = new DiscSums(supply({ 20: 1, 15: 1 }), reach).around(exact(17))
		expect([discs(under), at, discs(over)]).toEqual([[15], undefined, [20]])
	})

	test('under nothing at all there is nothing, over everything neither', () => {
		const sums = new DiscSums(supply({ 20: 1, 15: 1 }), reach)
		expect(sums.around(exact(-100))).toMatchObject({ under: undefined, at: undefined, over: { discs: [] } })
		const above = sums.around(exact(36))
		expect([discs(above.under), above.at, above.over]).toEqual([[20, 15], undefined, undefined])
		expect(new DiscSums([], reach).around(exact(3))).toMatchObject({ under: { discs: [] }, over: undefined })
	})

	test('the order of the questions does not matter', () => {
		const asked = [300, 12.5, 900, 0, 61.25, 450].map(mass => exact(mass))
		const there = new DiscSums(unlimited, reach)
		const first = asked.map(mass => discs(there.around(mass).at))
		const alone = asked.map(mass => discs(new DiscSums(unlimited, reach).around(mass).at))
		expect(first).toEqual(alone)
		expect(asked.map(mass => discs(there.around(mass).at))).toEqual(first)
	})

	test('nothing over the reach is made', () => {
		const { under, at, over } = new DiscSums(unlimited, reach).around(exact(5000))
		expect([under?.total.valueOf(), at, over]).toEqual([1000, undefined, undefined])
	})
})

describe('against every pile that there is', () => {
	const small = fc
		.uniqueArray(fc.tuple(fc.constantFrom(25, 20, 17.5, 15, 11, 10, 7.5, 5, 2.5, 1.25), fc.integer({ min: 0, max: 3 })), {
			selector: ([mass]) => mass,
			maxLength: 5,
		})
		.map(kinds => kinds.map(([mass, limit]) => ({ mass: exact(mass), limit })))

	/** All piles, each heaviest disc first. */
	function allPiles(discs: readonly DiscSupply[]): readonly (readonly number[])[] {
		const sorted = discs.toSorted((a, b) => b.mass.compare(a.mass))
		return sorted.reduce<readonly (readonly number[])[]>(
			(piles, { mass, limit = 0 }) =>
				piles.flatMap(pile =>
					Array.from({ length: limit + 1 }, (_, times) => [...pile, ...Array.from({ length: times }, () => mass.valueOf())]),
				),
			[[]],
		)
	}

	const total = (pile: readonly number[]) => pile.reduce((sum, disc) => sum + disc, 0)

	/** Fewer discs first; of as many, the heavier at the first difference. */
	function better(a: readonly number[], b: readonly number[]): number {
		if (a.length !== b.length) return a.length - b.length
		const index = a.findIndex((disc, place) => disc !== b[place])
		return index < 0 ? 0 : (b[index] ?? 0) - (a[index] ?? 0)
	}

	function best(piles: readonly (readonly number[])[], wanted: number | undefined) {
		return piles.filter(pile => total(pile) === wanted).toSorted(better)[0]
	}

	test('the same neighbours and the same discs', () => {
		fc.assert(
			fc.property(small, decimals(0, 150), (discsThere, mass) => {
				const piles = allPiles(discsThere)
				const totals = [...new Set(piles.map(total))].sort((a, b) => a - b)
				const wanted = mass.valueOf()
				const { under, at, over } = new DiscSums(discsThere, reach).around(mass)
				expect(discs(under)).toEqual(
					best(
						piles,
						totals.findLast(each => each < wanted),
					),
				)
				expect(discs(at)).toEqual(best(piles, wanted))
				expect(discs(over)).toEqual(
					best(
						piles,
						totals.find(each => each > wanted),
					),
				)
			}),
			{ numRuns: 500 },
		)
	})

	test('without limits it is what limits that do not bind give', () => {
		const kinds = fc.uniqueArray(fc.constantFrom(25, 20, 15, 11, 10, 7.5), { minLength: 1, maxLength: 3 })
		fc.assert(
			fc.property(kinds, fc.integer({ min: 0, max: 8 }), (masses, tens) => {
				const mass = exact(tens * 10)
				const free = masses.map(each => ({ mass: exact(each), limit: undefined }))
				const enough = masses.map(each => ({ mass: exact(each), limit: Math.ceil(80 / each) + 1 }))
				const piles = allPiles(enough)
				const { at, over } = new DiscSums(free, reach).around(mass)
				expect(discs(at)).toEqual(best(piles, mass.valueOf()))
				const next = piles.map(total).filter(each => each > mass.valueOf())
				expect(discs(over)).toEqual(best(piles, Math.min(...next)))
			}),
		)
	})
})

test('every small disc counts, also under a load that nobody lifts', () => {
	const masses = [0.25, 0.5, 1, 1.25, 1.5, 2, 2.5, 5, 10, 15, 20, 25]
	const sums = new DiscSums(
		masses.map(mass => ({ mass: exact(mass), limit: undefined })),
		reach,
	)
	expect(discs(sums.around(exact('900.25')).at)).toEqual([...Array.from({ length: 36 }, () => 25), 0.25])
})

describe('texts that no gym would write', () => {
	test('a count that no number holds is no limit', () => {
		const sums = new DiscSums(supply({ 25: Number.POSITIVE_INFINITY, 10: 1e300 }), reach)
		expect(discs(sums.around(exact(60)).at)).toEqual([25, 25, 10])
	})

	test('discs of a millionth of a kilogram, in any number, give an answer near by', () => {
		const dust = supply({ '0.000001': undefined, '0.0000017': undefined, 25: undefined, 10: undefined })
		const { under } = new DiscSums(dust, reach).around(exact('61.234'))
		expect(discs(under)).toEqual([25, 25, 10])
	})

	test('thousands of kinds that have no common measure give an answer too', () => {
		const kinds = Array.from({ length: 3000 }, (_, index) => ({ mass: exact(`1.${index + 1}00${index + 3}`), limit: undefined }))
		const { under, over } = new DiscSums(kinds, reach).around(exact(300))
		expect(under?.total.lte(exact(300))).toBe(true)
		expect(over?.total.gt(exact(300))).toBe(true)
	})

	test('kilograms and pounds together are made exactly', () => {
		const pounds = exact(45).mul(exact('0.45359237'))
		const mixed = [
			{ mass: exact(20), limit: 2 },
			{ mass: pounds, limit: 2 },
			{ mass: exact('1.25'), limit: undefined },
		]
		const both = exact(20).add(pounds).add(exact('2.5'))
		const { at } = new DiscSums(mixed, reach).around(both)
		expect(at?.discs.map(disc => disc.toFraction())).toEqual(
			[pounds, exact(20), exact('1.25'), exact('1.25')].map(each => each.toFraction()),
		)
	})
})
