import { describe, expect, it } from 'vitest'
import { blockAsks } from '../../../language/reports/block-asks.ts'
import { blockIn, workspaceOf } from '../../support/workspace.ts'

const folder = workspaceOf(`
breakdown back-rounding "Back rounds"
  weak link stability
movement deadlift "Deadlift"
  equipment barbell
movement romanian-deadlift "Romanian deadlift"
  equipment barbell
  percent of deadlift
movement back-squat "Back squat"
  equipment barbell
movement plank "Plank"
movement weighted-plank "Weighted plank"
  requires plank held 45 s
movement chin-up "Chin-up"
  equipment chin-bar

block rebuild "Rebuild"
  weeks 3
  targets deadlift
  answers back-rounding
  requires plank held 30 s
  session a on monday
    main deadlift 4 x 5 at 70%
    accessory romanian-deadlift 3 x 8 at 50%
    accessory plank
      week 1-2: 3 x 45 s
  session b on wednesday
    main back-squat 3 x 5 at 70% of base
    accessory chin-up 3 x 5 at bodyweight
    accessory weighted-plank
      week 3: 3 x 30 s at 5 kg
`)

describe('what a block asks of a lifter', () => {
	const asks = blockAsks(blockIn(folder, 'rebuild'), folder)

	it('is for lifts, and answers breakdowns', () => {
		expect([asks.targets, asks.answers]).toEqual([['Deadlift'], ['Back rounds']])
	})

	it('asks for gates: its own, and those of its movements in the week that first uses them', () => {
		expect(asks.gates).toEqual([
			{ text: 'Plank held 30 s', before: [], week: 1, reachedIn: null, source: null },
			// Its own planks of 45 s in weeks 1 and 2 come before week 3.
			{ text: 'Plank held 45 s', before: ['Weighted plank'], week: 3, reachedIn: 1, source: null },
		])
	})

	it('asks for the bests that its percents count from', () => {
		expect(asks.bests).toEqual([
			{ movement: 'deadlift', title: 'Deadlift', loads: ['Deadlift', 'Romanian deadlift'], base: false },
			{ movement: 'back-squat', title: 'Back squat', loads: ['Back squat'], base: true },
		])
		expect(asks.bodyweight).toBe(true)
	})

	it('asks for equipment', () => {
		expect(asks.equipment).toEqual([
			{ name: 'barbell', movements: ['Deadlift', 'Romanian deadlift', 'Back squat'] },
			{ name: 'chin-bar', movements: ['Chin-up'] },
		])
	})
})
