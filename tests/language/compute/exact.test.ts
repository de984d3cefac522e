import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { compare, decimal, exact, larger, rounded, share, smaller, squareRoot } from '../../../language/compute/exact.ts'
import { decimals } from './samples.ts'

describe('exact', () => {
	test.each([
		['72.5', 145n, 2n],
		['-2.50', -5n, 2n],
		['0.1', 1n, 10n],
		['.5', 1n, 2n],
		['5.', 5n, 1n],
		['007', 7n, 1n],
		['0.000000000000000000001', 1n, 10n ** 21n],
		['123456789012345678901234567890.1', 1234567890123456789012345678901n, 10n],
	])('reads %s', (text, numerator, denominator) => {
		const value = exact(text)
		expect([value.s * value.n, value.d]).toEqual([numerator, denominator])
	})

	test('a double is the decimal that it prints, not its binary expansion', () => {
		expect(exact(0.1).equals(exact('0.1'))).toBe(true)
		expect(exact(2.67123).d).toBe(100000n)
		expect(decimal(exact(1e-7), 7)).toBe('0.0000001')
		expect(decimal(exact(1.5e21))).toBe('1500000000000000000000')
	})

	test.each(['', '.', '-', '72,5', '1/3', '0x10', ' 5', 'NaN', '1e'])('"%s" is a fault of the caller', text => {
		expect(() => exact(text)).toThrow(RangeError)
	})

	test('any decimal text comes back as it is', () => {
		fc.assert(
			fc.property(fc.bigInt({ min: -(10n ** 20n), max: 10n ** 20n }), fc.integer({ min: 1, max: 6 }), (digits, places) => {
				const value = exact(digits).div(exact(10n ** BigInt(places)))
				expect(exact(decimal(value)).equals(value)).toBe(true)
			}),
		)
	})
})

describe('decimal', () => {
	test.each([
		['72.50', 6, '72.5'],
		['100', 6, '100'],
		['0', 6, '0'],
		['0.0000004', 6, '0'],
		['0.0000005', 6, '0.000001'],
		['-0.0000004', 6, '0'],
		['-2.5', 6, '-2.5'],
		['2.5', 0, '3'],
		['-2.5', 0, '-3'],
		['99.995', 2, '100'],
		['1.05', 1, '1.1'],
	])('%s to %i places is %s', (text, places, expected) => {
		expect(decimal(exact(text), places)).toBe(expected)
	})

	test('what has no short decimal is rounded', () => {
		expect(decimal(exact(1).div(exact(3)))).toBe('0.333333')
		expect(decimal(exact(2).div(exact(3)))).toBe('0.666667')
		expect(decimal(exact(200).div(exact(3)), 2)).toBe('66.67')
	})

	test('it is never more than half a place off', () => {
		fc.assert(
			fc.property(fc.integer(), fc.integer({ min: 1 }), fc.integer({ min: 0, max: 8 }), (numerator, denominator, places) => {
				const value = exact(numerator).div(exact(denominator))
				const off = rounded(value, places).sub(value).abs()
				expect(compare(off.mul(exact(2n * 10n ** BigInt(places))), exact(1))).toBeLessThanOrEqual(0)
			}),
		)
	})
})

describe('share', () => {
	test('57.5 % of 100 is 57.5, which binary floating point misses', () => {
		expect(100 * 0.575).not.toBe(57.5)
		expect(share(exact('57.5'), exact(100)).equals(exact('57.5'))).toBe(true)
	})

	test('shares that make up the whole give it back', () => {
		fc.assert(
			fc.property(decimals(0, 100), decimals(1, 500), (percent, mass) => {
				const rest = exact(100).sub(percent)
				expect(share(percent, mass).add(share(rest, mass)).equals(mass)).toBe(true)
			}),
		)
	})
})

test('the smaller and the larger of two', () => {
	fc.assert(
		fc.property(decimals(-50, 50), decimals(-50, 50), (a, b) => {
			expect(smaller(a, b).valueOf()).toBe(Math.min(a.valueOf(), b.valueOf()))
			expect(larger(a, b).valueOf()).toBe(Math.max(a.valueOf(), b.valueOf()))
			expect(Math.sign(compare(a, b))).toBe(Math.sign(a.valueOf() - b.valueOf()))
		}),
	)
})

describe('squareRoot', () => {
	test.each([
		['0', 9, '0'],
		['144', 9, '12'],
		['0.25', 9, '0.5'],
		['2', 9, '1.414213562'],
		['0.000000001', 3, '0'],
	])('of %s to %i places is %s', (square, places, root) => {
		expect(decimal(squareRoot(exact(square), places), 9)).toBe(root)
	})

	test('its square is not above, and that of the next place is', () => {
		fc.assert(
			fc.property(fc.bigInt({ min: 0n, max: 10n ** 30n }), fc.integer({ min: 1 }), (numerator, denominator) => {
				const value = exact(numerator).div(exact(denominator))
				const root = squareRoot(value, 6)
				const next = root.add(exact('0.000001'))
				expect(compare(root.mul(root), value)).toBeLessThanOrEqual(0)
				expect(compare(next.mul(next), value)).toBeGreaterThan(0)
			}),
		)
	})
})
