import fc from 'fast-check'
import { expect, test } from 'vitest'
import { exact } from '../../../language/compute/exact.ts'
import { aroundInRow, type MassRange } from '../../../language/compute/mass-row.ts'
import { decimals } from './samples.ts'

const range = (from: number, to: number, by: number): MassRange => ({ from: exact(from), to: exact(to), by: exact(by) })

function around(mass: number, ...ranges: readonly MassRange[]) {
	const { under, at, over } = aroundInRow(exact(mass), ranges)
	return [under?.valueOf(), at?.valueOf(), over?.valueOf()]
}

test.each([
	['between two masses', 7, [6, undefined, 8]],
	['on a mass', 8, [6, 8, 10]],
	['on the first', 2, [undefined, 2, 4]],
	['under the first', 1, [undefined, undefined, 2]],
	['on the last, which the written end is not', 10, [8, 10, undefined]],
	['over the last', 11, [10, undefined, undefined]],
	['far over the last', 1000, [10, undefined, undefined]],
] as const)('2–11 by 2, %s: %d', (_, mass, expected) => {
	expect(around(mass, range(2, 11, 2))).toEqual(expected)
})

test('masses that stand alone', () => {
	const stones = [range(105, 105, 0), range(90, 90, 0), range(120, 120, 0)]
	expect(around(100, ...stones)).toEqual([90, undefined, 105])
	expect(around(105, ...stones)).toEqual([90, 105, 120])
	expect(around(50, ...stones)).toEqual([undefined, undefined, 90])
	expect(around(130, ...stones)).toEqual([120, undefined, undefined])
})

test('an empty row has nothing', () => {
	expect(around(50)).toEqual([undefined, undefined, undefined])
})

test('a row of millions of masses is not listed', () => {
	expect(around(500_000.3, range(0, 1_000_000, 0.001))).toEqual([500_000.299, 500_000.3, 500_000.301])
})

test('it finds what a look through all masses finds', () => {
	const ranges = fc.array(
		fc.tuple(decimals(0, 30), decimals(0, 20), decimals(1, 6)).map(([from, length, by]) => ({ from, to: from.add(length), by })),
		{ maxLength: 3 },
	)
	fc.assert(
		fc.property(ranges, decimals(0, 60), (row, mass) => {
			const masses = row.flatMap(({ from, to, by }) => {
				const all = [from]
				for (let next = from.add(by); next.lte(to); next = next.add(by)) all.push(next)
				return all
			})
			const sorted = masses.map(Number).sort((a, b) => a - b)
			const wanted = mass.valueOf()
			const { under, at, over } = aroundInRow(mass, row)
			expect(under?.valueOf()).toBe(sorted.findLast(each => each < wanted))
			expect(at?.valueOf()).toBe(sorted.find(each => each === wanted))
			expect(over?.valueOf()).toBe(sorted.find(each => each > wanted))
		}),
	)
})
