import { describe, expect, it } from 'vitest'
import { schedulePlan } from '../../../language/compute/schedule.ts'
import { explainDay } from '../../../language/reports/explanation.ts'
import { rebuild } from '../../support/rebuild.ts'
import { planIn, workspaceOf } from '../../support/workspace.ts'

function explained(date: string, movement: string, text = rebuild) {
	const folder = workspaceOf(text)
	const days = explainDay(schedulePlan(planIn(folder, 'mara-autumn'), folder), date, movement, folder)
	return days.flatMap(day => day.sets.map(({ heading, lines }) => [heading, ...lines]))
}

describe('why a load is what it is', () => {
	it('is told from the best to the discs', () => {
		expect(explained('2026-10-05', 'deadlift')).toEqual([
			[
				'Sets 1-4: 5 reps at 70% rest 3 min',
				'Best of Deadlift: 160 kg on 2026-09-12.',
				'70% of 160 kg = 112 kg.',
				'Nearest load in North Hall: 112.5 kg (bar 20 kg, collars 2.5 kg, each side 25 + 20 kg).',
			],
		])
	})

	it('names the formula of an estimate and its source', () => {
		const [[, , estimate] = []] = explained('2026-10-07', 'back-squat')
		expect(estimate).toBe('Estimated max: Epley: 112.5 kg × (1 + 4/30) = 127.5 kg. Source: Epley 1985 (formula from memory).')
	})

	it('tells set from set where their ways part', () => {
		expect(explained('2026-10-26', 'deadlift').map(([heading, first]) => [heading, first])).toEqual([
			['Set 1: 3 reps at 80% rest 3 min', 'Best of Deadlift: 160 kg on 2026-09-12.'],
			['Sets 2-4: 3 reps at 92% of top set rest 3 min', "92% of the top set's 127.5 kg = 117.3 kg."],
		])
	})

	it('shows progression, and what a deload week is filled from', () => {
		expect(explained('2026-10-21', 'romanian-deadlift')[0]).toEqual([
			'Sets 1-3: 8 reps at 50% + 5 kg tempo 4-1-1-0 rest 2 min',
			'Each week add 2.5 kg: 2 times by this week.',
			'Best of Deadlift: 160 kg on 2026-09-12.',
			'50% of 160 kg = 80 kg.',
			'Changed so far: + 5 kg = 85 kg.',
			'Nearest load in North Hall: 85 kg (bar 20 kg, collars 2.5 kg, each side 25 + 5 + 1.25 kg).',
		])
		expect(explained('2026-11-02', 'deadlift')[0]![1]).toBe('Deload week, filled from week 4.')
	})

	it('says what a plan has changed', () => {
		const text = `${rebuild}\nswap strict-bent-row for chest-supported-row\nadd accessory dead-bug 2 x 10 to heavy-pull`
		expect(explained('2026-10-05', 'chest-supported-row', text)).toEqual([
			[
				'Sets 1-6: 12 reps tempo 2-1-2-1 rest 1 min 30 s',
				'The plan has this in place of Strict bent-over row.',
				"The block's load is meant for Strict bent-over row; Chest-supported row needs one of its own.",
			],
		])
		expect(explained('2026-10-05', 'dead-bug', text)).toEqual([
			['Sets 1-2: 10 reps rest 1 min 30 s', 'The plan adds this to the block.'],
		])
	})

	it('is empty where the day has no such movement', () => {
		expect(explained('2026-10-06', 'deadlift')).toEqual([])
		expect(explained('2026-10-05', 'back-squat')).toEqual([])
	})
})
