import Fraction from 'fraction.js'
import type { Exact } from '../model/quantities.ts'

/**
 * Exact arithmetic. Every number that a lifter loads is a rational over BigInt, from fraction.js: binary floating point makes
 * 57.49999999999999 of 57.5 % of 100, and a tie between two loads must be seen as the tie that it is. A decimal type would not do:
 * a third of a rep-max formula and a pound in kilograms both have to come back unchanged.
 */

/** As it is written: digits, with a decimal point and an exponent where a double prints one. */
const decimalText = /^([+-]?)(\d*)(?:\.(\d*))?(?:[eE]([+-]?\d+))?$/

/** Reps, seconds and percents are small whole numbers that are asked for again and again; nobody changes an exact number. */
const kept: Exact[] = []
const mostKept = 1000

/**
 * The exact value of a decimal number. A double stands for the shortest decimal that reads back as it (`0.1` is a tenth), not for its
 * binary expansion.
 *
 * Never throws for a decimal number; anything else is a fault of the calling code and throws a `RangeError`.
 */
export function exact(value: string | number | bigint): Exact {
	if (typeof value === 'number' && value >= 0 && value <= mostKept && Number.isInteger(value)) {
		kept[value] ??= new Fraction(BigInt(value), 1n)
		return kept[value]
	}
	if (typeof value === 'bigint') return new Fraction(value, 1n)
	const parts = decimalText.exec(String(value))
	const whole = parts?.[2] ?? ''
	const places = parts?.[3] ?? ''
	if (!parts || whole + places === '') throw new RangeError(`not a decimal number: ${value}`)
	const digits = BigInt(whole + places) * (parts[1] === '-' ? -1n : 1n)
	const exponent = BigInt(parts[4] ?? 0) - BigInt(places.length)
	return exponent < 0n ? new Fraction(digits, 10n ** -exponent) : new Fraction(digits * 10n ** exponent, 1n)
}

export const zero: Exact = exact(0)
export const one: Exact = exact(1)
export const hundred: Exact = exact(100)

/**
 * The number as a decimal text, never with an exponent: exact where at most `places` places are enough, else rounded (a half away from
 * zero); no trailing zeros.
 */
export function decimal(value: Exact, places = 6): string {
	if (value.d === 1n) return String(value.s * value.n)
	const scale = 10n ** BigInt(places)
	const scaled = (value.n * scale * 2n + value.d) / (value.d * 2n)
	const fraction = (scaled % scale).toString().padStart(places, '0').replace(/0+$/, '')
	const sign = value.s < 0n && scaled > 0n ? '-' : ''
	return `${sign}${scaled / scale}${places > 0 && fraction !== '' ? `.${fraction}` : ''}`
}

/** `percent` % of a quantity, exactly. */
export function share(percent: Exact, of: Exact): Exact {
	return percent.mul(of).div(hundred)
}

/** Below 0 where `a` is less, 0 where they are equal, above 0 where `a` is more: for sorting. */
export function compare(a: Exact, b: Exact): number {
	// Most of what is compared is whole, or of one kind of disc: then nothing has to be multiplied.
	if (a.d !== b.d || a.s !== b.s) return a.compare(b)
	if (a.n === b.n) return 0
	return a.n < b.n === a.s > 0n ? -1 : 1
}

export function smaller(a: Exact, b: Exact): Exact {
	return compare(a, b) <= 0 ? a : b
}

export function larger(a: Exact, b: Exact): Exact {
	return compare(a, b) >= 0 ? a : b
}

/** Rounded to so many decimal places, a half away from zero. */
export function rounded(value: Exact, places: number): Exact {
	return exact(decimal(value, places))
}

/** The square root of a number that is not negative, rounded down to so many decimal places, by whole numbers alone. */
export function squareRoot(value: Exact, places: number): Exact {
	const scale = 10n ** BigInt(places)
	const square = (value.n * scale * scale) / value.d
	if (square === 0n) return zero
	// Newton's method from above: it falls until it is the whole root.
	let root = 1n << BigInt((square.toString(2).length + 1) >> 1)
	for (;;) {
		const next = (root + square / root) >> 1n
		if (next >= root) return new Fraction(root, scale)
		root = next
	}
}
