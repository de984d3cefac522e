import { describe, expect, test } from 'vitest'
import { fileProblems } from '../../../language/workspace/file-problems.ts'
import { workspaceOf } from '../../support/workspace.ts'

const club = `
movement long-carry "Long carry"
  pattern carry
  trains stability
  requires plank held 45 s x 3 in 2 sessions

progression carries "Carries"
  step suitcase-carry
  step long-carry after suitcase-hold held 30 s with 0.25 x bodyweight x 2

block carries-first "Carries first"
  weeks 1
  session carry-day on monday
    accessory long-carry 3 x 20 m

block pull-first "Pull first"
  weeks 1
  requires deadlift at 1.5 x bodyweight
  requires front-squat 5 reps at 1 x bodyweight
  session pull-day on monday
    main deadlift 4 x 5 at 70%`

/** What is said of the gates of a lifter with these lines and logs, who runs a block. */
function gatesOf(block: string, lifter: string, log = '') {
	const folder = workspaceOf(
		club,
		`lifter sam-ost "Sam Ost"\n${lifter}`,
		log === '' ? '' : `log sam-ost\n${log}`,
		`plan sam-autumn for sam-ost\n  start 2026-10-05\n  run ${block}`,
	)
	return fileProblems(folder, folder.fileUris()[0]!)
		.filter(({ code }) => code.startsWith('gate-') && code !== 'gate-order')
		.map(({ code, message }) => `${code}: ${message}`)
}

const notPassed = (...asked: Parameters<typeof gatesOf>) => gatesOf(...asked).find(one => one.startsWith('gate-not-passed'))

/** The gate of the progression, shown: 0.25 × 60 kg = 15 kg, twice. */
const held = '  bodyweight 60 kg\n  passed suitcase-hold held 30 s with 15 kg x 2 on 2026-09-20\n'

describe('a lifter who must hold position first', () => {
	test('has shown nothing', () => {
		expect(gatesOf('carries-first', held)).toEqual([
			'gate-not-passed: Long carry, first used on 2026-10-05, needs Plank held 45 s x 3 in 2 sessions before (movement long-carry). Sam Ost has not passed it: nothing is written down that shows it. See it done and write `passed …` with its date, or go a step back.',
		])
	})

	test('has held it long enough, but not three times in one session: what was counted is said', () => {
		const log = 'on 2026-09-22\n  did plank 50 s, 45 s, 40 s\non 2026-09-24\n  did plank 45 s'
		expect(notPassed('carries-first', held, log)).toContain('the most in one session so far is 2 of 3 sets on 2026-09-22')
	})

	test('has held it three times, in one of two sessions', () => {
		const log = 'on 2026-09-22\n  did plank 3 x 45 s\non 2026-09-24\n  did plank 45 s, 45 s'
		expect(notPassed('carries-first', held, log)).toContain('it was shown in 1 of 2 sessions so far')
	})

	test('has held it three times in two sessions: the log is enough, and the line for good is offered', () => {
		const log = 'on 2026-09-22\n  did plank 3 x 45 s\non 2026-09-24\n  did plank 4 x 50 s'
		expect(gatesOf('carries-first', held, log)).toEqual([
			'gate-earned: What was logged on 2026-09-24 passes the gates Plank held 45 s x 3 in 2 sessions and Plank held 45 s (movement long-carry). A `passed` line says so for good.',
		])
		expect(gatesOf('carries-first', `${held}  passed plank held 45 s x 3 in 2 sessions on 2026-09-24`, log)).toEqual([])
	})

	test('has a line that tells of the session that is logged too: it counts once', () => {
		const twice = `${held}  passed plank held 45 s x 3 on 2026-09-22`
		expect(notPassed('carries-first', twice, 'on 2026-09-22\n  did plank 3 x 45 s')).toContain('in 1 of 2 sessions')
		expect(notPassed('carries-first', twice, 'on 2026-09-24\n  did plank 3 x 45 s')).toBeUndefined()
	})

	test('lifts a multiple of the bodyweight: 1.5 × 60 = 90 kg, and 5 reps at 60 kg', () => {
		const strong = '  bodyweight 60 kg\n  best deadlift 90 kg on 2026-09-12\n'
		expect(gatesOf('pull-first', `${strong}  best front-squat 60 kg x 5 on 2026-09-12`)).toEqual([])
		expect(gatesOf('pull-first', `${strong}  best front-squat 60 kg x 4 on 2026-09-12`)[0]).toContain(
			'1 x bodyweight is 60 kg; the most so far is 4 reps with 60 kg on 2026-09-12',
		)
		const light = strong.replace('90 kg', '87.5 kg')
		expect(gatesOf('pull-first', `${light}  best front-squat 60 kg x 5 on 2026-09-12`)[0]).toContain(
			'requires Deadlift at 1.5 x bodyweight',
		)
	})

	test('has no bodyweight written down: nobody can say, and it is said why', () => {
		const unknown = '  best deadlift 150 kg on 2026-09-12\n  best front-squat 100 kg x 5 on 2026-09-12'
		const found = gatesOf('pull-first', unknown)
		expect(found).toHaveLength(2)
		expect(found[0]).toContain('no bodyweight is written down')
	})
})
