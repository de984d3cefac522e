import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { compare, decimal, exact } from '../../../language/compute/exact.ts'
import { dailyLoads, loadSpread, sessionLoad, weightedAverages } from '../../../language/compute/session-load.ts'
import { decimals } from './samples.ts'

const week = (loads: readonly number[]) => loads.map(load => exact(load))

test('felt 7 for 70 min is 490', () => {
	expect(sessionLoad({ rating: exact(7), seconds: exact(70 * 60) }).valueOf()).toBe(490)
	expect(sessionLoad({ rating: exact('6.5'), seconds: exact(90) }).valueOf()).toBe(9.75)
})

test('days without a session are 0, two sessions of a day are one sum, other days are left out', () => {
	const sessions = [
		{ on: '2026-10-05', load: exact(490) },
		{ on: '2026-10-07', load: exact(300) },
		{ on: '2026-10-07', load: exact(60) },
		{ on: '2026-10-12', load: exact(999) },
	]
	expect(dailyLoads(sessions, '2026-10-05', 7).map(Number)).toEqual([490, 0, 360, 0, 0, 0, 0])
	expect(dailyLoads(sessions, '2026-10-12', 2).map(Number)).toEqual([999, 0])
	expect(dailyLoads([], '2026-10-05', 3).map(Number)).toEqual([0, 0, 0])
})

describe('loadSpread', () => {
	test.each([[[0, 0, 0, 0, 0, 0, 0]], [[300, 300, 300, 300, 300, 300, 300]]])(
		'a week of equal days %j has no monotony, not an infinite one',
		loads => {
			const spread = loadSpread(week(loads), 'population')
			expect(spread.deviation.valueOf()).toBe(0)
			expect(spread.monotony).toBeUndefined()
			expect(spread.strain).toBeUndefined()
			expect(spread.total.valueOf()).toBe(loads.reduce((sum, load) => sum + load))
		},
	)

	test('a third of a unit on every day is still equal days', () => {
		const third = exact(1).div(exact(3))
		expect(
			loadSpread(
				Array.from({ length: 7 }, () => third),
				'sample',
			).monotony,
		).toBeUndefined()
	})

	test('the sample deviation is larger, so its monotony is less', () => {
		const [population, sample] = (['population', 'sample'] as const).map(deviation =>
			loadSpread(week([400, 0, 500, 0, 600, 0, 0]), deviation),
		)
		const ratio = Number(population?.monotony) / Number(sample?.monotony)
		expect(ratio).toBeCloseTo(Math.sqrt(7 / 6), 8)
	})

	test('monotony does not change when every day is doubled; strain doubles', () => {
		fc.assert(
			fc.property(fc.array(decimals(1, 900), { minLength: 7, maxLength: 7 }), loads => {
				const once = loadSpread(loads, 'population')
				const twice = loadSpread(
					loads.map(load => load.mul(exact(2))),
					'population',
				)
				fc.pre(once.monotony !== undefined && compare(once.deviation, exact(1)) > 0)
				expect(Number(twice.monotony)).toBeCloseTo(Number(once.monotony), 5)
				expect(Number(twice.strain) / Number(once.strain)).toBeCloseTo(2, 7)
			}),
		)
	})

	test('the order of the days does not matter', () => {
		fc.assert(
			fc.property(fc.array(decimals(0, 900), { minLength: 7, maxLength: 7 }), loads => {
				const there = loadSpread(loads, 'sample')
				const back = loadSpread(loads.toReversed(), 'sample')
				expect(decimal(there.deviation, 9)).toBe(decimal(back.deviation, 9))
				expect(there.total.equals(back.total)).toBe(true)
			}),
		)
	})
})

describe('weightedAverages', () => {
	test('it begins with the first day and stays with loads that do not change', () => {
		expect(weightedAverages(week([400, 400, 400]), 28).map(Number)).toEqual([400, 400, 400])
		expect(weightedAverages([], 7)).toEqual([])
	})

	test('it stays between the least and the greatest load so far', () => {
		fc.assert(
			fc.property(fc.array(decimals(0, 900), { minLength: 1, maxLength: 60 }), fc.integer({ min: 1, max: 60 }), (loads, span) => {
				const averages = weightedAverages(loads, span)
				expect(averages).toHaveLength(loads.length)
				for (const [day, average] of averages.entries()) {
					const soFar = loads.slice(0, day + 1).map(Number)
					expect(average.valueOf()).toBeGreaterThanOrEqual(Math.min(...soFar) - 1e-7)
					expect(average.valueOf()).toBeLessThanOrEqual(Math.max(...soFar) + 1e-7)
				}
			}),
		)
	})
})
