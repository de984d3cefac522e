import { convert } from 'convert'
import fc from 'fast-check'
import { bisect, mean, sampleStandardDeviation, standardDeviation, sum, weightedMean } from 'simple-statistics'
import { describe, expect, test } from 'vitest'
import { estimateMax, repsPossible } from '../../../language/compute/estimates.ts'
import { exact } from '../../../language/compute/exact.ts'
import { inUnit } from '../../../language/compute/mass.ts'
import { loadSpread } from '../../../language/compute/session-load.ts'
import { averagePercent } from '../../../language/compute/volume/lift-totals.ts'
import { planVolume } from '../../../language/compute/volume.ts'
import type { Estimator } from '../../../language/model/vocabulary.ts'
import { planIn, workspaceOf } from '../../support/workspace.ts'

/**
 * The same sums by general-purpose libraries, which reckon in binary floating point: so near and no nearer. What is exact in ours is
 * tested elsewhere.
 */
const near = 1e-9

function expectNear(ours: number | undefined, theirs: number): void {
	expect(Math.abs((ours ?? Number.NaN) - theirs)).toBeLessThanOrEqual(near * Math.max(1, Math.abs(theirs)))
}

describe('convert', () => {
	test('turns pounds into kilograms and back as we do', () => {
		fc.assert(
			fc.property(fc.integer({ min: 1, max: 100_000 }), hundredths => {
				const amount = exact(hundredths).div(100)
				expectNear(inUnit({ amount, unit: 'lb' }, 'kg').valueOf(), convert(hundredths / 100, 'lb').to('kg'))
				expectNear(inUnit({ amount, unit: 'kg' }, 'lb').valueOf(), convert(hundredths / 100, 'kg').to('lb'))
			}),
		)
	})
})

describe('simple-statistics', () => {
	const weeks = fc.array(fc.integer({ min: 0, max: 1200 }), { minLength: 7, maxLength: 7 })

	test('has the same mean, deviations, monotony and strain of a week', () => {
		fc.assert(
			fc.property(weeks, loads => {
				for (const [deviation, theirs] of [
					['population', standardDeviation(loads)],
					['sample', sampleStandardDeviation(loads)],
				] as const) {
					const ours = loadSpread(
						loads.map(load => exact(load)),
						deviation,
					)
					expectNear(ours.total.valueOf(), sum(loads))
					expectNear(ours.mean.valueOf(), mean(loads))
					expectNear(ours.deviation.valueOf(), theirs)
					if (theirs === 0) {
						expect(ours.monotony).toBeUndefined()
					} else {
						expectNear(ours.monotony?.valueOf(), mean(loads) / theirs)
						expectNear(ours.strain?.valueOf(), (sum(loads) * mean(loads)) / theirs)
					}
				}
			}),
		)
	})

	test('has the same average intensity, weighted by reps', () => {
		const sets = fc.array(fc.record({ reps: fc.integer({ min: 1, max: 15 }), percent: fc.integer({ min: 30, max: 100 }) }), {
			minLength: 1,
			maxLength: 6,
		})
		fc.assert(
			fc.property(sets, groups => {
				const folder = workspaceOf(
					'movement lift\nequipment barbell\nlifter someone\nbest lift 160 kg',
					`block b\nweeks 1\nsession s on monday\nmain lift ${groups.map(one => `1 x ${one.reps} at ${one.percent}%`).join(', ')}`,
					'plan p for someone\nstart 2026-10-05\nrun b',
				)
				const lift = planVolume(planIn(folder, 'p'), folder).totals.lifts.get('lift')
				const average = lift && averagePercent(lift)
				expectNear(
					average?.from.valueOf(),
					weightedMean(
						groups.map(one => one.percent),
						groups.map(one => one.reps),
					),
				)
			}),
			{ numRuns: 40 },
		)
	})

	// Root finding knows nothing of the inverse: it looks for the reps at which the estimate is the max.
	test.each<Estimator>(['epley', 'brzycki', 'lander', 'lombardi', 'mayhew', 'oconner', 'wathan'])(
		'finds the reps that %s allows where our inverse has them',
		estimator => {
			for (const percent of [65, 70, 77.5, 85, 91]) {
				const maxAt = (reps: number) => estimateMax(exact(percent), exact(reps.toFixed(12)), estimator)?.valueOf() ?? Number.NaN
				const reps = repsPossible(exact(percent).div(100), estimator)?.valueOf() ?? Number.NaN
				const most = estimator === 'lombardi' ? 100 : 36
				expect(Math.abs(bisect(n => maxAt(n) - 100, 1.000001, most, 200, 1e-10) - reps)).toBeLessThan(1e-7)
			}
		},
	)
})
