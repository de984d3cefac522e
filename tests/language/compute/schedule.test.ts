import { describe, expect, it } from 'vitest'
import { schedulePlan } from '../../../language/compute/schedule.ts'
import type { Schedule } from '../../../language/model/schedule.ts'
import { planIn, workspaceOf } from '../../support/workspace.ts'

const blocks = `
block two-weeks
  weeks 2
  session pull-day on monday
    main deadlift 3 x 5 at 100 kg
    accessory plank 3 x 30 s
  session squat-day on thursday
    main back-squat 3 x 5 at 80 kg
block by-day
  weeks 1
  session first on day 1
    main deadlift 3 x 5 at 100 kg
  session third on day 3
    main deadlift 3 x 5 at 100 kg
  session nowhere
    main deadlift 3 x 5 at 100 kg`

function scheduleOf(plan: string, more = 'lifter someone'): Schedule {
	const folder = workspaceOf(blocks, more, `plan test-plan for someone\n${plan}`)
	return schedulePlan(planIn(folder, 'test-plan'), folder)
}

/** "2026-10-05 pull-day 1/1": date, session, week of the block and of the plan. */
function dates(schedule: Schedule): string[] {
	return schedule.sessions.map(
		({ date, session, blockWeek, planWeek }) => `${date} ${session.name.text} ${blockWeek}/${planWeek}`,
	)
}

function movements(schedule: Schedule, index = 0): string[] {
	return schedule.sessions[index]!.items.map(item => item.movementName.text)
}

describe('the calendar of a plan', () => {
	it('begins in the week of its start', () => {
		// 2026-10-05 is a monday.
		expect(dates(scheduleOf('start 2026-10-05\nrun two-weeks'))).toEqual([
			'2026-10-05 pull-day 1/1',
			'2026-10-08 squat-day 1/1',
			'2026-10-12 pull-day 2/2',
			'2026-10-15 squat-day 2/2',
		])
	})

	it('leaves out the sessions before its start', () => {
		const schedule = scheduleOf('start 2026-10-07\nrun two-weeks')
		expect(dates(schedule)[0]).toBe('2026-10-08 squat-day 1/1')
		expect(schedule.leftOut.map(({ session, blockWeek, why }) => `${session.name.text} ${blockWeek} ${why}`)).toEqual([
			'pull-day 1 before-start',
		])
		expect(schedule.runs[0]).toMatchObject({ monday: '2026-10-05', firstDay: '2026-10-07' })
	})

	it('runs one block after the other, each from the next monday', () => {
		const schedule = scheduleOf('start 2026-10-07\nrun two-weeks\nrun two-weeks')
		expect(schedule.runs.map(run => [run.monday, run.firstDay])).toEqual([
			['2026-10-05', '2026-10-07'],
			['2026-10-19', '2026-10-19'],
		])
		expect(dates(schedule).at(-1)).toBe('2026-10-29 squat-day 2/4')
	})

	it('begins a run in the week of its `from`, and goes on from there', () => {
		// 2026-11-04 is a wednesday: its calendar week is week 1, and the monday of that week stands.
		const schedule = scheduleOf('start 2026-10-05\nrun two-weeks from 2026-11-04\nrun two-weeks')
		expect(dates(schedule)[0]).toBe('2026-11-02 pull-day 1/5')
		expect(schedule.runs.map(run => run.firstDay)).toEqual(['2026-11-02', '2026-11-16'])
	})

	it('needs no start where the runs say when', () => {
		expect(dates(scheduleOf('run two-weeks from 2026-11-04'))[0]).toBe('2026-11-02 pull-day 1/1')
	})

	it('gives the weekdays of `day N`, and leaves out sessions without one', () => {
		const schedule = scheduleOf('start 2026-10-05\ndays tuesday, friday\nrun by-day')
		expect(dates(schedule)).toEqual(['2026-10-06 first 1/1'])
		expect(schedule.leftOut.map(({ session, why }) => `${session.name.text} ${why}`)).toEqual(['third no-day', 'nowhere no-day'])
	})

	it('sorts by date, whatever the order of the days', () => {
		expect(dates(scheduleOf('start 2026-10-05\ndays friday, tuesday, monday\nrun by-day'))).toEqual([
			'2026-10-05 third 1/1',
			'2026-10-09 first 1/1',
		])
	})

	it('cannot place what follows a block that nobody knows, until a date is given', () => {
		const schedule = scheduleOf('start 2026-10-05\nrun unknown-block\nrun two-weeks\nrun by-day from 2026-11-02\ndays monday')
		expect(schedule.runs.map(run => [run.block.name.text, run.monday])).toEqual([['by-day', '2026-11-02']])
	})

	it('has nothing without a date', () => {
		expect(scheduleOf('run two-weeks')).toMatchObject({ runs: [], sessions: [], leftOut: [] })
	})
})

describe('what a run changes', () => {
	it('swaps, drops and adds one after the other', () => {
		const schedule = scheduleOf(
			[
				'start 2026-10-05',
				'run two-weeks',
				'swap plank for side-plank because "wrist"',
				'add accessory dead-bug 2 x 10 to pull-day',
				'drop back-squat',
			].join('\n'),
		)
		expect(movements(schedule)).toEqual(['deadlift', 'side-plank', 'dead-bug'])
		expect(schedule.sessions[0]!.items.map(item => [item.changedBy, item.insteadOf?.text])).toEqual([
			[undefined, undefined],
			['swap', 'plank'],
			['add', undefined],
		])
		expect(movements(schedule, 1)).toEqual([])
	})

	it('keeps the movement of the block through two swaps', () => {
		const schedule = scheduleOf('start 2026-10-05\nrun two-weeks\nswap plank for side-plank\nswap side-plank for dead-bug')
		expect(schedule.sessions[0]!.items[1]).toMatchObject({ changedBy: 'swap', insteadOf: { text: 'plank' } })
	})

	it('holds for that run alone', () => {
		const schedule = scheduleOf('start 2026-10-05\nrun two-weeks\ndrop plank\nrun two-weeks')
		expect([0, 4].map(index => movements(schedule, index))).toEqual([['deadlift'], ['deadlift', 'plank']])
	})

	it('moves a session to another weekday', () => {
		const schedule = scheduleOf('start 2026-10-05\nrun two-weeks\nmove squat-day to tuesday')
		expect(dates(schedule).slice(0, 2)).toEqual(['2026-10-05 pull-day 1/1', '2026-10-06 squat-day 1/1'])
	})
})

describe('where a lifter trains', () => {
	const gyms = `
gym home "Home"
  bar barbell 20 kg
gym hotel "Hotel"
  bar barbell 45 lb
gym club "Club"
  bar barbell 15 kg`
	const gymsOf = (lines: string, more = '') =>
		scheduleOf('start 2026-10-05\nrun two-weeks', `${gyms}\nlifter someone\n${lines}\n${more}`).sessions.map(
			session => session.gym?.name.text,
		)

	it('is the gym of the date, else the one without dates', () => {
		expect(gymsOf('trains at home\ntrains at hotel from 2026-10-08 to 2026-10-12')).toEqual(['home', 'hotel', 'hotel', 'home'])
	})

	it('is the one of the date before the one without dates, though that stands later', () => {
		expect(gymsOf('trains at hotel to 2026-10-08\ntrains at home')).toEqual(['hotel', 'hotel', 'home', 'home'])
	})

	it('is the one that begins last, where several hold', () => {
		expect(gymsOf('trains at club from 2026-10-08\ntrains at hotel from 2026-10-12\ntrains at home')).toEqual([
			'home',
			'club',
			'hotel',
			'hotel',
		])
	})

	it('is the team’s, where the lifter names none', () => {
		const team = 'team juniors\nmembers someone\ntrains at club'
		expect(gymsOf('', team)).toEqual(['club', 'club', 'club', 'club'])
		expect(gymsOf('trains at home', team)).toEqual(['home', 'home', 'home', 'home'])
		expect(gymsOf('')).toEqual([undefined, undefined, undefined, undefined])
	})

	it('gives the unit: the barbell’s, else that of the bests', () => {
		const unitOf = (lines: string) => scheduleOf('start 2026-10-05\nrun two-weeks', `${gyms}\nlifter someone\n${lines}`).unit
		expect(unitOf('trains at hotel\nbest deadlift 160 kg')).toBe('lb')
		expect(unitOf('best deadlift 315 lb on 2026-09-01')).toBe('lb')
		expect(unitOf('')).toBe('kg')
	})

	it('gives the loads of a day in the unit of that day’s bar', () => {
		const { unit, sessions } = scheduleOf(
			'start 2026-10-05\nrun two-weeks',
			`${gyms}\nlifter someone\ntrains at home\ntrains at hotel from 2026-10-12`,
		)
		const computed = sessions.map(session => session.items[0]!.sets[0]!.computed)
		expect(unit).toBe('kg')
		expect(computed.map(load => [load.unit, load.load?.valueOf()])).toEqual([
			['kg', 100],
			['kg', 80],
			// 100 kg = 220.46 lb and 80 kg = 176.37 lb; a 45 lb bar takes steps of 5 lb.
			['lb', 220],
			['lb', 175],
		])
	})
})

describe('a schedule', () => {
	it('is the same object until something that it read changes', () => {
		const folder = workspaceOf(
			blocks,
			'lifter someone\nbest deadlift 160 kg',
			'plan test-plan for someone\nstart 2026-10-05\nrun two-weeks',
		)
		const before = schedulePlan(planIn(folder, 'test-plan'), folder)
		folder.setFile('file:///other.stave', 'lifter someone-else\nbest deadlift 100 kg')
		expect(schedulePlan(planIn(folder, 'test-plan'), folder)).toBe(before)
		folder.setFile('file:///other.stave', 'movement deadlift "My deadlift"\nequipment barbell')
		expect(schedulePlan(planIn(folder, 'test-plan'), folder)).not.toBe(before)
	})
})
