import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { compare, decimal, exact, zero } from '../../../language/compute/exact.ts'
import type { Implement } from '../../../language/compute/implement.ts'
import { loadableStep, nearestLoad } from '../../../language/compute/loading.ts'
import { inUnit } from '../../../language/compute/mass.ts'
import type { Exact, Unit } from '../../../language/model/quantities.ts'
import { carrier, decimals, gym, load, mass } from './samples.ts'

const two = exact(2)
const usual = carrier(['barbell'], undefined)

function sum(exacts: readonly Exact[] | undefined): Exact {
	return (exacts ?? []).reduce((total, each) => total.add(each), zero)
}

describe('the nearest load', () => {
	test.each([
		['113.4375', '112.5', [25, 20, 1.25]],
		['116', '115', [25, 20, 2.5]],
		['116.26', '117.5', [25, 20, 2.5, 1.25]],
		['60', '60', [20]],
		['20', '20', []],
	] as const)('to %s kg on a bar of 20 kg is %s', (target, expected, perSide) => {
		const loaded = load(target, usual)
		expect(decimal(loaded.load)).toBe(expected)
		expect(loaded.perSide?.map(Number)).toEqual(perSide)
		expect(loaded).toMatchObject({ beyond: false, under: false })
	})

	test('a tie goes down, and a hair over it up', () => {
		expect(load('101.25', usual).load.valueOf()).toBe(100)
		expect(load('101.2500001', usual).load.valueOf()).toBe(102.5)
	})

	test('a tie is seen where a double would miss it: 67.5 % of 150 between 100 and 102.5', () => {
		expect(load(exact('67.5').mul(exact(150)).div(exact(100)), usual).load.valueOf()).toBe(100)
	})

	test('round down and round up', () => {
		expect(load('102.4', usual, 'kg', 'down').load.valueOf()).toBe(100)
		expect(load('100.1', usual, 'kg', 'up').load.valueOf()).toBe(102.5)
		for (const round of ['down', 'up'] as const) expect(load('102.5', usual, 'kg', round).load.valueOf()).toBe(102.5)
	})

	test('collars are one pair, counted once', () => {
		const bar = carrier(['barbell'], gym({ bars: { barbell: '20 kg' }, collars: '2.5 kg' }))
		const loaded = load('142.5', bar)
		expect(loaded.load.valueOf()).toBe(142.5)
		expect(loaded.perSide?.map(Number)).toEqual([25, 25, 10])
	})

	test('one 25 and two 20 a side make 40 as 20 + 20', () => {
		const bar = carrier(['barbell'], gym({ bars: { barbell: '20 kg' }, plates: ['25 kg x 2', '20 kg x 4'] }))
		expect(load('100', bar).perSide?.map(Number)).toEqual([20, 20])
	})
})

describe('outside of what there is', () => {
	test('under the empty bar it is the bar, and marked', () => {
		const loaded = load('15', usual)
		expect(loaded.load.valueOf()).toBe(20)
		expect(loaded).toMatchObject({ perSide: [], under: true, beyond: false })
		expect(load('-100', usual).load.valueOf()).toBe(20)
	})

	const hall = gym({
		bars: { barbell: '20 kg' },
		plates: ['25 kg x 2', '10 kg x 2'],
		dumbbells: ['2 kg', '50 kg', '2 kg'],
		fixed: { stone: ['90 kg'] },
	})

	test.each([
		['barbell', '90', 90, false],
		['barbell', '91.25', 90, false],
		['barbell', '91.26', 90, true],
		['barbell', '300', 90, true],
		['dumbbell', '50.5', 50, false],
		['dumbbell', '52', 50, true],
		['stone', '91', 90, false],
		['stone', '105', 90, true],
	] as const)('%s at %s kg: %d kg, beyond the supply: %s', (word, target, expected, beyond) => {
		const loaded = load(target, carrier([word], hall))
		expect(loaded.load.valueOf()).toBe(expected)
		expect(loaded).toMatchObject({ beyond, under: false })
	})

	test('between what there is, however far, it is not beyond it', () => {
		expect(load('55', carrier(['barbell'], hall))).toMatchObject({ beyond: false, under: false })
	})

	test('no bar takes more than a tonne a side, however many discs there are', () => {
		expect(load('1000000000', usual)).toMatchObject({ beyond: true })
		expect(load('1000000000', usual).load.valueOf()).toBe(2020)
	})

	test('the lightest dumbbell is marked like an empty bar', () => {
		expect(load('1', carrier(['dumbbell'], hall))).toMatchObject({ under: true, beyond: false })
	})

	test.each([
		['no step', ['2 kg', '50 kg', '0 kg']],
		['the wrong way round', ['50 kg', '2 kg', '2 kg']],
	] as const)('a row with %s has nothing to load', (_, dumbbells) => {
		const row = carrier(['dumbbell'], gym({ dumbbells }))
		expect(nearestLoad(exact(20), row, 'kg', 'nearest')).toEqual({
			missing: 'loadable',
			reason: 'The gym states no mass for its dumbbell that can be used',
		})
	})
})

describe('any load', () => {
	const sled = carrier(['sled'], undefined)

	test('is taken as it is written', () => {
		fc.assert(
			fc.property(decimals(0, 300), target => {
				expect(load(target, sled).load.equals(target)).toBe(true)
			}),
		)
	})

	test('a load that has no short decimal is given to two places', () => {
		expect(decimal(load(exact(100).div(exact(3)), sled).load)).toBe('33.33')
		expect(load('33.33', sled)).toMatchObject({ perSide: undefined, beyond: false, under: false })
	})

	test('has no steps', () => {
		expect(loadableStep(exact(40), sled, 'kg')).toEqual({ below: undefined, above: undefined })
	})
})

describe('steps', () => {
	test.each([
		['100', '97.5', '102.5'],
		['101', '100', '102.5'],
		['20', undefined, '22.5'],
		['5', undefined, '20'],
	] as const)('around %s kg: %s and %s', (from, below, above) => {
		const step = loadableStep(exact(from), usual, 'kg')
		expect([step.below && decimal(step.below), step.above && decimal(step.above)]).toEqual([below, above])
	})

	test('nothing is over the heaviest dumbbell', () => {
		const rack = carrier(['dumbbell'], gym({ dumbbells: ['2 kg', '50 kg', '2 kg'] }))
		const step = loadableStep(exact(50), rack, 'kg')
		expect([step.below?.valueOf(), step.above]).toEqual([48, undefined])
	})
})

describe('units', () => {
	test('dumbbells in pounds under a plan in kilograms', () => {
		const rack = carrier(['dumbbell'], gym({ dumbbells: ['5 lb', '100 lb', '5 lb'] }))
		expect(load('22', rack).load.equals(inUnit(mass('50 lb'), 'kg'))).toBe(true)
		expect(decimal(loadableStep(inUnit(mass('50 lb'), 'kg'), rack, 'kg').above ?? zero)).toBe('24.94758')
	})

	test('a bar of 45 lb with discs in kilograms stays 45 lb', () => {
		const bar = carrier(['barbell'], gym({ bars: { barbell: '45 lb' }, plates: ['20 kg x 2', '10 kg x 2'] }))
		const loaded = load('60', bar)
		expect(loaded.load.equals(inUnit(mass('45 lb'), 'kg').add(exact(40)))).toBe(true)
		expect(loaded.perSide?.map(Number)).toEqual([20])
	})

	test('it does not matter in which unit a load is asked for', () => {
		const implement = fc.constantFrom(
			usual,
			carrier(['barbell'], undefined, 'lb'),
			carrier(['dumbbell'], gym({ dumbbells: ['5 lb', '100 lb', '5 lb'] })),
			carrier([], undefined, 'kg', { loadAdded: true }),
		)
		fc.assert(
			fc.property(implement, decimals(0, 400), (each, target) => {
				const kilograms = load(target, each, 'kg')
				const pounds = load(inUnit({ amount: target, unit: 'kg' }, 'lb'), each, 'lb')
				expect(inUnit({ amount: pounds.load, unit: 'lb' }, 'kg').equals(kilograms.load)).toBe(true)
				expect(pounds.perSide?.map(disc => inUnit({ amount: disc, unit: 'lb' }, 'kg').toFraction())).toEqual(
					kilograms.perSide?.map(disc => disc.toFraction()),
				)
			}),
		)
	})
})

describe('whatever is asked for', () => {
	const plates = fc
		.uniqueArray(
			fc.tuple(fc.constantFrom('25', '20', '15', '10', '5', '2.5', '1.25', '0.5'), fc.option(fc.integer({ min: 0, max: 9 }))),
			{ selector: ([disc]) => disc, maxLength: 8 },
		)
		.map(supply => supply.map(([disc, count]) => (count === null ? `${disc} kg` : `${disc} kg x ${count}`)))
	const hall = fc.record({ plates, collars: fc.constantFrom('0 kg', '0.5 kg', '2.5 kg', '5 kg') })
	const hands = fc.constantFrom(1, 2)

	test('bar + collars + discs are the load, and no disc is used that is not there', () => {
		fc.assert(
			fc.property(hall, hands, decimals(0, 400), (text, carried, target) => {
				const place = gym({ ...text, bars: { barbell: '20 kg' } })
				const loaded = load(target, carrier(['barbell'], place, 'kg', { hands: carried }))
				const collars = mass(text.collars).amount
				expect(loaded.load.equals(exact(20).add(collars).add(sum(loaded.perSide).mul(two)))).toBe(true)
				for (const { mass: disc, count } of place.plates?.value ?? []) {
					const used = loaded.perSide?.filter(each => each.equals(disc.amount)).length ?? 0
					expect(used * 2 * carried).toBeLessThanOrEqual(count ?? Number.POSITIVE_INFINITY)
				}
				const heaviestFirst = loaded.perSide?.toSorted((a, b) => compare(b, a))
				expect(loaded.perSide).toEqual(heaviestFirst)
			}),
		)
	})

	test('above the bar, with any number of discs, a load moves by half the smallest step at most', () => {
		// A step is a disc on either side, so half of one is the smallest disc.
		const smallest = fc.constantFrom<{ unit: Unit; disc: string; bar: Implement }>(
			{ unit: 'kg', disc: '1.25', bar: usual },
			{ unit: 'lb', disc: '2.5', bar: carrier(['barbell'], undefined, 'lb') },
			{ unit: 'kg', disc: '0.5', bar: carrier(['barbell'], gym({ bars: { barbell: '20 kg' }, plates: ['20 kg', '0.5 kg'] })) },
		)
		fc.assert(
			fc.property(smallest, decimals(45, 600), ({ unit, disc, bar }, target) => {
				const loaded = load(target, bar, unit)
				expect(compare(loaded.load.sub(target).abs(), exact(disc))).toBeLessThanOrEqual(0)
			}),
		)
	})

	test('what is loaded is loaded again as it is, and lies between its steps', () => {
		fc.assert(
			fc.property(hall, decimals(20, 300), (text, target) => {
				const bar = carrier(['barbell'], gym({ ...text, bars: { barbell: '20 kg' } }))
				const once = load(target, bar)
				const again = load(once.load, bar)
				expect(again.load.equals(once.load)).toBe(true)
				expect(again).toMatchObject({ perSide: once.perSide, beyond: false, under: false })
				const { below, above } = loadableStep(once.load, bar, 'kg')
				if (below) expect(compare(below, once.load)).toBeLessThan(0)
				if (above) expect(compare(above, once.load)).toBeGreaterThan(0)
			}),
		)
	})

	test('nothing that can be loaded is nearer; down is not above, up is not below', () => {
		fc.assert(
			fc.property(hall, decimals(20, 300), (text, target) => {
				const bar = carrier(['barbell'], gym({ ...text, bars: { barbell: '20 kg' } }))
				const { below, above } = loadableStep(target, bar, 'kg')
				const moved = load(target, bar).load.sub(target).abs()
				for (const other of [below, above]) {
					if (other) expect(compare(moved, other.sub(target).abs())).toBeLessThanOrEqual(0)
				}
				const down = load(target, bar, 'kg', 'down')
				const up = load(target, bar, 'kg', 'up')
				if (!down.under) expect(compare(down.load, target)).toBeLessThanOrEqual(0)
				if (above) expect(compare(up.load, target)).toBeGreaterThanOrEqual(0)
			}),
		)
	})
})
