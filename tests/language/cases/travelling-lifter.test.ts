import { describe, expect, test } from 'vitest'
import { schedulePlan } from '../../../language/compute/schedule.ts'
import { planVolume } from '../../../language/compute/volume.ts'
import { fileProblems } from '../../../language/workspace/file-problems.ts'
import { planIn, workspaceOf } from '../../support/workspace.ts'

const texts = `
movement hotel-press "Hotel press"
  pattern press
  trains drive
  equipment dumbbell
  load hands 2
  percent of bench-press at 30%

lifter nora-vik "Nora Vik"
  best deadlift 160 kg on 2026-09-01
  best bench-press 80 kg on 2026-09-01

block base "Base"
  weeks 5
  deload week 5 with 50% of sets at 90% of load
  session press-day on monday
    main bench-press 4 x 5 at 70%
      each week add 1%
    accessory strict-bent-row 4 x 8 at 60 kg
      each week add 2.5 kg`

function planOf(...lines: string[]) {
	const folder = workspaceOf(texts, 'plan autumn for nora-vik', '  start 2026-10-05', '  run base', ...lines)
	return { folder, plan: planIn(folder, 'autumn') }
}

/** By week: "bench-press 4 x 56", the movement, its sets and the exact load of the first. */
function weeks(...lines: string[]): string[][] {
	const { folder, plan } = planOf(...lines)
	return schedulePlan(plan, folder).sessions.map(session =>
		session.items.map(({ movementName, sets }) => {
			const { computed } = sets[0]!
			return `${movementName.text} ${sets.length} x ${computed.exact?.valueOf() ?? computed.missing}`
		}),
	)
}

describe('a swap for a week away', () => {
	const away = weeks('    swap strict-bent-row for chest-supported-row 3 x 10 at 20 kg in week 2-3 because "hotel"')

	test('holds in its weeks alone, with what it prescribes', () => {
		expect(away.map(week => week[1])).toEqual([
			'strict-bent-row 4 x 60',
			'chest-supported-row 3 x 20',
			'chest-supported-row 3 x 20',
			// Weeks 2 and 3 do not count for `each week`: one step after week 1.
			'strict-bent-row 4 x 62.5',
			// Half of 4 sets, 90% of 62.5.
			'strict-bent-row 2 x 56.25',
		])
	})

	test('leaves everything else as it is', () => {
		// 70% of 80 = 56, a point more each week; week 5 has half of the sets of week 4 at 90% of 73%: 65.7% of 80 = 52.56.
		expect(away.map(week => week[0])).toEqual([
			...['bench-press 4 x 56', 'bench-press 4 x 56.8', 'bench-press 4 x 57.6', 'bench-press 4 x 58.4', 'bench-press 2 x 52.56'],
		])
	})

	test('in the last training week takes nothing from the lighter week after it', () => {
		expect(weeks('    swap strict-bent-row for chest-supported-row 3 x 10 at 20 kg in week 4').map(week => week[1])).toEqual([
			...['strict-bent-row 4 x 60', 'strict-bent-row 4 x 62.5', 'strict-bent-row 4 x 65', 'chest-supported-row 3 x 20'],
			// From week 3: half of 4 sets, 90% of 65.
			'strict-bent-row 2 x 58.5',
		])
	})

	test('without a prescription: percents follow the new movement’s own, with the points of that week', () => {
		// 30% of 80 = 24 for each hand; week 3 is at 72%: 17.28.
		expect(weeks('    swap bench-press for hotel-press in week 3').map(week => week[0])).toEqual([
			...['bench-press 4 x 56', 'bench-press 4 x 56.8', 'hotel-press 4 x 17.28', 'bench-press 4 x 57.6', 'bench-press 2 x 51.84'],
		])
	})

	test('without a prescription: a fixed load falls away, with a reason', () => {
		expect(weeks('    swap strict-bent-row for chest-supported-row in week 2')[1]![1]).toBe('chest-supported-row 4 x own-load')
	})

	test('for the whole run, with a prescription', () => {
		expect(weeks('    swap strict-bent-row for chest-supported-row 3 x 10 at 20 kg').map(week => week[1])).toEqual([
			...Array<string>(4).fill('chest-supported-row 3 x 20'),
			// Half of 3 sets is 1; 90% of 20.
			'chest-supported-row 1 x 18',
		])
	})

	test('has its totals', () => {
		const { folder, plan } = planOf('    swap strict-bent-row for chest-supported-row 3 x 10 at 20 kg in week 2-3')
		const { lifts } = planVolume(plan, folder).totals
		// 2 weeks x 3 sets x 10; 4 + 4 + 2 sets of 8.
		expect(lifts.get('chest-supported-row')!.reps.from).toBe(60)
		expect(lifts.get('strict-bent-row')!.reps.from).toBe(80)
	})

	test('of what the block does not have in that week is reported', () => {
		const codesOf = (...lines: string[]) => {
			const { folder } = planOf(...lines)
			return fileProblems(folder, folder.fileUris()[0]!)
				.filter(problem => problem.level === 'error')
				.map(problem => problem.code)
		}
		expect(codesOf('    swap back-squat for leg-press 3 x 10 in week 2')).toEqual(['unknown-name'])
		expect(codesOf('    swap strict-bent-row for plank 3 x 30 s in week 7')).toEqual(['week-out-of-range'])
		expect(
			codesOf('    swap strict-bent-row for plank 3 x 30 s in week 2', '    swap strict-bent-row for dead-bug 3 x 8 in week 2'),
		).toEqual(['unknown-name'])
		expect(
			codesOf('    swap strict-bent-row for plank 3 x 30 s in week 2', '    swap strict-bent-row for dead-bug 3 x 8 in week 3'),
		).toEqual([])
	})
})
