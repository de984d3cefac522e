import { describe, expect, it } from 'vitest'
import { weeklyVolume } from '../../../language/reports/weekly-volume.ts'
import { rebuild } from '../../support/rebuild.ts'
import { blockIn, planIn, workspaceOf } from '../../support/workspace.ts'

const folder = workspaceOf(rebuild)

describe('the weekly volume of a plan', () => {
	const volume = weeklyVolume(planIn(folder, 'mara-autumn'), folder)
	const [week] = volume.weeks

	it('is counted through its blocks', () => {
		expect(volume).toMatchObject({ version: 1, of: 'mara-autumn', unit: 'kg' })
		expect(volume.weeks.map(one => [one.week, one.block, one.blockWeek, one.from, one.deload])).toEqual([
			[1, 'hinge-rebuild', 1, '2026-10-05', false],
			[2, 'hinge-rebuild', 2, '2026-10-12', false],
			[3, 'hinge-rebuild', 3, '2026-10-19', false],
			[4, 'hinge-rebuild', 4, '2026-10-26', false],
			[5, 'hinge-rebuild', 5, '2026-11-02', true],
		])
	})

	it('adds up every lift', () => {
		// 4 × 5 × 112.5 = 2250; 4 × 5 × 3 s = 60 s.
		expect(week!.lifts.deadlift).toEqual({
			title: 'Deadlift',
			sessions: 1,
			sets: 4,
			setsTo: null,
			reps: { low: 20, high: 20 },
			tonnage: { low: '2250', high: '2250' },
			relative: null,
			averagePercent: '70',
			averagePercentTo: null,
			topPercent: '70',
			topPercentTo: null,
			zones: [
				{ low: 0, high: 0 },
				{ low: 20, high: 20 },
				{ low: 0, high: 0 },
				{ low: 0, high: 0 },
			],
			seconds: { low: 60, high: 60 },
			holdSeconds: { low: 0, high: 0 },
			carryMetres: { low: 0, high: 0 },
			excludedSets: 0,
		})
		expect(Object.keys(week!.lifts)).toEqual([
			'deadlift',
			'strict-bent-row',
			'plank',
			'back-squat',
			'romanian-deadlift',
			'suitcase-hold',
		])
		// 6 × 12 × 40 = 2880, on the bar as it is written.
		expect(week!.lifts['strict-bent-row']).toMatchObject({ tonnage: { low: '2880', high: '2880' }, averagePercent: null })
	})

	it('adds up minutes, muscles and links', () => {
		// 1962 s on monday; wednesday 4 × (15 + 180) + 3 × (48 + 120) + 3 × (60 + 90) − 90 = 1644 s. Together 60.1 min.
		expect([week!.sessions, week!.minutes, week!.excludedSets]).toEqual([2, 60, 0])
		// Glutes: 4 + 4 × 0.5 + 3 × 0.5. Erectors: 4 × 0.5 + 6 × 0.5. Hamstrings: 4 + 3.
		expect(week!.muscles).toEqual({
			abdominals: '3',
			erectors: '5',
			glutes: '7.5',
			hamstrings: '7',
			obliques: '3',
			quads: '4',
			'upper-back': '6',
		})
		// Stability: 6 × 72 + 3 × 30 + 3 × 48 + 3 × 30 = 756 s. Drive: 4 × 15 + 4 × 15.
		expect(week!.links).toEqual({
			stability: { sets: '15', setsTo: null, seconds: 756, secondsTo: null },
			drive: { sets: '8', setsTo: null, seconds: 120, secondsTo: null },
		})
	})

	it('keeps ranges beside the low ends', () => {
		const ranges = workspaceOf(rebuild.replace('4 x 5 at 70%', '3-4 x 5-6 at 70-75%'))
		const [first] = weeklyVolume(planIn(ranges, 'mara-autumn'), ranges).weeks
		// Low: 3 × 5 × 112.5 = 1687.5. High: 4 × 6 × 120 = 2880.
		expect(first!.lifts.deadlift).toMatchObject({
			sets: 3,
			setsTo: 4,
			reps: { low: 15, high: 24 },
			tonnage: { low: '1687.5', high: '2880' },
			averagePercent: '70',
			averagePercentTo: '75',
			topPercent: '70',
			topPercentTo: '75',
		})
		expect([first!.muscles.hamstrings, first!.musclesTo.hamstrings, first!.musclesTo.quads]).toEqual(['6', '7', undefined])
		expect(first!.links.drive).toEqual({ sets: '7', setsTo: '8', seconds: 105, secondsTo: 132 })
	})
})

describe('the weekly volume of a block', () => {
	const volume = weeklyVolume(blockIn(folder, 'hinge-rebuild'), folder)
	const [week] = volume.weeks

	it('is relative: no lifter, no tonnage', () => {
		expect(volume).toMatchObject({ of: 'hinge-rebuild', unit: null })
		expect(week).toMatchObject({ week: 1, blockWeek: 1, from: null })
		expect(week!.lifts.deadlift).toMatchObject({ tonnage: null, relative: { low: '1400', high: '1400' }, averagePercent: '70' })
	})

	it('counts what has no percent as excluded', () => {
		// The six rows are written in kilograms.
		expect([week!.excludedSets, week!.lifts['strict-bent-row']!.excludedSets]).toEqual([6, 6])
	})
})
