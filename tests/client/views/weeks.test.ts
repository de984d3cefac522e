import { describe, expect, it } from 'vitest'
import { mondayOf, weeksOf } from '../../../client/views/sheet/weeks.ts'
import { session, sheet } from './support/invented.ts'

describe('the weeks of a sheet', () => {
	it('run from monday to sunday and carry the plan’s number', () => {
		const weeks = weeksOf(
			sheet([session({ date: '2026-10-07' }), session({ date: '2026-10-11' }), session({ date: '2026-10-19', planWeek: 3 })]),
		)
		expect(weeks.map(({ week, monday, sunday, sessions }) => [week, monday, sunday, sessions.map(({ index }) => index)])).toEqual(
			[
				[1, '2026-10-05', '2026-10-11', [0, 1]],
				[3, '2026-10-19', '2026-10-25', [2]],
			],
		)
	})

	it('are lighter where all their sessions are', () => {
		const [first, second] = weeksOf(
			sheet([
				session({ deload: true }),
				session({ date: '2026-10-12', planWeek: 2, deload: true }),
				session({ date: '2026-10-14', planWeek: 2 }),
			]),
		)
		expect([first!.deload, second!.deload]).toEqual([true, false])
	})

	it.each([
		['2026-10-05', '2026-10-05'],
		['2026-10-11', '2026-10-05'],
		['2027-01-01', '2026-12-28'],
		['2028-03-01', '2028-02-28'],
	])('the monday of %s is %s', (date, monday) => expect(mondayOf(date)).toBe(monday))
})
