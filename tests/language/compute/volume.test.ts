import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { decimal, exact } from '../../../language/compute/exact.ts'
import { schedulePlan } from '../../../language/compute/schedule.ts'
import { averagePercent, type LiftTotals } from '../../../language/compute/volume/lift-totals.ts'
import { scheduledWeight } from '../../../language/compute/volume/set-weight.ts'
import { liftsTogether, setTotals, sumTotals, type Totals } from '../../../language/compute/volume/totals.ts'
import { blockVolume, planVolume } from '../../../language/compute/volume.ts'
import type { CountRange, ExactRange } from '../../../language/model/quantities.ts'
import { blockIn, planIn, workspaceOf } from '../../support/workspace.ts'

const movements = `
movement pull "Pull"
  pattern hinge
  trains drive
  muscles glutes 1, hamstrings 1, erectors 0.5
  equipment barbell
movement row "Row"
  pattern row
  trains stability, drive
  muscles upper-back 1, erectors 0.5
  equipment dumbbell
  load hands 2
movement hold "Hold"
  trains stability
  muscles obliques 1
movement hang "Hang"
  load added
movement walk "Walk"
  trains stability
movement drill "Drill"
  muscles glutes 1`

function workspace(items: string, { lifter = 'best pull 160 kg', weeks = 'weeks 1', run = '' } = {}) {
	return workspaceOf(
		movements,
		`lifter someone\n${lifter}`,
		`block test-block\n${weeks}\nsession one on monday\n${items}`,
		`plan test-plan for someone\nstart 2026-10-05\nrun test-block\n${run}`,
	)
}

/** Totals of the plan's first week. */
function totals(items: string, setting: Parameters<typeof workspace>[1] = {}): Totals {
	const folder = workspace(items, setting)
	return planVolume(planIn(folder, 'test-plan'), folder).weeks[0]!.totals
}

/** Totals of the block's first week, without a lifter. */
function blockTotals(items: string, setting: Parameters<typeof workspace>[1] = {}): Totals {
	const folder = workspace(items, setting)
	return blockVolume(blockIn(folder, 'test-block'), folder).weeks[0]!.totals
}

function lift(of: Totals, movement = 'pull'): LiftTotals {
	return of.lifts.get(movement)!
}

function ends(range: ExactRange | undefined): string {
	if (range === undefined) return 'unknown'
	return range.from.equals(range.to) ? decimal(range.from) : `${decimal(range.from)}-${decimal(range.to)}`
}

function counts(range: CountRange): string {
	return range.from === range.to ? `${range.from}` : `${range.from}-${range.to}`
}

function sharesOf(map: ReadonlyMap<string, ExactRange>): Record<string, string> {
	return Object.fromEntries([...map].map(([key, sets]) => [key, ends(sets)]))
}

describe('a lift', () => {
	it('adds up sets, lifts and tonnage of what is on the bar', () => {
		// 70 % of 160 = 112, on the bar 112.5 (20 + 2 × 46.25): 4 × 5 × 112.5 = 2250.
		const pull = lift(totals('main pull 4 x 5 at 70%'))
		expect([counts(pull.sets), counts(pull.reps), ends(pull.tonnage)]).toEqual(['4', '20', '2250'])
		expect([ends(averagePercent(pull)), ends(pull.top), ends(pull.relative)]).toEqual(['70', '70', '1400'])
	})

	it('weights its average by reps, with back-off sets as what is on the bar', () => {
		// Top 80 % of 160 = 128, on the bar 127.5; 92 % of it 117.3, on the bar 117.5 = 73.4375 % of 160.
		// (3 × 80 + 9 × 73.4375) ÷ 12 = 75.078125
		const pull = lift(totals('main pull 1 x 3 at 80%, 3 x 3 at 92% of top set'))
		expect([ends(averagePercent(pull)), ends(pull.top)]).toEqual(['75.078125', '80'])
	})

	it('counts load in each hand, and sets on each side, twice', () => {
		// 3 × 10 × 20 × 2 = 1200, and each side 2400. The set is one set all the same.
		expect(ends(lift(totals('accessory row 3 x 10 at 20 kg'), 'row').tonnage)).toBe('1200')
		const sides = lift(totals('accessory row 3 x 10 at 20 kg each side'), 'row')
		expect([ends(sides.tonnage), counts(sides.sets), counts(sides.reps)]).toEqual(['2400', '3', '30'])
	})

	it('counts what is added to bodyweight alone, and help as nothing', () => {
		expect(ends(lift(totals('accessory hang 3 x 5 at bodyweight + 10 kg'), 'hang').tonnage)).toBe('150')
		expect(ends(lift(totals('accessory hang 3 x 5 at bodyweight - 10 kg'), 'hang').tonnage)).toBe('0')
	})

	it('puts its reps into the zones by percent, the edges in the upper one', () => {
		const pull = lift(totals('main pull 1 x 6 at 69.9%, 1 x 5 at 70%, 1 x 4 at 79.5%, 1 x 3 at 80%, 1 x 2 at 90%, 1 x 1 at 101%'))
		expect(pull.zones.map(counts)).toEqual(['6', '9', '3', '3'])
	})

	it('keeps ranges: reps, sets and loads', () => {
		// Low: 3 × 6 × 120 = 2160; high: 4 × 8 × 127.5 = 4080. The average is 75 to 80 %.
		const pull = lift(totals('main pull 3-4 x 6-8 at 75-80%'))
		expect([counts(pull.sets), counts(pull.reps), ends(pull.tonnage)]).toEqual(['3-4', '18-32', '2160-4080'])
		expect([ends(averagePercent(pull)), ends(pull.top)]).toEqual(['75-80', '75-80'])
		// Low: 18 × 75; high: 32 × 80.
		expect(ends(pull.relative)).toBe('1350-2560')
	})

	it('adds up time under tension, holds and metres', () => {
		// 3 × 5 × (4 + 1 + 1 + 0) + 2 × 4 × 3 = 90 + 24
		expect(ends(lift(totals('main pull 3 x 5 at 70% tempo 4-1-1-0, 2 x 4 at 60%')).underTension)).toBe('114')
		const held = lift(totals('accessory hold 3 x 30-45 s each side'), 'hold')
		expect([ends(held.underTension), ends(held.hold)]).toEqual(['90-135', '90-135'])
		expect(ends(lift(totals('accessory walk 3 x 20 m'), 'walk').carry)).toBe('60')
	})

	it('is exposed once a date, however many items it has', () => {
		const folder = workspace(
			'main pull 1 x 5 at 70%\naccessory pull 3 x 8 at 50%\nsession two on thursday\nmain pull 1 x 5 at 60%',
		)
		const [week] = planVolume(planIn(folder, 'test-plan'), folder).weeks
		expect([...lift(week!.totals).exposures]).toEqual(['2026-10-05', '2026-10-08'])
	})
})

describe('what cannot be known', () => {
	it('is left out of the totals and counted', () => {
		const pull = lift(totals('main pull 4 x 5 at 70%\naccessory pull 2 x 10', { lifter: 'best pull 160 kg' }))
		expect([ends(pull.tonnage), counts(pull.reps), pull.excludedSets]).toEqual(['2250', '40', 2])
		expect([ends(averagePercent(pull)), pull.unknown]).toEqual(['70', { load: 2, percent: 2, time: 0 }])
	})

	it('has no average where no set has a percent', () => {
		const row = lift(totals('accessory row 3 x 10 at 20 kg'), 'row')
		expect([averagePercent(row), row.top, row.excludedSets, row.unknown.percent]).toEqual([undefined, undefined, 0, 3])
	})

	it('is the time of a carry, but never the load of a hold', () => {
		expect(lift(totals('accessory walk 3 x 20 m at 30 kg'), 'walk')).toMatchObject({ excludedSets: 3, unknown: { time: 3 } })
		expect(lift(totals('accessory hold 3 x 30 s'), 'hold')).toMatchObject({ excludedSets: 0 })
	})
})

describe('hard sets', () => {
	it('count for muscles by their shares', () => {
		// Erectors: 4 × 0.5 + 3 × 0.5.
		const of = totals('main pull 4 x 5 at 70%\naccessory row 3 x 10 at 20 kg each side')
		expect(sharesOf(of.muscles)).toEqual({ glutes: '4', hamstrings: '4', erectors: '3.5', 'upper-back': '3' })
	})

	it('count for the first link, and in charts half for the second', () => {
		const of = totals('main pull 4 x 5 at 70%\naccessory row 2-3 x 10 at 20 kg')
		// 2 or 3 × 10 × 3 s
		expect([...of.links].map(([link, { sets, seconds }]) => [link, ends(sets), ends(seconds)])).toEqual([
			['drive', '4', '60'],
			['stability', '2-3', '60-90'],
		])
		expect(sharesOf(of.chartLinks)).toEqual({ drive: '5-5.5', stability: '2-3' })
	})

	it('are those of working items: warm-ups and conditioning count for minutes only', () => {
		const of = totals('warm-up drill 2 x 10\nmain pull 1 x 5 at 70%\nconditioning drill 1 x 10 min')
		expect([...of.lifts.keys()]).toEqual(['pull'])
		// 2 × (30 + 90) + 15 + 180 + 600 = 1035
		expect([sharesOf(of.muscles).glutes, ends(of.seconds)]).toEqual(['1', '1035'])
	})
})

describe('a block without a lifter', () => {
	it('adds up percents of whatever the reference will be', () => {
		const pull = lift(blockTotals('main pull 1 x 3 at 80%, 3 x 3 at 90% of top set'))
		// Back-offs: 90 % of 80 = 72 %. 3 × 80 + 9 × 72 = 888; ÷ 12 = 74.
		expect([ends(pull.relative), ends(averagePercent(pull)), pull.excludedSets]).toEqual(['888', '74', 0])
	})

	it('knows what share of the max reps and efforts are', () => {
		// Epley: 100 ÷ (1 + 10/30) = 75 % for 10 reps, 100 ÷ (1 + 15/30) = 66.666667 % for 12 and 3 in reserve.
		expect(ends(averagePercent(lift(blockTotals('main pull 1 x 5 at 10 rm'))))).toBe('75')
		expect(ends(averagePercent(lift(blockTotals('main pull 1 x 12 rir 3'))))).toBe('66.666667')
	})

	it('leaves out kilograms, and percents that kilograms are added to', () => {
		expect(lift(blockTotals('main pull 3 x 5 at 100 kg'))).toMatchObject({ excludedSets: 3 })
		const folder = workspace('main pull 3 x 5 at 70%\neach week add 2.5 kg', { weeks: 'weeks 2' })
		const { weeks } = blockVolume(blockIn(folder, 'test-block'), folder)
		expect(weeks.map(week => lift(week.totals).excludedSets)).toEqual([0, 3])
	})
})

describe('the weeks of a plan', () => {
	it('are counted through its blocks, those without a session too', () => {
		const folder = workspaceOf(
			movements,
			'lifter someone\nbest pull 160 kg',
			'block test-block\nweeks 2\ndeload week 2\nsession one on monday\nmain pull 4 x 5 at 70%',
			'plan test-plan for someone\nstart 2026-10-06\nrun test-block\nrun test-block',
		)
		const { weeks } = planVolume(planIn(folder, 'test-plan'), folder)
		expect(weeks.map(week => [week.week, week.blockWeek, week.monday, week.deload, week.sessions.length])).toEqual([
			[1, 1, '2026-10-05', false, 0],
			[2, 2, '2026-10-12', true, 1],
			[3, 1, '2026-10-19', false, 1],
			[4, 2, '2026-10-26', true, 1],
		])
	})
})

// Properties ----------------------------------------------------------------------------------------------------------------------------

const percents = fc.integer({ min: 300, max: 1000 }).map(tenths => `${tenths / 10}%`)
const group = fc
	.record({
		sets: fc.constantFrom('1', '3', '2-4'),
		reps: fc.constantFrom('1', '5', '6-8'),
		at: fc.oneof(
			percents.map(percent => `at ${percent}`),
			fc.constantFrom('at 60 kg', 'rpe 8', 'at 8 rm', ''),
		),
		tempo: fc.constantFrom('', ' tempo 3-1-x-0'),
	})
	.map(({ sets, reps, at, tempo }) => `${sets} x ${reps} ${at}${tempo}`)
const item = fc
	.record({ movement: fc.constantFrom('pull', 'row', 'hang'), groups: fc.array(group, { minLength: 1, maxLength: 3 }) })
	.map(({ movement, groups }) => `accessory ${movement} ${groups.join(', ')}`)
const held = fc.constantFrom('accessory hold 3 x 30-45 s each side', 'accessory walk 2-3 x 20 m at 30 kg', 'warm-up drill 2 x 10')
const items = fc.array(fc.oneof(item, held), { minLength: 1, maxLength: 4 })

/** All figures as text, so that two totals are equal where every figure is. */
function figures(of: Totals): unknown {
	const written = (value: unknown): unknown => {
		if (value instanceof Map)
			return Object.fromEntries([...value].sort(([a], [b]) => (a < b ? -1 : 1)).map(([key, one]) => [key, written(one)]))
		if (value instanceof Set) return [...value].sort()
		if (Array.isArray(value)) return value.map(written)
		if (typeof value !== 'object' || value === null) return value
		if ('toFraction' in value) return (value as ExactRange['from']).toFraction()
		return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, written(one)]))
	}
	return written({ ...of, seconds: undefined })
}

describe('totals', () => {
	it('of the parts are the total', () => {
		fc.assert(
			fc.property(items, lines => {
				const folder = workspace(lines.join('\n'), { weeks: 'weeks 2', lifter: 'best pull 160 kg\nbest row 40 kg' })
				const schedule = schedulePlan(planIn(folder, 'test-plan'), folder)
				const parts = schedule.sessions.flatMap(session =>
					session.items.flatMap(one =>
						one.sets.map(set => setTotals(set, one, session.date, scheduledWeight(set, schedule.unit))),
					),
				)
				const whole = planVolume(planIn(folder, 'test-plan'), folder)
				expect(figures(sumTotals(parts))).toEqual(figures(whole.totals))
				expect(figures(sumTotals(whole.weeks.map(week => week.totals)))).toEqual(figures(whole.totals))
				const lifts = liftsTogether(whole.totals)
				expect(lifts.sets.to).toBe(parts.reduce((sum, part) => sum + liftsTogether(part).sets.to, 0))
			}),
			{ numRuns: 40 },
		)
	})

	it('do not depend on the order of sets and items', () => {
		const permuted = items.chain(lines => fc.tuple(fc.constant(lines), fc.shuffledSubarray(lines, { minLength: lines.length })))
		fc.assert(
			fc.property(permuted, ([lines, shuffled]) => {
				expect(figures(totals(shuffled.join('\n')))).toEqual(figures(totals(lines.join('\n'))))
			}),
			{ numRuns: 40 },
		)
		const groups = fc.array(group, { minLength: 1, maxLength: 4 })
		const reordered = groups.chain(all => fc.tuple(fc.constant(all), fc.shuffledSubarray(all, { minLength: all.length })))
		fc.assert(
			fc.property(reordered, ([all, shuffled]) => {
				expect(figures(totals(`main pull ${shuffled.join(', ')}`))).toEqual(figures(totals(`main pull ${all.join(', ')}`)))
			}),
			{ numRuns: 40 },
		)
	})

	it('do not depend on how sets are split into groups', () => {
		const splits = fc.record({
			count: fc.integer({ min: 2, max: 6 }),
			first: fc.integer({ min: 1, max: 5 }),
			what: fc.constantFrom('5 at 70%', '6-8 at 75-80%', '3 rpe 8', '8 at 60 kg tempo 3-1-x-0', '10', '4 at 8 rm each side'),
		})
		fc.assert(
			fc.property(splits, ({ count, first, what }) => {
				fc.pre(first < count)
				const split = `main pull ${first} x ${what}, ${count - first} x ${what}`
				expect(figures(totals(split))).toEqual(figures(totals(`main pull ${count} x ${what}`)))
			}),
			{ numRuns: 40 },
		)
	})

	it('in percent do not depend on the best', () => {
		const percentItems = fc.array(fc.tuple(fc.integer({ min: 1, max: 5 }), percents), { minLength: 1, maxLength: 4 })
		fc.assert(
			fc.property(percentItems, fc.integer({ min: 40, max: 400 }), (sets, best) => {
				const text = `main pull ${sets.map(([count, percent]) => `${count} x 5 at ${percent}`).join(', ')}`
				const of = lift(totals(text, { lifter: `best pull ${best} kg` }))
				expect(ends(of.relative)).toBe(ends(lift(totals(text)).relative))
				expect(ends(of.relative)).toBe(ends(lift(blockTotals(text)).relative))
			}),
			{ numRuns: 40 },
		)
	})
})

describe('units', () => {
	it('do not matter: a best in pounds and the same mass in kilograms give the same loads and totals', () => {
		const asked = fc.array(group, { minLength: 1, maxLength: 3 })
		fc.assert(
			fc.property(asked, fc.integer({ min: 90, max: 700 }), fc.constantFrom('kg', 'lb'), (groups, pounds, barUnit) => {
				const gym = barUnit === 'kg' ? 'bar barbell 20 kg' : 'bar barbell 45 lb'
				const figuresWith = (best: string) => {
					const folder = workspaceOf(
						movements,
						`gym hall\n${gym}\nlifter someone\ntrains at hall\nbest pull ${best}`,
						`block test-block\nweeks 1\nsession one on monday\nmain pull ${groups.join(', ')}`,
						'plan test-plan for someone\nstart 2026-10-05\nrun test-block',
					)
					const plan = planIn(folder, 'test-plan')
					const sets = schedulePlan(plan, folder).sessions.flatMap(session => session.items.flatMap(one => one.sets))
					const loads = sets.map(({ computed }) => [computed.exact?.toFraction(), computed.load?.toFraction(), computed.unit])
					return [loads, figures(planVolume(plan, folder).totals)]
				}
				const kilograms = decimal(exact(pounds).mul(exact('0.45359237')), 8)
				expect(figuresWith(`${pounds} lb`)).toEqual(figuresWith(`${kilograms} kg`))
			}),
			{ numRuns: 40 },
		)
	})
})

describe('exact loads', () => {
	it('grow with the bests, all by the same factor', () => {
		const factors = fc.integer({ min: 50, max: 200 }).map(hundredths => exact(hundredths).div(100))
		const asked = fc.array(
			fc.oneof(
				percents.map(percent => `1 x 5 at ${percent}`),
				fc.constantFrom('1 x 5 rpe 8', '1 x 6-8 rir 2', '1 x 3 at 5 rm'),
			),
			{
				minLength: 1,
				maxLength: 4,
			},
		)
		const loadsOf = (groups: readonly string[], best: string) => {
			const folder = workspace(`main pull ${groups.join(', ')}`, { lifter: `best pull ${best} kg x 3 rpe 9` })
			return schedulePlan(planIn(folder, 'test-plan'), folder).sessions[0]!.items[0]!.sets.map(set => set.computed)
		}
		fc.assert(
			fc.property(asked, factors, (groups, factor) => {
				const before = loadsOf(groups, '160')
				const after = loadsOf(groups, decimal(exact(160).mul(factor)))
				for (const [index, load] of before.entries()) {
					expect(after[index]!.exact!.toFraction()).toBe(load.exact!.mul(factor).toFraction())
					expect(after[index]!.exactTo?.toFraction()).toBe(load.exactTo?.mul(factor).toFraction())
				}
			}),
			{ numRuns: 60 },
		)
	})
})
