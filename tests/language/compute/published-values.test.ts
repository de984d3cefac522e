import { describe, expect, test } from 'vitest'
import { reserveOf } from '../../../language/compute/effort.ts'
import { rawFormula, shareAt } from '../../../language/compute/estimates.ts'
import { decimal, exact, hundred, share } from '../../../language/compute/exact.ts'
import { loadableStep } from '../../../language/compute/loading.ts'
import { inUnit } from '../../../language/compute/mass.ts'
import { loadSpread, weightedAverages } from '../../../language/compute/session-load.ts'
import { averagePercent, type LiftTotals } from '../../../language/compute/volume/lift-totals.ts'
import type { Totals } from '../../../language/compute/volume/totals.ts'
import { blockVolume, planVolume } from '../../../language/compute/volume.ts'
import type { Gym } from '../../../language/model/definitions.ts'
import type { Exact, Unit } from '../../../language/model/quantities.ts'
import { type Deviation, type Estimator, estimators } from '../../../language/model/vocabulary.ts'
import values from '../../reference/values.json'
import { blockIn, planIn, workspaceOf } from '../../support/workspace.ts'
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

type Pair = readonly [reps: number, mass: number]
type Triple = readonly [sets: number, reps: number, percent: number]

/** What the sets of one lift add up to in a plan, for a lifter with that best. */
function lifted(groups: readonly string[], best = 100): LiftTotals {
	const folder = workspaceOf(
		`movement lift\nequipment sled\nlifter someone\nbest lift ${best} kg`,
		`block test-block\nweeks 1\nsession one on monday\nmain lift ${groups.join(', ')}`,
		'plan test-plan for someone\nstart 2026-10-05\nrun test-block',
	)
	return liftOf(planVolume(planIn(folder, 'test-plan'), folder).totals, 'lift')
}

const inKilograms = (sets: readonly Pair[]) => sets.map(([reps, mass]) => `1 x ${reps} at ${mass} kg`)
const inPercent = (sets: readonly Triple[]) => sets.map(([count, reps, percent]) => `${count} x ${reps} at ${percent}%`)

/** What a block's sessions add up to, without a lifter. */
function written(sessions: readonly string[], movements = ''): Totals {
	const days = ['monday', 'tuesday', 'thursday', 'friday']
	const lines = sessions.map((items, index) => `session s${index + 1} on ${days[index]}\n${items}`)
	const folder = workspaceOf(movements, `block test-block\nweeks 1\n${lines.join('\n')}`)
	return blockVolume(blockIn(folder, 'test-block'), folder).totals
}

function liftOf(totals: Totals, movement: string): LiftTotals {
	const lift = totals.lifts.get(movement)
	if (lift === undefined) throw new Error(`nothing was added up for ${movement}`)
	return lift
}

/** A figure that must be no range. */
function single<T>({ from, to }: { readonly from: T; readonly to: T }): number {
	expect(Number(from)).toBe(Number(to))
	return Number(from)
}

const averageOf = (lift: LiftTotals) => single(averagePercent(lift) ?? { from: exact(0), to: exact(0) })

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
	'volume-load': ({ sets }) => single(lifted(inKilograms(sets)).tonnage),
	// Of a best of 100 kg, an average percent is an average load.
	'average-load': ({ sets }) => averageOf(lifted(inKilograms(sets))),
	'average-intensity': ({ sets, oneRM }) => averageOf(lifted(inKilograms(sets), oneRM)),
	'load-volume': ({ sets }) => {
		const lift = lifted(inKilograms(sets))
		return { loadVolume: single(lift.tonnage), repVolume: single(lift.reps), average: averageOf(lift) }
	},
	'relative-volumes': ({ a, b }) => ({ a: single(lifted(inPercent([a])).relative), b: single(lifted(inPercent([b])).relative) }),
	'relative-volume': ({ sets }) => {
		const lift = lifted(inPercent(sets))
		return { relVol: single(lift.relative), reps: single(lift.reps) }
	},
	'fractional-sets': ({ direct, indirect }) => {
		const movements = 'movement whole\nmuscles lats 1\nmovement half\nmuscles lats 0.5'
		const totals = written([`accessory whole ${direct} x 10\naccessory half ${indirect} x 10`], movements)
		const [whole, half] = ['whole', 'half'].map(name => single(liftOf(totals, name).sets))
		const fractional = totals.muscles.get('lats')
		return { fractional: fractional && single(fractional), total: Number(whole) + Number(half), direct: whole }
	},
	tension: ({ tempo, reps }) => {
		const ours = tempo.toLowerCase().replaceAll('/', '-')
		return single(lifted([`1 x ${reps} at 50% tempo ${ours}`]).underTension)
	},
	'rep-range': ({ sets, reps: [from, to] }) => {
		const { reps } = lifted([`${sets} x ${from}-${to} at 70%`])
		return [reps.from, reps.to]
	},
	'weekly-sets': ({ sessions, setsInEach, percent }) => {
		const weeks = (sessions as readonly number[]).map((count, index) => {
			const item = `main back-squat ${setsInEach[index]} x 5 at ${percent}%`
			return liftOf(written(Array.from({ length: count }, () => item)), 'back-squat')
		})
		return { sets: weeks.map(week => single(week.sets)), exposures: weeks.map(week => week.exposures.size) }
	},
	'hold-totals': ({ sets, seconds }) =>
		(sets as readonly number[]).map(count => single(liftOf(written([`accessory plank ${count} x ${seconds} s`]), 'plank').hold)),
	'hold-of-one-side': ({ holds }) => {
		const groups = (holds as readonly number[]).map(seconds => `1 x ${seconds} s each side`)
		return single(liftOf(written([`accessory side-plank ${groups.join(', ')}`]), 'side-plank').hold)
	},
	zone: ({ sets, reps, pct }) => {
		const { zones } = lifted(inPercent([[sets, reps, pct]]))
		const filled = zones.findIndex(zone => zone.from > 0)
		return { lifts: zones.reduce((sum, zone) => sum + single(zone), 0), zoneFrom: [0, 70, 80, 90][filled] }
	},
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
