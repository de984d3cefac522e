import { describe, expect, it } from 'vitest'
import { planCalendar } from '../../../language/reports/calendar.ts'
import { planIn, workspaceOf } from '../../support/workspace.ts'

const block = `
movement deadlift "Deadlift"
  pattern hinge
movement plank "Plank"
  pattern brace

block rebuild "Rebuild"
  weeks 2
  deload week 2
  session heavy-pull "Heavy pull" on monday
    main deadlift 4 x 5 at 70%
    accessory plank 3 x 30 s
  session hold-day on thursday
    accessory plank 3 x 30 s
`

const calendarOf = (plan: string) => {
	const folder = workspaceOf(block, plan)
	return planCalendar(planIn(folder, 'autumn'), folder)
}

describe('the calendar of a plan', () => {
	it('has each week with its block, its days and its sessions', () => {
		const { weeks } = calendarOf(`
lifter mara-lind "Mara Lind"
plan autumn for mara-lind
  start 2026-10-05
  run rebuild
`)
		expect(weeks.map(({ monday, week, blocks }) => [monday, week, blocks])).toEqual([
			['2026-10-05', 1, [{ block: 'rebuild', week: 1, deload: false }]],
			['2026-10-12', 2, [{ block: 'rebuild', week: 2, deload: true }]],
		])
		expect(
			weeks[0]!.days.map(({ date, sessions }) => [date, sessions.map(({ session, title, main }) => [session, title, main])]),
		).toEqual([
			['2026-10-05', [['heavy-pull', 'Heavy pull', ['Deadlift']]]],
			['2026-10-08', [['hold-day', null, []]]],
		])
		// Hold day: 3 sets of 30 s with two rests of 90 s = 270 s = 4.5 min.
		expect(weeks[0]!.days[1]!.sessions[0]!.minutes).toBe(5)
	})

	it('shows the weeks between two blocks, and the week of a meet after them', () => {
		const { weeks } = calendarOf(
			`
lifter mara-lind "Mara Lind"
plan autumn for mara-lind
  start 2026-10-05
  run rebuild
  run rebuild
    from 2026-11-02
  meet 2026-11-21 "Regionals"
`.replace('run rebuild\n    from 2026-11-02', 'run rebuild from 2026-11-02'),
		)
		// 5 and 12 October the first run, 19 and 26 October nothing, 2 and 9 November the second, 16 November the meet on its saturday.
		expect(weeks.map(({ monday, week }) => [monday, week])).toEqual([
			['2026-10-05', 1],
			['2026-10-12', 2],
			['2026-10-19', 3],
			['2026-10-26', 4],
			['2026-11-02', 5],
			['2026-11-09', 6],
			['2026-11-16', 7],
		])
		expect(weeks.map(({ days }) => days.length)).toEqual([2, 2, 0, 0, 2, 2, 1])
		expect(weeks[6]!.days).toEqual([{ date: '2026-11-21', sessions: [], meets: ['Regionals'] }])
	})

	it('says in which weeks a pause is, and why', () => {
		const { weeks } = calendarOf(`
lifter mara-lind "Mara Lind"
plan autumn for mara-lind
  start 2026-10-05
  pause 2026-10-12 to 2026-10-18 because "flu"
  run rebuild
`)
		// The second week of the block moves on by the seven days of the pause.
		expect(weeks.map(({ monday, pauses, days }) => [monday, pauses, days.length])).toEqual([
			['2026-10-05', [], 2],
			['2026-10-12', [{ because: 'flu' }], 0],
			['2026-10-19', [], 2],
		])
	})

	it('leaves the years out before a meet whose year is a slip', () => {
		const { weeks } = calendarOf(`
lifter mara-lind "Mara Lind"
plan autumn for mara-lind
  start 2026-10-05
  run rebuild
  meet 2062-11-21
`)
		expect(weeks.length).toBe(3)
		expect(weeks[2]!.days[0]!.meets).toEqual([''])
	})

	it('is empty where nothing has a date', () => {
		expect(calendarOf('plan autumn for mara-lind\n').weeks).toEqual([])
	})
})
