import { describe, expect, test } from 'vitest'
import { reserveOf } from '../../../language/compute/effort.ts'
import { rawFormula, shareAt } from '../../../language/compute/estimates.ts'
import { decimal, exact, hundred, share } from '../../../language/compute/exact.ts'
import { loadableStep } from '../../../language/compute/loading.ts'
import { inUnit } from '../../../language/compute/mass.ts'
import { loadSpread, weightedAverages } from '../../../language/compute/session-load.ts'
import type { Gym } from '../../../language/model/definitions.ts'
import type { Exact, Unit } from '../../../language/model/quantities.ts'
import { type Deviation, type Estimator, estimators } from '../../../language/model/vocabulary.ts'
import values from '../../reference/values.json'
import { carrier, gym, load } from './samples.ts'

/**
 * The published values, each with its source and whether it was read there. `ours` stands where the design decides otherwise than the
 * value's source, with the reason; it is ours that must come out.
 */

// biome-ignore lint/suspicious/noExplicitAny: each check reads the inputs of its own kind.
type Inputs = any
type Check = (inputs: Inputs) => unknown

/** Every table that gives so many reps, in percent; all that are asked for must agree. */
function percentAtReps({ reps, table }: Inputs): unknown {
	const tables: readonly Estimator[] = table === undefined ? ['chart', 'textbook'] : [table]
	const percents = new Set(tables.map(estimator => shareAt(exact(reps), estimator)?.mul(hundred).valueOf()))
	return percents.size === 1 ? [...percents][0] : [...percents]
}

function barIn({ bar, collars, limits, unit = 'kg' }: Inputs) {
	const plates = limits && Object.entries(limits).map(([disc, perSide]) => `${disc} ${unit} x ${2 * Number(perSide)}`)
	return carrier(
		['barbell'],
		gym({ bars: { barbell: `${bar} ${unit}` }, collars: `${collars} ${unit}`, ...(plates && { plates }) }),
		unit,
	)
}

function rounding({ load: target, increment, mode, oneRM, percent }: Inputs): number {
	const round: Gym['round'] = mode === 'down' || mode === 'up' ? mode : 'nearest'
	const rack = carrier(['dumbbell'], gym({ dumbbells: ['0 kg', '500 kg', `${increment} kg`] }))
	const asked = target === undefined ? share(exact(percent), exact(oneRM)) : exact(target)
	if (target === undefined) expect(decimal(asked)).toBe(String(percent))
	return load(asked, rack, 'kg', round).load.valueOf()
}

const numbers = (exacts: readonly Exact[] | undefined) => exacts?.map(Number)

const checks: Readonly<Record<string, Check>> = {
	formula: ({ weight, reps, equation }) => rawFormula(exact(weight), exact(reps), equation)?.valueOf() ?? null,
	'percent-at-reps': percentAtReps,
	'load-at-reps': ({ oneRM, reps }) => shareAt(exact(reps), 'chart')?.mul(exact(oneRM)).valueOf(),
	reserve: ({ rpe }) => reserveOf({ scale: 'rpe', value: exact(rpe) }).valueOf(),
	week: ({ dailyLoads, sd }) => {
		const spread = loadSpread(dailyLoads.map(exact), sd as Deviation)
		return {
			weekly: spread.total.valueOf(),
			mean: spread.mean.valueOf(),
			sd: spread.deviation.valueOf(),
			monotony: spread.monotony?.valueOf(),
			strain: spread.strain?.valueOf(),
		}
	},
	// After a day of nothing, a day of 1 leaves the weight itself.
	'average-weight': ({ N }) => weightedAverages([exact(0), exact(1)], N)[1]?.valueOf(),
	averages: ({ loads, N }) => numbers(weightedAverages(loads.map(exact), N)),
	conversion: ({ kg, lb }) =>
		kg === undefined
			? Number(decimal(inUnit({ amount: exact(lb), unit: 'lb' }, 'kg'), 12))
			: inUnit({ amount: exact(kg), unit: 'kg' }, 'lb').valueOf(),
	// The discs of the source, and no others, have to come back from the total that the source prints.
	total: inputs => {
		const perSide: readonly number[] = inputs.perSide
		const total = perSide.reduce((sum, disc) => sum + 2 * disc, inputs.bar + inputs.collars)
		const loaded = load(exact(total), barIn(inputs))
		expect(numbers(loaded.perSide)).toEqual(perSide)
		return loaded.load.valueOf()
	},
	discs: inputs => {
		const unit: Unit = inputs.unit ?? 'kg'
		const loaded = load(exact(inputs.total), barIn(inputs), unit)
		expect(loaded).toMatchObject({ beyond: false, under: false })
		expect(loaded.load.valueOf()).toBe(inputs.total)
		return numbers(loaded.perSide)
	},
	steps: inputs => {
		const { below, above } = loadableStep(exact(inputs.total), barIn(inputs), 'kg')
		return { below: below?.valueOf(), above: above?.valueOf() }
	},
	'under-the-bar': inputs => {
		const loaded = load(exact(inputs.total), barIn(inputs))
		return { load: loaded.load.valueOf(), under: loaded.under }
	},
	rounding,
}

function compareTo(found: unknown, expected: unknown, tolerance: number): void {
	if (typeof expected === 'number' && tolerance > 0) {
		expect(Math.abs(Number(found) - expected)).toBeLessThanOrEqual(tolerance)
	} else if (typeof expected === 'object' && expected !== null) {
		expect(Object.keys(found as object)).toEqual(Object.keys(expected))
		for (const [key, value] of Object.entries(expected)) compareTo((found as Record<string, unknown>)[key], value, tolerance)
	} else {
		expect(found).toEqual(expected)
	}
}

describe('published values', () => {
	test.each(values)('$id: $what', value => {
		const check = checks[value.check]
		if (check === undefined) throw new Error(`no check is called ${value.check}`)
		compareTo(check(value.inputs), 'ours' in value ? value.ours : value.expected, value.tolerance ?? 0)
	})

	test('every value names its source and how it was come by', () => {
		for (const value of values) {
			expect(value.source, value.id).not.toBe('')
			expect(value.read_or_memory, value.id).toMatch(/^(read|memory|read-secondary|computed-from-(read|memory))$/)
			if ('ours' in value) expect(value.because, value.id).toBeTruthy()
		}
	})

	test('there is a value for every formula and table', () => {
		const named = values.flatMap(({ inputs }) =>
			'equation' in inputs ? [inputs.equation] : 'table' in inputs ? [inputs.table] : [],
		)
		expect(new Set(named)).toEqual(new Set(estimators))
	})
})
