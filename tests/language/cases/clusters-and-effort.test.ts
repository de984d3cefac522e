import { describe, expect, test } from 'vitest'
import { sessionSeconds } from '../../../language/compute/duration.ts'
import { decimal } from '../../../language/compute/exact.ts'
import { schedulePlan } from '../../../language/compute/schedule.ts'
import { planVolume } from '../../../language/compute/volume.ts'
import { explainItem } from '../../../language/reports/explanation.ts'
import { loadSheet } from '../../../language/reports/load-sheet.ts'
import { planIn, workspaceOf } from '../../support/workspace.ts'

/** A day of a lifter with a deadlift of 160 kg. */
function dayOf(items: string) {
	const folder = workspaceOf(
		'lifter mara-lind "Mara Lind"\n  bodyweight 70 kg\n  best deadlift 160 kg on 2026-09-12',
		`block autumn-pull "Autumn pull"\n  weeks 1\n  session pull-day on monday\n${items}`,
		'plan mara-autumn for mara-lind\n  start 2026-10-05\n  run autumn-pull',
	)
	const plan = planIn(folder, 'mara-autumn')
	const session = schedulePlan(plan, folder).sessions[0]!
	const seconds = sessionSeconds(session.items)
	const totals = planVolume(plan, folder).totals
	const lift = totals.lifts.get('deadlift')!
	return {
		session,
		folder,
		sets: loadSheet(schedulePlan(plan, folder), folder).sessions[0]!.items[0]!.sets,
		seconds: [decimal(seconds.from), decimal(seconds.to)],
		counted: [lift.sets, lift.reps].map(({ from, to }) => `${from}-${to}`),
		tonnage: [decimal(lift.tonnage.from), decimal(lift.tonnage.to)],
		tension: decimal(lift.underTension.from),
	}
}

describe('clusters', () => {
	const clustered = '    main deadlift 4 x 6 in clusters of 2 resting 20 s at 80% rest 3 min'

	test('are as many reps and as much tonnage as without, and take longer', () => {
		const { sets, seconds, counted, tonnage, tension } = dayOf(clustered)
		// 80 % of 160 = 128; 20 + 2 × (25 + 25 + 2.5 + 1.25) = 127.5 is nearest.
		expect(sets[0]).toMatchObject({ exact: '128', load: '127.5', reps: { from: 6, to: 6 } })
		// 4 × 6 = 24 reps × 127.5 = 3060 kg; 24 × 3 s = 72 s under tension: the rests are none.
		expect([counted, tonnage, tension]).toEqual([['4-4', '24-24'], ['3060', '3060'], '72'])
		// A set: 6 × 3 + 2 rests × 20 = 58 s. 4 × 58 + 3 × 180 = 772.
		expect(seconds).toEqual(['772', '772'])
		// Without clusters 4 × 18 + 3 × 180 = 612.
		expect(dayOf(clustered.replace(' in clusters of 2 resting 20 s', '')).seconds).toEqual(['612', '612'])
	})

	test('stand on the sheet, with the rest between them', () => {
		const { sets, session, folder } = dayOf(clustered)
		expect(sets[0]).toMatchObject({ clusterReps: 2, clusterRestSeconds: 20, restSeconds: 180 })
		expect(explainItem(session.items[0]!, folder)[0]!.heading).toBe(
			'Sets 1-4: 6 reps at 80% in clusters of 2 resting 20 s rest 3 min',
		)
	})

	test('of a range of reps rest more often at its high end', () => {
		// Low: 4 × 3 + 1 × 15 = 27 a set, high: 6 × 3 + 2 × 15 = 48; two sets and 180 between.
		expect(dayOf('    main deadlift 2 x 4-6 in clusters of 2 resting 15 s at 75%').seconds).toEqual(['234', '276'])
	})

	test('get no load from an effort: no formula knows what the short rest gives back', () => {
		const { sets } = dayOf('    main deadlift 4 x 6 in clusters of 2 resting 20 s rpe 8')
		expect(sets[0]).toMatchObject({
			load: null,
			reason: 'No formula gives the load of a set in clusters from its effort: write a percent or a mass.',
		})
	})
})

describe('sets until an effort', () => {
	const open = '    main deadlift up to 5 x 3 at 80% until rpe 9'

	test('are one at least, and five at most', () => {
		const { sets, counted, tonnage, seconds } = dayOf(open)
		expect(sets.map(set => set.optional)).toEqual([false, true, true, true, true])
		// 1 × 3 × 127.5 = 382.5 kg to 5 × 3 × 127.5 = 1912.5 kg.
		expect([counted, tonnage]).toEqual([
			['1-5', '3-15'],
			['382.5', '1912.5'],
		])
		// 3 × 3 = 9 s; 5 × 9 + 4 × 180 = 765 s.
		expect(seconds).toEqual(['9', '765'])
	})

	test('are so many at least where the coach says how many', () => {
		expect(dayOf('    main deadlift 2-5 x 3 at 80% until rpe 9').counted).toEqual(['2-5', '6-15'])
	})

	test('say on the sheet where they end', () => {
		const { sets, session, folder } = dayOf(open)
		expect(sets[0]).toMatchObject({ rpe: null, untilRpe: '9', untilRir: null })
		expect(dayOf('    main deadlift up to 5 x 3 at 80% until rir 1').sets[0]).toMatchObject({ untilRpe: null, untilRir: '1' })
		expect(explainItem(session.items[0]!, folder).map(({ heading }) => heading)).toEqual([
			'Set 1: 3 reps at 80% until rpe 9 rest 3 min',
			'Sets 2-5: 3 reps at 80% until rpe 9 rest 3 min (optional)',
		])
	})

	test('have a load of the effort that they begin with, not of the one that ends them', () => {
		// 3 reps and 2 in reserve: 160 ÷ (1 + 5/30) = 137.142857.
		expect(dayOf('    main deadlift up to 5 x 3 rpe 8 until rpe 9').sets[0]).toMatchObject({
			exact: '137.142857',
			rpe: { from: '8' },
		})
		expect(dayOf('    main deadlift up to 5 x 3 until rpe 9').sets[0]).toMatchObject({ exact: null, reason: null })
	})
})
