import { describe, expect, it } from 'vitest'
import { plannedAgainstDone } from '../../../language/reports/planned-against-done.ts'
import { workspaceOf } from '../../support/workspace.ts'

const folder = workspaceOf(
	`
movement deadlift "Deadlift"
movement plank "Plank"
movement row "Row"
breakdown back-rounding "Back rounds"
  weak link stability
lifter mara-lind "Mara Lind"
  best deadlift 160 kg on 2026-09-12
block rebuild "Rebuild"
  weeks 3
  session heavy-pull "Heavy pull" on monday
    main deadlift 4 x 5 at 70%
    accessory plank 3 x 30 s
  session light-day on thursday
    main deadlift 2 x 5 at 60%
plan autumn for mara-lind
  start 2026-10-05
  run rebuild
log mara-lind
  on 2026-10-05 session heavy-pull
    did deadlift 4 x 5 at 112.5 kg rpe 7.5
    did row 8, 8, 7 at 40 kg
    felt 7 for 70 min
  on 2026-10-08 missed light-day because "work"
  on 2026-10-14 session heavy-pull
    did deadlift 1 x 5 at 110 kg
    did deadlift 5 at 110 kg broke with back-rounding
    hurt "left knee"
  on 2026-10-19 session swim
    did plank 60 s
`,
)

describe('planned against done', () => {
	const { title, weeks } = plannedAgainstDone('mara-lind', folder)

	it('counts what was planned and done, week by week up to the last entry', () => {
		expect(title).toBe('Mara Lind')
		// Week 1: both planned, one done. Week 2: monday's was done on wednesday, thursday's has no entry. Week 3: the swim is in no plan,
		// monday's heavy pull has no entry; thursday's lies after the last entry and is still ahead.
		expect(weeks.map(({ monday, planned, done }) => [monday, planned, done])).toEqual([
			['2026-10-05', 2, 1],
			['2026-10-12', 2, 1],
			['2026-10-19', 1, 0],
		])
	})

	it('sets each session beside its entry', () => {
		expect(
			weeks.flatMap(({ sessions }) => sessions.map(({ date, session, state, plannedOn }) => [date, session, state, plannedOn])),
		).toEqual([
			['2026-10-05', 'heavy-pull', 'done', null],
			['2026-10-08', 'light-day', 'missed', null],
			['2026-10-14', 'heavy-pull', 'done', '2026-10-12'],
			['2026-10-15', 'light-day', 'not-logged', null],
			['2026-10-19', 'swim', 'beside-the-plan', null],
			['2026-10-19', 'heavy-pull', 'not-logged', null],
		])
		expect(weeks[0]!.sessions[1]!.because).toBe('work')
		expect(weeks[1]!.sessions[0]!.hurt).toEqual(['left knee'])
	})

	it('sets each movement beside its sets, and adds what was not planned', () => {
		const [first] = weeks[0]!.sessions
		expect(
			first!.items.map(({ title: name, planned, done }) => [
				name,
				planned?.sets.length ?? null,
				done.map(one => [one.sets, one.reps, one.load, one.rpe]),
			]),
		).toEqual([
			['Deadlift', 4, [[4, 5, '112.5', '7.5']]],
			['Plank', 3, []],
			[
				'Row',
				null,
				[
					[2, 8, '40', null],
					[1, 7, '40', null],
				],
			],
		])
		// 70 % of 160 kg; without equipment nothing is rounded.
		expect(first!.items[0]!.planned!.sets[0]!.load).toBe('112')
	})

	it('sets all lines of a movement beside what was planned of it', () => {
		const [, second] = weeks[1]!.sessions
		expect(weeks[1]!.sessions[0]!.items.map(({ title: name, planned, done }) => [name, planned !== null, done.length])).toEqual([
			['Deadlift', true, 2],
			['Plank', true, 0],
		])
		expect(weeks[1]!.sessions[0]!.items[0]!.done[1]).toMatchObject({ sets: 1, reps: 5, brokeWith: 'Back rounds' })
		expect(second!.items).toEqual([])
	})

	it('has the session load: rating times minutes', () => {
		// 7 × 70 min = 490.
		expect(weeks[0]!.sessions[0]!.felt).toEqual({ rating: '7', minutes: '70', load: '490' })
		expect(weeks[0]!.load).toMatchObject({ total: '490', unrated: 0 })
	})

	it('sets a time beside what was planned for time, and the reps beside the time that was to hold them', () => {
		const events = workspaceOf(`
movement sled-push "Sled push"
movement push-up "Push-up"
lifter olve-brek "Olve Brek"
block events "Events"
  weeks 1
  session events on saturday
    main sled-push 3 x 20 m for time at 60 kg
    accessory push-up 2 x 60 s for reps
plan autumn for olve-brek
  start 2026-10-05
  run events
log olve-brek
  on 2026-10-10 session events
    did sled-push 20 m in 14.2 s, 20 m in 13.8 s, 50 m in 1 min 4.5 s at 60 kg
    did push-up 31, 28 in 60 s
`)
		const [sled, pushes] = plannedAgainstDone('olve-brek', events).weeks[0]!.sessions[0]!.items
		expect(sled!.planned!.sets[0]).toMatchObject({ metres: { from: 20, to: 20 }, forTime: true })
		expect(sled!.done.map(({ metres, tookSeconds, load }) => [metres, tookSeconds, load])).toEqual([
			[20, 14.2, '60'],
			[20, 13.8, '60'],
			[50, 64.5, '60'],
		])
		expect(pushes!.planned!.sets[0]).toMatchObject({ seconds: { from: 60, to: 60 }, forReps: true })
		expect(pushes!.done.map(({ reps, tookSeconds }) => [reps, tookSeconds])).toEqual([
			[31, 60],
			[28, 60],
		])
	})

	it('is empty for who has no log', () => {
		expect(plannedAgainstDone('tom-aas', folder).weeks).toEqual([])
	})
})
