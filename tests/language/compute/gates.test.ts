import { describe, expect, it } from 'vitest'
import { gateReachedInOutline, gateReachedInSchedule, gateState, gatesOf, gateText } from '../../../language/compute/gates.ts'
import { outlineBlock } from '../../../language/compute/outline.ts'
import { schedulePlan } from '../../../language/compute/schedule.ts'
import type { Gate } from '../../../language/model/definitions.ts'
import type { Folder } from '../../../language/workspace/folder.ts'
import { blockIn, lifterIn, movementIn, planIn, workspaceOf } from '../../support/workspace.ts'

/** The only gate of a movement `target` with this line. */
function targetGate(folder: Folder): Gate {
	return movementIn(folder, 'target').gates[0]!
}

/** Has a lifter with these lines and logs passed `requires …` before 2026-10-05? */
function stateOf(requires: string, lifter: string, log = '') {
	const folder = workspaceOf(
		`movement target "Target"\nrequires ${requires}`,
		`lifter someone\n${lifter}`,
		log === '' ? '' : `log someone\n${log}`,
	)
	return gateState(targetGate(folder), 'target', lifterIn(folder, 'someone'), '2026-10-05', folder)
}

function isPassed(requires: string, lifter: string, log = ''): boolean {
	return stateOf(requires, lifter, log).passed
}

describe('a gate', () => {
	it('of a hold is passed by the same or a longer hold', () => {
		expect(isPassed('plank held 45 s', 'passed plank held 45 s on 2026-09-20')).toBe(true)
		expect(isPassed('plank held 45 s', 'passed plank held 50 s on 2026-09-20')).toBe(true)
		expect(isPassed('plank held 45 s', 'passed plank held 44 s on 2026-09-20')).toBe(false)
		expect(isPassed('plank held 45 s', 'passed side-plank held 60 s on 2026-09-20')).toBe(false)
	})

	it('of a hold with a load is passed by the same or a greater load, in whatever unit', () => {
		const gate = 'weighted-plank held 60 s with 10 kg'
		expect(isPassed(gate, 'passed weighted-plank held 60 s with 10 kg on 2026-09-20')).toBe(true)
		// 25 lb = 11.34 kg, 20 lb = 9.07 kg.
		expect(isPassed(gate, 'passed weighted-plank held 60 s with 25 lb on 2026-09-20')).toBe(true)
		expect(isPassed(gate, 'passed weighted-plank held 60 s with 20 lb on 2026-09-20')).toBe(false)
		expect(isPassed(gate, 'passed weighted-plank held 90 s on 2026-09-20')).toBe(false)
	})

	it('of reps is passed by as many at that load or more', () => {
		const gate = 'front-squat 5 reps at 80 kg'
		expect(isPassed(gate, 'passed front-squat 5 reps at 82.5 kg on 2026-09-20')).toBe(true)
		expect(isPassed(gate, 'passed front-squat 4 reps at 100 kg on 2026-09-20')).toBe(false)
		expect(isPassed(gate, 'passed front-squat 8 reps at 75 kg on 2026-09-20')).toBe(false)
		expect(isPassed('pull-up 5 reps', 'passed pull-up 6 reps on 2026-09-20')).toBe(true)
	})

	it('of a load is passed by a rep at it or over it', () => {
		expect(isPassed('deadlift at 100 kg', 'passed deadlift at 100 kg on 2026-09-20')).toBe(true)
		expect(isPassed('deadlift at 100 kg', 'passed deadlift 3 reps at 105 kg on 2026-09-20')).toBe(true)
		expect(isPassed('deadlift at 100 kg', 'passed deadlift at 95 kg on 2026-09-20')).toBe(false)
	})

	it('of a sign-off is passed by a sign-off alone, of the movement behind it', () => {
		expect(isPassed('sign-off', 'passed target sign-off on 2026-09-20 because "neutral spine"')).toBe(true)
		expect(isPassed('sign-off', 'passed plank sign-off on 2026-09-20 because "neutral spine"')).toBe(false)
		expect(isPassed('sign-off', 'passed target held 300 s on 2026-09-20')).toBe(false)
		expect(isPassed('plank held 45 s', 'passed plank sign-off on 2026-09-20 because "clean"')).toBe(false)
	})
})

describe('evidence', () => {
	it('is dated before the day', () => {
		expect(isPassed('plank held 45 s', 'passed plank held 45 s on 2026-10-04')).toBe(true)
		expect(isPassed('plank held 45 s', 'passed plank held 45 s on 2026-10-05')).toBe(false)
	})

	it('without a date shows nothing, but is pointed to', () => {
		const state = stateOf('plank held 45 s', 'passed plank held 50 s')
		expect(state).toMatchObject({ passed: false, undated: { gate: { kind: 'hold' } } })
	})

	it('is a logged set from the first one on', () => {
		const log = 'on 2026-09-28\ndid plank 30 s, 45 s, 40 s'
		expect(stateOf('plank held 45 s', '', log)).toMatchObject({ passed: true, on: '2026-09-28', by: { kind: 'logged' } })
		expect(isPassed('plank held 46 s', '', log)).toBe(false)
		expect(isPassed('weighted-plank held 60 s with 10 kg', '', 'on 2026-09-28\ndid weighted-plank 2 x 60 s at 10 kg')).toBe(true)
	})

	it('is no set in which position was lost, and no rep that was missed', () => {
		const gate = 'deadlift 5 reps at 100 kg'
		expect(isPassed(gate, '', 'on 2026-09-28\ndid deadlift 5 at 100 kg')).toBe(true)
		expect(isPassed(gate, '', 'on 2026-09-28\ndid deadlift 5 at 100 kg missed 1')).toBe(false)
		expect(isPassed(gate, '', 'on 2026-09-28\ndid deadlift 5 at 100 kg broke with back-rounding')).toBe(false)
	})

	it('is a best, which has been lifted', () => {
		expect(isPassed('deadlift at 100 kg', 'best deadlift 160 kg on 2026-09-12')).toBe(true)
		expect(isPassed('deadlift at 100 kg', 'best deadlift 160 kg on 2026-10-12')).toBe(false)
		expect(isPassed('deadlift 5 reps at 100 kg', 'best deadlift 160 kg x 3 on 2026-09-12')).toBe(false)
	})

	it('is the latest that passes', () => {
		const lines =
			'passed plank held 90 s on 2026-03-01\npassed plank held 45 s on 2026-09-20\npassed plank held 30 s on 2026-09-30'
		expect(stateOf('plank held 45 s', lines)).toMatchObject({ passed: true, on: '2026-09-20' })
	})

	it('that is not enough is given as the nearest so far', () => {
		const state = stateOf('plank held 60 s', 'passed plank held 40 s on 2026-09-20', 'on 2026-09-28\ndid plank 50 s, 45 s')
		expect(state).toMatchObject({ passed: false, bestSoFar: { on: '2026-09-28', by: { kind: 'logged' } } })
		expect(state.passed ? undefined : state.bestSoFar?.feat).toMatchObject({ kind: 'hold' })
		expect(stateOf('plank held 60 s', '')).toEqual({
			passed: false,
			bestSoFar: undefined,
			sessions: 0,
			mostSets: undefined,
			undated: undefined,
		})
	})

	it('is nearest with the load of the gate, before a longer hold without it', () => {
		const lines = 'passed weighted-plank held 90 s on 2026-09-20\npassed weighted-plank held 40 s with 10 kg on 2026-09-01'
		expect(stateOf('weighted-plank held 60 s with 10 kg', lines)).toMatchObject({ bestSoFar: { on: '2026-09-01' } })
	})
})

describe('evidence of a gate that must be shown more than once', () => {
	const gate = 'plank held 45 s x 3 in 2 sessions'
	const threeHolds = 'did plank 3 x 45 s'

	it('is so many sets of one session, in so many sessions', () => {
		expect(isPassed(gate, '', `on 2026-09-20\n${threeHolds}\non 2026-09-22\ndid plank 45 s, 60 s, 50 s`)).toBe(true)
		expect(isPassed(gate, '', `on 2026-09-20\n${threeHolds}\non 2026-09-22\ndid plank 45 s, 45 s, 44 s`)).toBe(false)
		// Six holds of one session are one session.
		expect(isPassed(gate, '', 'on 2026-09-20\ndid plank 6 x 45 s')).toBe(false)
		// Two sessions of one day are two.
		expect(isPassed(gate, '', `on 2026-09-20\n${threeHolds}\non 2026-09-20\n${threeHolds}`)).toBe(true)
	})

	it('is a line that says as much or more, and no line that says less', () => {
		expect(isPassed(gate, 'passed plank held 45 s x 3 in 2 sessions on 2026-09-20')).toBe(true)
		expect(isPassed(gate, 'passed plank held 60 s x 4 in 3 sessions on 2026-09-20')).toBe(true)
		expect(isPassed(gate, 'passed plank held 45 s x 3 on 2026-09-20')).toBe(false)
		expect(isPassed(gate, 'passed plank held 45 s x 2 in 2 sessions on 2026-09-20')).toBe(false)
		expect(isPassed('plank held 45 s', 'passed plank held 45 s x 3 in 2 sessions on 2026-09-20')).toBe(true)
	})

	it('counts a day once, whoever tells of it', () => {
		const line = 'passed plank held 45 s x 3 on 2026-09-20'
		expect(stateOf(gate, line, `on 2026-09-20\n${threeHolds}`)).toMatchObject({ passed: false, sessions: 1 })
		expect(isPassed(gate, line, `on 2026-09-21\n${threeHolds}`)).toBe(true)
	})

	it('of a line that tells of several counts with what comes after it alone', () => {
		const three = 'plank held 45 s x 3 in 3 sessions'
		const line = 'passed plank held 45 s x 3 in 2 sessions on 2026-09-20'
		expect(stateOf(three, line, `on 2026-09-18\n${threeHolds}`)).toMatchObject({ passed: false, sessions: 2 })
		expect(isPassed(three, line, `on 2026-09-22\n${threeHolds}`)).toBe(true)
	})

	it('that is not enough says how far it goes', () => {
		const log = 'on 2026-09-20\ndid plank 45 s\non 2026-09-22\ndid plank 50 s, 45 s, 30 s'
		expect(stateOf(gate, '', log)).toMatchObject({ passed: false, sessions: 0, mostSets: { sets: 2, on: '2026-09-22' } })
	})

	it('without a date is pointed to where it says as much', () => {
		expect(stateOf(gate, 'passed plank held 45 s')).toMatchObject({ passed: false, undated: undefined })
		expect(stateOf(gate, 'passed plank held 45 s x 3 in 2 sessions')).toMatchObject({ undated: { gate: { kind: 'hold' } } })
	})

	it('is the latest session that was enough', () => {
		const log = `on 2026-09-20\n${threeHolds}\non 2026-09-22\n${threeHolds}\non 2026-09-24\ndid plank 45 s`
		expect(stateOf(gate, '', log)).toMatchObject({ passed: true, on: '2026-09-22' })
	})
})

describe('a multiple of the bodyweight', () => {
	it('is passed by as many kilograms or more, in whatever unit', () => {
		const best = (kilograms: string) => `bodyweight 60 kg\nbest deadlift ${kilograms} on 2026-09-12`
		expect(isPassed('deadlift at 1.5 x bodyweight', best('90 kg'))).toBe(true)
		expect(isPassed('deadlift at 1.5 x bodyweight', best('87.5 kg'))).toBe(false)
		// 200 lb = 90.7 kg, 198 lb = 89.8 kg.
		expect(isPassed('deadlift at 1.5 x bodyweight', best('200 lb'))).toBe(true)
		expect(isPassed('deadlift at 1.5 x bodyweight', best('198 lb'))).toBe(false)
	})

	it('for reps is passed by as many reps at it', () => {
		const gate = 'front-squat 5 reps at 1 x bodyweight'
		expect(isPassed(gate, 'bodyweight 60 kg', 'on 2026-09-28\ndid front-squat 5 at 60 kg')).toBe(true)
		expect(isPassed(gate, 'bodyweight 60 kg', 'on 2026-09-28\ndid front-squat 4 at 80 kg')).toBe(false)
		expect(isPassed(gate, 'bodyweight 60 kg', 'on 2026-09-28\ndid front-squat 6 in clusters of 3 resting 20 s at 60 kg')).toBe(
			false,
		)
	})

	it('is shown by a line that says a multiple, and by no kilograms where nobody knows the bodyweight', () => {
		expect(isPassed('deadlift at 1.5 x bodyweight', 'passed deadlift at 1.75 x bodyweight on 2026-09-20')).toBe(true)
		expect(isPassed('deadlift at 1.5 x bodyweight', 'passed deadlift at 1.25 x bodyweight on 2026-09-20')).toBe(false)
		expect(isPassed('deadlift at 1.5 x bodyweight', 'best deadlift 300 kg on 2026-09-12')).toBe(false)
		// 1.5 × 60 = 90 kg pass a gate in kilograms.
		expect(isPassed('deadlift at 90 kg', 'bodyweight 60 kg\npassed deadlift at 1.5 x bodyweight on 2026-09-20')).toBe(true)
	})
})

describe('the gates of a movement', () => {
	it('are its own and those of its steps, one that stands in both once', () => {
		const folder = workspaceOf(
			[
				'movement target "Target"',
				'requires plank held 45 s',
				'progression way',
				'step plank',
				'step target after plank held 45 s',
				'progression other-way',
				'step side-plank',
				'step target after side-plank held 30 s',
			].join('\n'),
		)
		const gates = gatesOf(movementIn(folder, 'target'), folder)
		expect(gates.map(({ gate, setBy }) => `${setBy.name.text}: ${gateText(gate, 'target', folder)}`)).toEqual([
			'target: Plank held 45 s',
			'other-way: Side plank held 30 s',
		])
	})

	it('have words', () => {
		const text = (requires: string) => {
			const folder = workspaceOf(`movement target "Target"\nrequires ${requires}`)
			return gateText(targetGate(folder), 'target', folder)
		}
		expect(
			[
				'sign-off',
				'plank sign-off',
				'weighted-plank held 1 min with 10 kg',
				'front-squat 1 rep at 80 kg',
				'deadlift at 100 kg',
				'plank held 45 s x 3 in 2 sessions',
				'deadlift 3 reps at 1.5 x bodyweight in 2 sessions',
			].map(text),
		).toEqual([
			'a sign-off of Target',
			'a sign-off of Plank',
			'Weighted plank held 60 s with 10 kg',
			'Front squat 1 rep at 80 kg',
			'Deadlift at 100 kg',
			'Plank held 45 s x 3 in 2 sessions',
			'Deadlift 3 reps at 1.5 x bodyweight in 2 sessions',
		])
	})
})

describe('a plan that is done as written', () => {
	const reached = (requires: string, items: string, beforeDate = '2026-12-31') => {
		const folder = workspaceOf(
			`movement target "Target"\nrequires ${requires}`,
			'lifter someone\nbest deadlift 160 kg',
			`block test-block\nweeks 4\nsession one on monday\n${items}`,
			'plan test-plan for someone\nstart 2026-10-05\nrun test-block',
		)
		return gateReachedInSchedule(targetGate(folder), schedulePlan(planIn(folder, 'test-plan'), folder), beforeDate)
	}

	it('reaches a hold on the day that first asks for it', () => {
		const plank = 'accessory plank 3 x 35 s\neach week add 5 s'
		expect(reached('plank held 45 s', plank)).toBe('2026-10-19')
		expect(reached('plank held 45 s', plank, '2026-10-19')).toBeUndefined()
		expect(reached('plank held 55 s', plank)).toBeUndefined()
	})

	it('reaches a load by what will be on the bar', () => {
		// 70 % of 160 kg = 112 kg, on the bar 112.5 kg.
		expect(reached('deadlift 5 reps at 112.5 kg', 'main deadlift 3 x 5 at 70%')).toBe('2026-10-05')
		expect(reached('deadlift 5 reps at 115 kg', 'main deadlift 3 x 5 at 70%')).toBeUndefined()
	})

	it('counts the low end of what is left open', () => {
		expect(reached('plank held 45 s', 'accessory plank 3 x 30-45 s')).toBeUndefined()
		expect(reached('deadlift 5 reps', 'main deadlift 3 x 3-5 at 70%')).toBeUndefined()
	})

	it('reaches what must be shown more than once with the session that makes it so', () => {
		// The block has one session a week: two of them with three holds of 45 s are full on the second monday.
		expect(reached('plank held 45 s x 3 in 2 sessions', 'accessory plank 3 x 45 s')).toBe('2026-10-12')
		expect(reached('plank held 45 s x 4', 'accessory plank 3 x 45 s')).toBeUndefined()
		expect(reached('plank held 45 s x 3', 'accessory plank 2-4 x 45 s')).toBeUndefined()
		expect(reached('plank held 45 s x 3 in 5 sessions', 'accessory plank 3 x 45 s')).toBeUndefined()
	})

	it('counts the reps of one cluster, and none of as many as a time holds', () => {
		expect(reached('deadlift 2 reps at 112.5 kg', 'main deadlift 3 x 6 in clusters of 2 resting 20 s at 70%')).toBe('2026-10-05')
		expect(reached('deadlift 3 reps at 112.5 kg', 'main deadlift 3 x 6 in clusters of 2 resting 20 s at 70%')).toBeUndefined()
		expect(reached('deadlift 1 rep', 'main deadlift 2 x 60 s for reps at 70%')).toBeUndefined()
	})

	it('reaches no sign-off', () => {
		expect(reached('sign-off', 'accessory target 3 x 5')).toBeUndefined()
	})
})

describe('a block', () => {
	it('reaches a gate in the week that first asks for it, by written loads alone', () => {
		const week = (requires: string, items: string, before: number) => {
			const folder = workspaceOf(
				`movement target "Target"\nrequires ${requires}`,
				`block test-block\nweeks 4\nsession one on monday\n${items}`,
			)
			return gateReachedInOutline(targetGate(folder), outlineBlock(blockIn(folder, 'test-block'), folder), before)
		}
		const plank = 'accessory plank 3 x 35 s\neach week add 5 s'
		expect(week('plank held 45 s', plank, 4)).toBe(3)
		expect(week('plank held 45 s', plank, 3)).toBeUndefined()
		expect(week('deadlift 5 reps at 100 kg', 'main deadlift 3 x 5 at 100 kg', 2)).toBe(1)
		expect(week('deadlift 5 reps at 100 kg', 'main deadlift 3 x 5 at 95 kg\neach week add 2.5 kg', 4)).toBe(3)
		expect(week('deadlift 5 reps at 100 kg', 'main deadlift 3 x 5 at 99%', 2)).toBeUndefined()
	})
})
