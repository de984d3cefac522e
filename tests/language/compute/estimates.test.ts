import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
	estimateMax,
	estimateText,
	estimatorSource,
	estimatorTitle,
	rawFormula,
	repsPossible,
	shareAt,
	shareText,
} from '../../../language/compute/estimates.ts'
import { compare, decimal, exact } from '../../../language/compute/exact.ts'
import { estimators } from '../../../language/model/vocabulary.ts'
import { decimals, mass } from './samples.ts'

const estimator = fc.constantFrom(...estimators)
/** Whole and half reps that every table and formula has. */
const halfReps = fc.integer({ min: 2, max: 24 }).map(halves => exact(halves).div(exact(2)))

describe('one rep', () => {
	test.each(estimators)('%s: a load for one rep is the max, whatever the formula gives there', name => {
		expect(estimateMax(exact('102.5'), exact(1), name)?.valueOf()).toBe(102.5)
		expect(shareAt(exact(1), name)?.valueOf()).toBe(1)
		expect(repsPossible(exact(1), name)?.valueOf()).toBe(1)
	})

	test('most formulas give another number there', () => {
		const own = estimators.filter(name => rawFormula(exact(100), exact(1), name)?.equals(exact(100)) === true)
		expect(own).toEqual(['brzycki', 'lombardi', 'chart', 'textbook'])
	})

	test('a share that the formula reaches at less than one rep allows one', () => {
		expect(repsPossible(exact('0.98'), 'epley')?.valueOf()).toBe(1)
		expect(repsPossible(exact('0.93'), 'mayhew')?.valueOf()).toBe(1)
	})
})

describe('outside the domain there is no number', () => {
	test.each([
		['epley', 0],
		['epley', -5],
		['lombardi', 0],
		['brzycki', 37],
		['brzycki', 40],
		['lander', 38],
		['chart', 13],
		['textbook', 16],
		['chart', 0.5],
	] as const)('%s at %d reps', (name, reps) => {
		expect(estimateMax(exact(100), exact(reps), name)).toBeUndefined()
		expect(shareAt(exact(reps), name)).toBeUndefined()
	})

	test.each([
		['epley', '0'],
		['epley', '-0.5'],
		['epley', '1.01'],
		['mayhew', '0.52'],
		['wathan', '0.488'],
		['chart', '0.69'],
		['textbook', '0.64'],
	] as const)('%s at a share of %s', (name, share) => {
		expect(repsPossible(exact(share), name)).toBeUndefined()
	})

	test('just inside there is one', () => {
		expect(estimateMax(exact(100), exact('36.5'), 'brzycki')?.valueOf()).toBe(7200)
		expect(repsPossible(exact('0.7'), 'chart')?.valueOf()).toBe(12)
		expect(repsPossible(exact('0.65'), 'textbook')?.valueOf()).toBe(15)
	})

	test('no number of reps and no share can make it throw', () => {
		const far = fc.tuple(fc.bigInt({ min: -(10n ** 400n), max: 10n ** 400n }), fc.bigInt({ min: 1n, max: 10n ** 400n }))
		fc.assert(
			fc.property(estimator, far, (name, [numerator, denominator]) => {
				const value = exact(numerator).div(exact(denominator))
				estimateMax(exact(100), value, name)
				shareAt(value, name)
				repsPossible(value, name)
			}),
		)
	})
})

describe('identities of the formulas', () => {
	test('Epley and Brzycki agree at 10 reps, Brzycki and O’Conner at 5', () => {
		const max = (reps: number, name: (typeof estimators)[number]) => estimateMax(exact(90), exact(reps), name)?.toFraction()
		expect(max(10, 'epley')).toBe('120')
		expect(max(10, 'brzycki')).toBe('120')
		expect(max(5, 'brzycki')).toBe(max(5, 'oconner'))
	})

	test('Epley, Brzycki, Lander and O’Conner stay rational', () => {
		expect(estimateMax(exact(100), exact(5), 'epley')?.toFraction()).toBe('350/3')
		expect(estimateMax(exact(100), exact(8), 'brzycki')?.toFraction()).toBe('3600/29')
		expect(estimateMax(exact(100), exact(3), 'lander')?.toFraction()).toBe('1000000000/9328631')
		expect(estimateMax(exact(100), exact(3), 'oconner')?.toFraction()).toBe('215/2')
	})

	test.each([
		['lombardi', (n: number) => n ** 0.1],
		['mayhew', (n: number) => 100 / (52.2 + 41.9 * Math.exp(-0.055 * n))],
		['wathan', (n: number) => 100 / (48.8 + 53.8 * Math.exp(-0.075 * n))],
	] as const)('%s is computed to 1e-9', (name, factor) => {
		for (let reps = 2; reps <= 20; reps++) {
			expect(Math.abs(Number(estimateMax(exact(100), exact(reps), name)) - 100 * factor(reps))).toBeLessThan(1e-9)
		}
	})
})

describe('tables', () => {
	test('between two rows they follow a straight line', () => {
		expect(shareAt(exact('1.5'), 'chart')?.valueOf()).toBe(0.975)
		expect(shareAt(exact('7.5'), 'textbook')?.valueOf()).toBe(0.815)
		expect(repsPossible(exact('0.815'), 'chart')?.valueOf()).toBe(7.5)
	})

	test('the chart has no row for 11 reps, the textbook none for 13 and 14', () => {
		expect(shareAt(exact(11), 'chart')?.valueOf()).toBe(0.725)
		expect(decimal(shareAt(exact(13), 'textbook') ?? exact(0))).toBe('0.663333')
	})
})

describe('the ways back', () => {
	test('the load at a share of a max points back to that max, exactly', () => {
		fc.assert(
			fc.property(estimator, halfReps, decimals(20, 400), (name, reps, max) => {
				const share = shareAt(reps, name)
				expect(share && estimateMax(max.mul(share), reps, name)?.equals(max)).toBe(true)
			}),
		)
	})

	test('reps to share to reps', () => {
		fc.assert(
			fc.property(estimator, halfReps, (name, reps) => {
				const share = shareAt(reps, name)
				const back = share && repsPossible(share, name)
				expect(back && Math.abs(back.sub(reps).valueOf())).toBeLessThan(1e-8)
			}),
		)
	})

	test('share to reps to share', () => {
		fc.assert(
			fc.property(estimator, fc.integer({ min: 700, max: 910 }), (name, thousandths) => {
				const share = exact(thousandths).div(exact(1000))
				const reps = repsPossible(share, name)
				const back = reps && shareAt(reps, name)
				expect(back && Math.abs(back.sub(share).valueOf())).toBeLessThan(1e-8)
			}),
		)
	})

	test('more reps are never a greater share, a greater share never more reps', () => {
		fc.assert(
			fc.property(estimator, halfReps, halfReps, (name, a, b) => {
				const [shareA, shareB] = [shareAt(a, name), shareAt(b, name)]
				expect(shareA && shareB && compare(shareA, shareB) * compare(a, b)).toBeLessThanOrEqual(0)
			}),
		)
	})

	test('a max grows with the load in proportion', () => {
		fc.assert(
			fc.property(estimator, halfReps, decimals(1, 300), decimals(1, 3), (name, reps, load, times) => {
				const max = estimateMax(load, reps, name)
				expect(max && estimateMax(load.mul(times), reps, name)?.equals(max.mul(times))).toBe(true)
			}),
		)
	})
})

describe('in words', () => {
	test.each([
		['epley', 5, 'Epley: 100 kg × (1 + 5/30)', 'Epley: 1 ÷ (1 + 5/30)'],
		['brzycki', 5, 'Brzycki: 100 kg × 36 ÷ (37 − 5)', 'Brzycki: (37 − 5) ÷ 36'],
		['lander', 5, 'Lander: 100 × 100 kg ÷ (101.3 − 2.67123 × 5)', 'Lander: (101.3 − 2.67123 × 5) %'],
		['lombardi', 5, 'Lombardi: 100 kg × 5^0.1', 'Lombardi: 1 ÷ 5^0.1'],
		['mayhew', 5, 'Mayhew: 100 × 100 kg ÷ (52.2 + 41.9 × e^(−0.055 × 5))', 'Mayhew: (52.2 + 41.9 × e^(−0.055 × 5)) %'],
		['oconner', 5, 'O’Conner: 100 kg × (1 + 0.025 × 5)', 'O’Conner: 1 ÷ (1 + 0.025 × 5)'],
		['wathan', 5, 'Wathan: 100 × 100 kg ÷ (48.8 + 53.8 × e^(−0.075 × 5))', 'Wathan: (48.8 + 53.8 × e^(−0.075 × 5)) %'],
		['chart', 5, 'Training load chart: 100 kg ÷ 87 % at 5 reps', 'Training load chart: 87 % at 5 reps'],
		['textbook', 7.5, 'Textbook table: 100 kg ÷ 81.5 % at 7.5 reps', 'Textbook table: 81.5 % at 7.5 reps'],
		['epley', 1, '100 kg for one rep is the max', 'one rep to failure is the whole max'],
	] as const)('%s at %d', (name, reps, max, share) => {
		expect(estimateText(mass('100 kg'), exact(reps), name)).toBe(max)
		expect(shareText(exact(reps), name)).toBe(share)
	})

	test('every one has its own title, and a source that says where it was not read', () => {
		expect(new Set(estimators.map(estimatorTitle)).size).toBe(estimators.length)
		expect(new Set(estimators.map(estimatorSource)).size).toBe(estimators.length)
		const read = estimators.filter(name => !estimatorSource(name).includes('from memory'))
		expect(read).toEqual(['lander', 'chart'])
	})
})
