import { describe, expect, it } from 'vitest'
import { blockSheet } from '../../../language/reports/block-sheet.ts'
import { blockIn, workspaceOf } from '../../support/workspace.ts'

const folder = workspaceOf(`
movement deadlift "Deadlift"
movement row "Row"
movement dip "Dip"

block rebuild "Rebuild"
  weeks 2
  deload week 2 with 50% of sets at 90% of load
  session a "First" on monday
    main deadlift 4 x 5 at 70%
    accessory row 2-3 x 12 at 40 kg
    accessory dip 2 x 5 at bodyweight + 10 kg
  session b on day 2
    main deadlift 1 x 3 at 8 rm
`)

describe('the sheet of a block', () => {
	const { weeks } = blockSheet(blockIn(folder, 'rebuild'), folder)

	it('has each week in percents, and masses where they are written', () => {
		const sets = (week: number) =>
			weeks[week]!.sessions.flatMap(({ items }) =>
				items.map(({ title, sets: all }) => [title, all.length, all[0]!.percent?.from ?? null, all[0]!.load, all[0]!.asked]),
			)
		expect(sets(0)).toEqual([
			['Deadlift', 4, '70', null, null],
			['Row', 3, null, '40', null],
			['Dip', 2, null, null, 'bodyweight + 10 kg'],
			['Deadlift', 1, null, null, '8 rm'],
		])
		// Half of the sets, rounded down; 90 % of 70 % = 63 %, of 40 kg = 36 kg, of the added 10 kg = 9 kg.
		expect(sets(1)).toEqual([
			['Deadlift', 2, '63', null, null],
			['Row', 1, null, '36', null],
			['Dip', 1, null, null, 'bodyweight + 9 kg'],
			['Deadlift', 1, null, null, '8 rm x 90%'],
		])
	})

	it('names the day, as far as the block knows it', () => {
		expect(weeks[0]!.sessions.map(({ session, title, weekday, day }) => [session, title, weekday, day])).toEqual([
			['a', 'First', 'monday', null],
			['b', null, null, 2],
		])
		expect(weeks.map(({ deload }) => deload)).toEqual([false, true])
	})
})
