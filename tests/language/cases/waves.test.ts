import { describe, expect, test } from 'vitest'
import { schedulePlan } from '../../../language/compute/schedule.ts'
import { planVolume } from '../../../language/compute/volume.ts'
import { explainSet } from '../../../language/reports/explanation.ts'
import { planIn, workspaceOf } from '../../support/workspace.ts'

const texts = `
lifter nora-vik "Nora Vik"
  best deadlift 160 kg on 2026-09-01
  best deadlift 180 kg on 2026-10-20

block wave "Wave"
  weeks 4
  deload week 4 with 50% of sets at 90% of load
  session heavy-pull on monday
    main deadlift
      week 1: 3 x 5 at 70%
      week 2: 3 x 3 at 75%
      week 3: 1 x 1 at 80%, 2 x 3 at 90% of top set
    accessory plank 3 x 30 s
      each week add 5 s
block waves-in-one "Waves in one block"
  weeks 6
  session heavy-pull on monday
    main deadlift
      week 1, 4: 3 x 5 at 70%
      week 2, 5: 3 x 3 at 75%
      week 3, 6: 3 x 1 at 80%`

function planOf(...lines: string[]) {
	const folder = workspaceOf(texts, 'plan autumn for nora-vik', '  start 2026-10-05', ...lines)
	return { folder, plan: planIn(folder, 'autumn') }
}

function sessionsOf(...lines: string[]) {
	const { folder, plan } = planOf(...lines)
	return schedulePlan(plan, folder).sessions
}

/** "10-05 5: 112": day, week of the run, and the exact load of the first set of the deadlift. */
function loads(...lines: string[]): string[] {
	return sessionsOf(...lines).map(({ date, runWeek, items }) => {
		const sets = items.find(item => item.movementName.text === 'deadlift')?.sets ?? []
		return `${date.slice(5)} ${runWeek}: ${sets.map(set => set.computed.exact?.valueOf()).join(' ')}`
	})
}

describe('a block that is run more than once', () => {
	test('adds what each time adds to every load, and counts its weeks through', () => {
		expect(loads('  run wave 2 times, each time add 2.5 kg')).toEqual([
			// 70% and 75% of 160; 80% is 128, and 90% of the 127.5 on the bar is 114.75 (a share of the top set follows it).
			...['10-05 1: 112 112 112', '10-12 2: 120 120 120', '10-19 3: 128 114.75 114.75'],
			// Half of 3 sets is 1, of week 3: 90% of 128, and of the back-off sets 1 at 90% of the 115 on the bar.
			'10-26 4: 115.2 103.5',
			// Bests are those of the run's first day for all times, so the best of 10-20 counts for none: 2.5 kg more than the time before.
			...['11-02 5: 114.5 114.5 114.5', '11-09 6: 122.5 122.5 122.5', '11-16 7: 130.5 117 117'],
			// 90% of 130.5.
			'11-23 8: 117.45 105.75',
		])
	})

	test('begins each time anew: what each week adds counts from week 1', () => {
		const holds = sessionsOf('  run wave 2 times').map(({ items }) => {
			const { work } = items.find(item => item.movementName.text === 'plank')!.sets[0]!
			return work.kind === 'hold' ? work.seconds.from.valueOf() : undefined
		})
		expect(holds).toEqual([30, 35, 40, 40, 30, 35, 40, 40])
	})

	test('takes percents, less, and a first day too; what follows comes after all times', () => {
		expect(
			loads('  run wave 3 times from 2026-11-02, each time take 5%', '  run waves-in-one').filter((_, index) => index % 4 === 0),
		).toEqual([
			// From 11-02 on the best is 180: 70%, 65% and 60% of it. Then the next block, of 70% in weeks 1 and 4.
			...['11-02 1: 126 126 126', '11-30 5: 117 117 117', '12-28 9: 108 108 108'],
			...['01-25 1: 126 126 126', '02-22 5: 135 135 135'],
		])
	})

	test('changes hold each time; a swap in a week holds in that week of all that are counted through', () => {
		const planks = sessionsOf('  run wave 2 times', '    swap plank for side-plank 2 x 20 s in week 6', '    drop dead-bug').map(
			({ items }) => items.at(-1)!.movementName.text,
		)
		expect(planks).toEqual(['plank', 'plank', 'plank', 'plank', 'plank', 'side-plank', 'plank', 'plank'])
		const swapped = sessionsOf('  run wave 2 times', '    swap plank for side-plank').map(
			({ items }) => items.at(-1)!.movementName.text,
		)
		expect(new Set(swapped)).toEqual(new Set(['side-plank']))
	})

	test('says why, the second time', () => {
		const { folder, plan } = planOf('  run wave 2 times, each time add 2.5 kg')
		const [first, second] = [0, 4].map(index => {
			const item = schedulePlan(plan, folder).sessions[index]!.items[0]!
			return explainSet(item.sets[0]!, item, folder).join('\n')
		})
		expect(first).not.toContain('each time')
		expect(second).toContain('The block is run for time 2; each time add 2.5 kg: once by now.')
		expect(second).toContain('+ 2.5 kg = 114.5 kg')
	})

	test('has the totals of all times', () => {
		const { folder, plan } = planOf('  run wave 2 times, each time add 2.5 kg')
		const volume = planVolume(plan, folder)
		expect(volume.weeks.map(week => week.runWeek)).toEqual([1, 2, 3, 4, 5, 6, 7, 8])
		expect(volume.weeks.map(week => week.deload)).toEqual([false, false, false, true, false, false, false, true])
		// Lifts: 15 + 9 + 7 + (1 + 3) = 35 each time.
		expect(volume.totals.lifts.get('deadlift')!.reps.from).toBe(70)
	})
})

describe('waves in one block', () => {
	test('stand in one line for the weeks that are the same', () => {
		expect(loads('  run waves-in-one')).toEqual([
			...['10-05 1: 112 112 112', '10-12 2: 120 120 120', '10-19 3: 128 128 128'],
			...['10-26 4: 112 112 112', '11-02 5: 120 120 120', '11-09 6: 128 128 128'],
		])
	})
})
