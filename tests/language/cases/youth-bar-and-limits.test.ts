import { describe, expect, test } from 'vitest'
import { decimal } from '../../../language/compute/exact.ts'
import { schedulePlan } from '../../../language/compute/schedule.ts'
import { fileProblems } from '../../../language/workspace/file-problems.ts'
import { planIn, workspaceOf } from '../../support/workspace.ts'

const school = `
gym school "School"
  bar barbell 20 kg
  bar light-barbell 10 kg
  plates 10 kg x 4, 5 kg x 4, 2.5 kg x 4, 1.25 kg x 4

lifter tom-aas "Tom Aas"
  trains at school
  best back-squat 40 kg on 2026-09-01
  uses light-barbell as barbell

lifter ada-lund "Ada Lund"
  trains at school
  best back-squat 40 kg on 2026-09-01

team juniors "Juniors"
  members tom-aas

limits youth for juniors
  no set above 80%
  session at most 45 min

block first-squats "First squats"
  weeks 1
  session squat-day on monday
    main back-squat 3 x 5 at 45%, 1 x 2 at 85%

plan tom-autumn for tom-aas
  start 2026-10-05
  run first-squats

plan ada-autumn for ada-lund
  start 2026-10-05
  run first-squats
`

function loadsOf(plan: string, text = school) {
	const folder = workspaceOf(text)
	return schedulePlan(planIn(folder, plan), folder).sessions[0]!.items[0]!.sets.map(({ computed: { load, perSide, under } }) => [
		load && decimal(load),
		perSide?.map(disc => decimal(disc)).join(' + '),
		under,
	])
}

function problemsOf(text: string, code: string) {
	const folder = workspaceOf(text)
	return fileProblems(folder, folder.fileUris()[0]!).filter(problem => problem.code === code)
}

describe('a junior with a light bar', () => {
	test('has it where a movement asks for a barbell', () => {
		// 45 % of 40 = 18 kg: 10 + 2 × (2.5 + 1.25) = 17.5. 85 % = 34: 10 + 2 × (10 + 1.25 …) = 32.5 or 35; 35 is 1 away, 32.5 is 1.5.
		expect(loadsOf('tom-autumn')).toEqual([...Array(3).fill(['17.5', '2.5 + 1.25', false]), ['35', '10 + 2.5', false]])
		// On the usual bar 18 kg are under it.
		expect(loadsOf('ada-autumn')).toEqual([...Array(3).fill(['20', '', true]), ['35', '5 + 2.5', false]])
	})

	test('is told of it where the load is explained', () => {
		const folder = workspaceOf(school)
		const [set] = schedulePlan(planIn(folder, 'tom-autumn'), folder).sessions[0]!.items[0]!.sets
		expect(
			set!.computed
				.steps()
				.map(step => step.text)
				.slice(-2),
		).toEqual([
			'The light barbell in place of the barbell.',
			'Nearest load in School: 17.5 kg (bar 10 kg, each side 2.5 + 1.25 kg).',
		])
	})

	test('keeps the load as it is written where no gym says what the bar weighs', () => {
		const nowhere = school.replace(
			'  trains at school\n  best back-squat 40 kg on 2026-09-01\n  uses',
			'  best back-squat 40 kg on 2026-09-01\n  uses',
		)
		expect(loadsOf('tom-autumn', nowhere)).toEqual([...Array(3).fill(['18', undefined, false]), ['34', undefined, false]])
	})
})

describe('limits for juniors', () => {
	test('hold for the members of the team, and say whose they are', () => {
		const found = problemsOf(school, 'above-limit')
		expect(found.map(({ message }) => message)).toEqual([
			'Back squat goes to 85% of the best in week 1; no set goes above 80% (limits youth for Juniors). Lower it, or write down the better best first.',
		])
	})

	test('follow the team', () => {
		const folder = workspaceOf(school)
		const uri = folder.fileUris()[0]!
		const reported = () => fileProblems(folder, uri).filter(problem => problem.code === 'above-limit').length
		expect(reported()).toBe(1)
		folder.setFile(uri, school.replace('members tom-aas', 'members nobody-else'))
		expect(reported()).toBe(0)
		folder.setFile(uri, school.replace('members tom-aas', 'members ada-lund'))
		expect(reported()).toBe(1)
	})

	test('give way to those of the lifter', () => {
		const own = `${school}\nlimits tom for tom-aas\n  no set above 90%\n`
		expect(problemsOf(own, 'above-limit')).toEqual([])
	})

	test('of two teams: the stricter holds, and it is said that they differ', () => {
		const two = `${school}\nteam yard "Yard"\n  members tom-aas, ada-lund\n\nlimits yard for yard\n  no set above 75%\n`
		expect(problemsOf(two, 'stated-twice').map(({ message }) => message)).toEqual([
			'"no set above" differs for Yard (limits yard) and Juniors (here), and Tom Aas is in both: the stricter counts. Say the same in both, or write limits for tom-aas.',
		])
		// Both run the block, Ada by 75 % and Tom by the stricter of 80 % and 75 %: it is said once, in the block.
		const found = problemsOf(two, 'above-limit')
		expect(found.map(({ message }) => /no set goes above (\d+%) \((.*?)\)/.exec(message)?.slice(1))).toEqual([
			['75%', 'limits yard for Yard'],
		])
	})
})
