import { describe, expect, it } from 'vitest'
import { schedulePlan } from '../../../language/compute/schedule.ts'
import { planVolume } from '../../../language/compute/volume.ts'
import { planIn, workspaceOf } from '../../support/workspace.ts'

function folderOf(block: string, plan = 'start 2026-10-05') {
	return workspaceOf(
		'lifter someone\n  best back-squat 100 kg on 2026-09-01',
		`block test-block\n${block}`,
		`plan test-plan for someone\n${plan}\nrun test-block`,
	)
}

/** "2026-10-05 squat 82.5": date, part of the day, session, and the load of its first set. */
function days(block: string, plan?: string): string[] {
	const folder = folderOf(block, plan)
	return schedulePlan(planIn(folder, 'test-plan'), folder).sessions.map(({ date, part, session, items }) => {
		const load = items[0]?.sets[0]?.computed.exact
		return [date, part, session.name.text, load?.valueOf()].filter(one => one !== undefined).join(' ')
	})
}

describe('one session on several days of a week', () => {
	it('stands on each of them, in the order of the week', () => {
		const block = 'weeks 2\nsession squat on thursday, monday\nmain back-squat 3 x 5 at 70 kg'
		expect(days(block)).toEqual(['2026-10-05 squat 70', '2026-10-08 squat 70', '2026-10-12 squat 70', '2026-10-15 squat 70'])
	})

	it('counts each time: 2 days of 3 x 5 at 70 kg are 6 sets, 30 lifts, 2100 kg, 2 exposures and twice the minutes', () => {
		// A day: 3 sets of 15 s and 2 rests of 180 s are 405 s. The week: 810 s.
		const folder = folderOf('weeks 1\nsession squat on monday, thursday\nmain back-squat 3 x 5 at 70 kg')
		const { totals } = planVolume(planIn(folder, 'test-plan'), folder).weeks[0]!
		const squat = totals.lifts.get('back-squat')!
		expect([squat.sets.from, squat.reps.from, squat.tonnage.from.valueOf(), squat.exposures.size]).toEqual([6, 30, 2100, 2])
		expect(totals.seconds.from.valueOf()).toBe(810)
	})

	it('has the weekdays that a plan gives its numbers', () => {
		const block = 'weeks 1\nsession squat on day 1, 3\nmain back-squat 3 x 5 at 70 kg'
		expect(days(block, 'start 2026-10-05\ndays tuesday, thursday, saturday')).toEqual([
			'2026-10-06 squat 70',
			'2026-10-10 squat 70',
		])
	})

	it('stands in the evening after what has no time, and in the morning before it', () => {
		const block = [
			'weeks 1',
			'session late on monday evening',
			'main back-squat 1 x 5 at 70 kg',
			'session noon on monday',
			'main bench-press 1 x 5 at 50 kg',
			'session early on monday morning, tuesday',
			'accessory plank 1 x 30 s',
		].join('\n')
		expect(days(block)).toEqual([
			'2026-10-05 morning early',
			'2026-10-05 noon 50',
			'2026-10-05 evening late 70',
			'2026-10-06 early',
		])
	})
})

describe('sessions that take turns', () => {
	const sessions = ['session a', 'main back-squat 3 x 5 at 60 kg', 'session b', 'main deadlift 1 x 5 at 80 kg'].join('\n')

	it('are a, b, a in one week and b, a, b in the next', () => {
		expect(days(`weeks 3\nturn a, b over monday, wednesday, friday\n${sessions}`)).toEqual([
			...['2026-10-05 a 60', '2026-10-07 b 80', '2026-10-09 a 60'],
			...['2026-10-12 b 80', '2026-10-14 a 60', '2026-10-16 b 80'],
			...['2026-10-19 a 60', '2026-10-21 b 80', '2026-10-23 a 60'],
		])
	})

	it('are counted by the days of the block: what the start cuts off has had its turn', () => {
		expect(days(`weeks 1\nturn a, b over monday, wednesday, friday\n${sessions}`, 'start 2026-10-07')).toEqual([
			'2026-10-07 b 80',
			'2026-10-09 a 60',
		])
	})

	it('stand on numbered days, and beside sessions with days of their own', () => {
		const block = `weeks 2\nturn a, b over day 1\n${sessions}\nsession rest-day on saturday\naccessory plank 1 x 30 s`
		expect(days(block, 'start 2026-10-05\ndays tuesday')).toEqual([
			...['2026-10-06 a 60', '2026-10-10 rest-day', '2026-10-13 b 80', '2026-10-17 rest-day'],
		])
	})
})

describe('each session add', () => {
	it('acts at every session, from one week into the next', () => {
		// 60 kg and 2.5 kg more each time: 3 days a week.
		const block = 'weeks 2\nsession squat on monday, wednesday, friday\nmain back-squat 3 x 5 at 60 kg\neach session add 2.5 kg'
		expect(days(block).map(day => day.split(' ')[2])).toEqual(['60', '62.5', '65', '67.5', '70', '72.5'])
	})

	it('counts only its own turns', () => {
		const block = [
			'weeks 2',
			'turn a, b over monday, wednesday, friday',
			'session a',
			'main back-squat 3 x 5 at 60 kg',
			'each session add 2.5 kg',
			'session b',
			'main deadlift 1 x 5 at 80 kg',
			'each session add 5 kg',
		].join('\n')
		// a has 3 days in the two weeks, b has 3.
		expect(days(block)).toEqual([
			...['2026-10-05 a 60', '2026-10-07 b 80', '2026-10-09 a 62.5'],
			...['2026-10-12 b 85', '2026-10-14 a 65', '2026-10-16 b 90'],
		])
	})

	it('rests in a deload week, which is filled from the last day before it, and goes on after it', () => {
		// Week 1: 100, 105. Week 2: 90% of 105 = 94.5 on both days. Week 3: 110, 115.
		const block = [
			'weeks 3',
			'deload week 2 with 60% of sets at 90% of load',
			'session squat on monday, thursday',
			'main back-squat 3 x 5 at 100 kg',
			'each session add 5 kg',
		].join('\n')
		expect(days(block).map(day => day.split(' ')[2])).toEqual(['100', '105', '94.5', '94.5', '110', '115'])
	})

	it('leaves a line of its own for a week as it is written, and does not count that week', () => {
		// 60, 62.5; the line of week 2, 80 twice; then 65, 67.5.
		const block = [
			'weeks 3',
			'session squat on monday, thursday',
			'main back-squat 3 x 5 at 60 kg',
			'week 2: 1 x 3 at 80 kg',
			'each session add 2.5 kg',
		].join('\n')
		expect(days(block).map(day => day.split(' ')[2])).toEqual(['60', '62.5', '80', '80', '65', '67.5'])
	})

	it('stands beside each week: 2 days a week, 1 kg a session and 10 kg a week', () => {
		// Week 1: 60, 61. Week 2: 60 + 2 + 10, 60 + 3 + 10.
		const block = [
			'weeks 2',
			'session squat on monday, thursday',
			'main back-squat 3 x 5 at 60 kg',
			'each session add 1 kg',
			'each week add 10 kg',
		].join('\n')
		expect(days(block).map(day => day.split(' ')[2])).toEqual(['60', '61', '72', '73'])
	})
})
