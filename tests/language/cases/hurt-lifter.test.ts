import { describe, expect, test } from 'vitest'
import { schedulePlan } from '../../../language/compute/schedule.ts'
import { planVolume } from '../../../language/compute/volume.ts'
import { fileProblems } from '../../../language/workspace/file-problems.ts'
import { planIn, workspaceOf } from '../../support/workspace.ts'

const blocks = `
lifter nora-vik "Nora Vik"
  best deadlift 160 kg on 2026-09-01
  best deadlift 170 kg on 2026-11-05

block hinge "Hinge"
  weeks 4
  session heavy-pull on wednesday
    main deadlift 3 x 5 at 70%
      each week add 2.5 kg
  session trunk on friday
    accessory plank 3 x 30 s
block peak "Peak"
  weeks 2
  session heavy-pull on wednesday
    main deadlift 2 x 3 at 80%`

function planOf(...lines: string[]) {
	const folder = workspaceOf(blocks, 'plan autumn for nora-vik', '  start 2026-10-05', ...lines)
	return { folder, plan: planIn(folder, 'autumn') }
}

/** "10-07 heavy-pull 1": day, session, week of the run. */
function days(...lines: string[]): string[] {
	const { folder, plan } = planOf(...lines)
	return schedulePlan(plan, folder).sessions.map(
		({ date, session, runWeek }) => `${date.slice(5)} ${session.name.text} ${runWeek}`,
	)
}

function codes(...lines: string[]): string[] {
	const { folder } = planOf(...lines)
	return fileProblems(folder, folder.fileUris()[0]!).map(problem => problem.code)
}

describe('a pause', () => {
	test('of two whole weeks: what stood in them, and all after it, stands two weeks later', () => {
		expect(days('  run hinge', '  run peak', '  pause 2026-10-19 to 2026-11-01 because "flu"')).toEqual([
			...['10-07 heavy-pull 1', '10-09 trunk 1', '10-14 heavy-pull 2', '10-16 trunk 2'],
			// Week 3 was meant for monday 10-19, week 4 for 10-26, the next block for 11-02.
			...['11-04 heavy-pull 3', '11-06 trunk 3', '11-11 heavy-pull 4', '11-13 trunk 4'],
			...['11-18 heavy-pull 1', '11-25 heavy-pull 2'],
		])
	})

	test('that begins in the middle of a week: what is left of that week is done after it', () => {
		// From thursday 10-15 to tuesday 10-20: friday 10-16 is the first session in it, and a week later it is past it.
		expect(days('  run hinge', '    pause 2026-10-15 to 2026-10-20').slice(2, 6)).toEqual([
			...['10-14 heavy-pull 2', '10-23 trunk 2', '10-28 heavy-pull 3', '10-30 trunk 3'],
		])
	})

	test('in which nothing stands moves nothing', () => {
		expect(days('  run hinge', '  pause 2026-10-10 to 2026-10-13')).toEqual(days('  run hinge'))
	})

	test('after another counts from where that one has left the work', () => {
		// 10-21 → 10-28 by the first; it lies in the second, to 11-03, so a week more.
		expect(days('  run hinge', '  pause 2026-10-26 to 2026-11-03', '  pause 2026-10-19 to 2026-10-25').slice(4, 5)).toEqual([
			'11-04 heavy-pull 3',
		])
	})

	test('does not move a run that has a day of its own', () => {
		expect(days('  run hinge', '  run peak from 2026-11-30', '  pause 2026-10-19 to 2026-11-01').slice(-2)).toEqual([
			...['12-02 heavy-pull 1', '12-09 heavy-pull 2'],
		])
	})

	test('keeps loads and totals, and takes the bests of the day on which a block begins now', () => {
		const { folder, plan } = planOf('  run hinge', '  run peak', '  pause 2026-10-19 to 2026-11-01')
		const exact = schedulePlan(plan, folder).sessions.flatMap(session =>
			session.items.flatMap(({ sets }) => sets[0]!.computed.exact?.valueOf() ?? []),
		)
		// 70% of 160 = 112, and 2.5 kg more each week; the peak begins on 11-16, after the best of 11-05: 80% of 170 = 136.
		expect(exact).toEqual([112, 114.5, 117, 119.5, 136, 136])
		// On the bar: 112.5, 115 (a tie between 112.5 and 115 is none: 114.5 is nearer 115), 117.5, 120, with 15 lifts each; 135 with 6, twice.
		const tonnage = planVolume(plan, folder).totals.lifts.get('deadlift')!.tonnage.from.valueOf()
		expect(tonnage).toBe(15 * (112.5 + 115 + 117.5 + 120) + 2 * 6 * 135)
	})

	test('is no gap in the plan', () => {
		expect(codes('  run hinge', '  run peak', '  pause 2026-11-02 to 2026-11-15')).not.toContain('plan-gap')
		expect(codes('  run hinge', '  run peak from 2026-11-16')).toContain('plan-gap')
		expect(codes('  run hinge', '  pause 2026-11-02 to 2026-11-15 because "away"', '  run peak from 2026-11-16')).not.toContain(
			'plan-gap',
		)
	})
})

describe('one session on another day', () => {
	test('is moved once, and no other', () => {
		expect(days('  run hinge', '    move heavy-pull from 2026-10-07 to 2026-10-08 because "physio"').slice(0, 3)).toEqual([
			...['10-08 heavy-pull 1', '10-09 trunk 1', '10-14 heavy-pull 2'],
		])
		expect(days('  move heavy-pull from 2026-10-14 to 2026-10-13', '  run hinge')[2]).toBe('10-13 heavy-pull 2')
	})

	test('is moved from where a pause has left it', () => {
		expect(days('  run hinge', '    pause 2026-10-19 to 2026-11-01', '    move trunk from 2026-11-06 to 2026-11-07')[5]).toBe(
			'11-07 trunk 3',
		)
	})

	test('that does not stand on that day is reported, with the nearest day on which it does', () => {
		const { folder } = planOf('  run hinge', '    move heavy-pull from 2026-10-08 to 2026-10-09')
		const [problem] = fileProblems(folder, folder.fileUris()[0]!).filter(one => one.code === 'unknown-name')
		expect(problem?.message).toContain('2026-10-07')
		expect(problem?.corrections[0]?.title).toBe('Write 2026-10-07')
	})
})
