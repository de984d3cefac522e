import { describe, expect, test } from 'vitest'
import { schedulePlan } from '../../../language/compute/schedule.ts'
import { planVolume } from '../../../language/compute/volume.ts'
import { fileProblems } from '../../../language/workspace/file-problems.ts'
import { planIn, workspaceOf } from '../../support/workspace.ts'

const names = Array.from({ length: 30 }, (_, index) => `lifter-${String(index + 1).padStart(2, '0')}`)
const lifters = names.map(
	(name, index) => `lifter ${name}\n  trains at hall\n  best deadlift ${100 + 5 * index} kg on 2026-09-01`,
)
const club = `
gym hall "Hall"
  bar barbell 20 kg
  plates 25 kg x 8, 20 kg x 4, 15 kg x 4, 10 kg x 4, 5 kg x 4, 2.5 kg x 4, 1.25 kg x 4

team first-platform "First platform"
  members ${names.join(', ')}

block build "Build"
  weeks 12
  session pull on monday
    main deadlift 4 x 5 at 70%
  session trunk on thursday
    accessory plank 3 x 30 s
`

function folderOf(plan: string) {
	return workspaceOf(club, ...lifters, plan)
}

const plain = `plan winter "Winter" for first-platform
  start 12 weeks before 2026-12-19
  for lifter-07
    start 2026-10-05
  run build
    for lifter-02
      swap plank for side-plank because "wrist"
    for lifter-03
      scale deadlift 90%
  meet 2026-12-19 "Cup"`

describe('one plan for a club of thirty', () => {
	test('is a plan for each member, named after plan and member', () => {
		const folder = folderOf(plain)
		const plans = folder.all('plan').map(plan => plan.name.text)
		expect(plans).toEqual(names.map(name => `winter/${name}`))
		expect(folder.plansOf('lifter-11').map(plan => plan.name.text)).toEqual(['winter/lifter-11'])
		expect(folder.find('plan', 'winter/lifter-11')).toBe(folder.plansOf('lifter-11')[0])
		expect(folder.find('plan', 'winter/nobody')).toBeUndefined()
	})

	test('begins twelve whole weeks before the week of the meet', () => {
		// 2026-12-19 is a saturday; its week begins on monday 2026-12-14, and 12 weeks before that is monday 2026-09-21.
		const folder = folderOf(plain)
		const dates = (name: string) => schedulePlan(planIn(folder, name), folder).sessions.map(session => session.date)
		expect(dates('winter/lifter-01')[0]).toBe('2026-09-21')
		// 12 weeks with a monday and a thursday; the last thursday is 2026-12-10, in the week before the meet's.
		expect(dates('winter/lifter-01')).toHaveLength(24)
		expect(dates('winter/lifter-01').at(-1)).toBe('2026-12-10')
		expect(dates('winter/lifter-07')[0]).toBe('2026-10-05')
	})

	test('has the loads of each', () => {
		const folder = folderOf(plain)
		const loadOf = (name: string) => {
			const set = schedulePlan(planIn(folder, name), folder).sessions[0]!.items[0]!.sets[0]!
			return [set.computed.exact?.valueOf(), set.computed.load?.valueOf()]
		}
		// 70% of 100 kg; of 105 kg = 73.5, nearest 72.5; of 110 kg = 77, and 90% of that = 69.3, nearest 70; of 245 kg = 171.5, nearest 172.5.
		expect(loadOf('winter/lifter-01')).toEqual([70, 70])
		expect(loadOf('winter/lifter-02')).toEqual([73.5, 72.5])
		expect(loadOf('winter/lifter-03')).toEqual([69.3, 70])
		expect(loadOf('winter/lifter-30')).toEqual([171.5, 172.5])
	})

	test('has for one member what stands below `for`, and for no other', () => {
		const folder = folderOf(plain)
		const trunk = (name: string) => schedulePlan(planIn(folder, name), folder).sessions[1]!.items[0]!.movementName.text
		expect(['winter/lifter-01', 'winter/lifter-02', 'winter/lifter-03'].map(trunk)).toEqual(['plank', 'side-plank', 'plank'])
	})

	test('has totals of each', () => {
		const folder = folderOf(plain)
		const totals = (name: string) => {
			const totals = planVolume(planIn(folder, name), folder).totals
			const lift = totals.lifts.get('deadlift')!
			return [lift.sets, lift.reps, lift.tonnage].map(range => range.from.valueOf())
		}
		// 12 weeks x 4 = 48 sets of the deadlift; 12 x 4 x 5 = 240 lifts; 240 x 70 kg = 16,800 kg.
		expect(totals('winter/lifter-01')).toEqual([48, 240, 16800])
		// The block begins two weeks later and runs all of its weeks: 70% of 130 kg = 91, nearest 90; 240 x 90 = 21,600.
		expect(totals('winter/lifter-07')).toEqual([48, 240, 21600])
	})
})

describe('what is wrong with a plan for many', () => {
	const reported = (plan: string, ...more: string[]) => {
		const folder = workspaceOf(club, ...lifters, plan, ...more)
		return fileProblems(folder, folder.fileUris()[0]!).filter(problem => problem.level !== 'hint' && problem.level !== 'info')
	}
	const block = `
block squats "Squats"
  weeks 1
  session squats on monday
    main back-squat 4 x 5 at 70%`

	test('is one message that counts them, with the numbers of one', () => {
		const found = reported('plan winter for first-platform\n  start 2026-09-07\n  run squats', block)
		expect(found.map(problem => problem.code)).toEqual(['no-best'])
		expect(found[0]!.message).toMatch(/^For all 30 members, with the numbers of lifter-01: /)
	})

	test('names them where they are few, and some of them where they are many', () => {
		const plan = 'plan winter for first-platform\n  start 2026-09-07\n  run build'
		const rest = names.map(name => `limits ${name}-own for ${name}\n  no set above 65%`)
		const heavy = (count: number) => reported(plan, ...rest.slice(0, count)).filter(problem => problem.code === 'above-limit')
		expect(heavy(1).map(problem => problem.message.split(':')[0])).toEqual(['For lifter-01'])
		expect(heavy(2).map(problem => problem.message.split(/[,:]/)[0])).toEqual(['For lifter-01 and lifter-02'])
		expect(heavy(6)[0]!.message).toMatch(/^For lifter-01, lifter-02 and 4 others/)
		expect(heavy(6)).toHaveLength(1)
	})

	test('is silenced for one member by an exception among that member’s lines', () => {
		const plan = (who: string) =>
			`plan winter for first-platform\n  start 2026-09-07\n  run build\n    for ${who}\n      allow above-limit because "tested"`
		const limits = ['lifter-01', 'lifter-02'].map(name => `limits ${name}-own for ${name}\n  no set above 65%`)
		const about = (who: string) =>
			reported(plan(who), ...limits)
				.filter(problem => ['above-limit', 'unused-allow'].includes(problem.code))
				.map(problem => `${problem.code} ${problem.message.split(/[,:]/)[0]}`)
		expect(about('lifter-01')).toEqual(['above-limit For lifter-02'])
		// An exception that silences nothing is reported.
		expect(about('lifter-05')).toEqual([
			'above-limit For lifter-01 and lifter-02',
			'unused-allow This exception silences nothing',
		])
	})

	test('of the text is said once, whoever the members are', () => {
		const found = reported('plan winter for first-platform\n  start 2026-09-07\n  run build\n    drop back-squat\n  run nothing')
		expect(found.map(problem => problem.message.split('.')[0])).toEqual([
			'build has no back-squat to drop here',
			'No block is called "nothing"',
		])
	})
})
