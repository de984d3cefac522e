import { describe, expect, it } from 'vitest'
import { capsOfBlock, capsOfPlan } from '../../../language/reports/cap-exposures.ts'
import { blockIn, planIn, workspaceOf } from '../../support/workspace.ts'

const texts = `
movement deadlift "Deadlift"
  at most 2 sessions a week from 75%
  source "the coach's own count"
movement good-morning "Good morning"
  at most 1 sessions a week

lifter mara-lind "Mara Lind"
  best deadlift 200 kg on 2026-09-01

block heavy "Heavy"
  weeks 2
  session a on monday
    main deadlift
      week 1: 3 x 3 at 80%
      week 2: 3 x 5 at 70%
  session b on wednesday
    main deadlift 3 x 3 at 150 kg
    accessory good-morning 3 x 8 at 40 kg
  session c on friday
    main deadlift 1 x 3 at 75-80%
    accessory good-morning 3 x 8 at 40 kg
  session d on friday
    accessory good-morning 1 x 8 at 40 kg

block beside "Beside"
  weeks 1
  session e on sunday
    main deadlift 1 x 1 at 90%

plan autumn for mara-lind
  start 2026-10-05
  run heavy
plan other for mara-lind
  start 2026-10-05
  run beside
`

describe('exposures against caps', () => {
	const folder = workspaceOf(texts)

	it('count the days of a calendar week over all plans of the lifter, from the percent that the cap names', () => {
		// Week 1: monday 80 %, wednesday 150 of 200 kg = 75 %, friday at least 75 %, sunday 90 % by the other plan = 4.
		// Week 2: monday 70 % does not count, wednesday and friday do = 2.
		// Good morning: wednesday and friday, whose two sessions are one day = 2 in each week.
		expect(capsOfPlan(planIn(folder, 'autumn'), folder)).toEqual([
			{ movement: 'deadlift', title: 'Deadlift', cap: 2, fromPercent: '75', source: "the coach's own count", exposures: [4, 2] },
			{ movement: 'good-morning', title: 'Good morning', cap: 1, fromPercent: null, source: null, exposures: [2, 2] },
		])
	})

	it('of a block alone leave out what only a lifter’s best can tell', () => {
		// 150 kg are no percent without a lifter: monday and friday in week 1, friday in week 2.
		expect(capsOfBlock(blockIn(folder, 'heavy'), folder).map(({ movement, exposures }) => [movement, exposures])).toEqual([
			['deadlift', [2, 1]],
			['good-morning', [2, 2]],
		])
	})

	it('take numbered days for as few days as they can be', () => {
		const numbered = workspaceOf(`
movement good-morning "Good morning"
  at most 2 sessions a week
block free
  weeks 1
  session a on monday
    accessory good-morning 3 x 8 at 40 kg
  session b on day 1
    accessory good-morning 3 x 8 at 40 kg
  session c on day 2
    accessory good-morning 3 x 8 at 40 kg
`)
		// Day 1 may be the monday, day 2 may not be day 1: two days at the least.
		expect(capsOfBlock(blockIn(numbered, 'free'), numbered)[0]!.exposures).toEqual([2])
	})
})
