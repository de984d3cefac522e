import { describe, expect, it } from 'vitest'
import { sessionSeconds } from '../../../language/compute/duration.ts'
import { outlineBlock } from '../../../language/compute/outline.ts'
import { blockIn, workspaceOf } from '../../support/workspace.ts'

/** Low and high end of a session's length in seconds. */
function secondsOf(items: string): [number, number] {
	const folder = workspaceOf(`block test-block\nweeks 1\nsession one on monday\n${items}`)
	const { from, to } = sessionSeconds(outlineBlock(blockIn(folder, 'test-block'), folder).weeks[0]!.sessions[0]!.items)
	return [from.valueOf(), to.valueOf()]
}

describe('the length of a session', () => {
	it('is work and rest of each set, without the rest after the last', () => {
		// 3 × (5 × 3 + 180) − 180 = 405
		expect(secondsOf('main deadlift 3 x 5 at 70%')).toEqual([405, 405])
		// 4 × (5 × 3 + 180) + 6 × (12 × 6 + 90) + 3 × (30 + 60) − 60 = 780 + 972 + 210 = 1962
		expect(
			secondsOf(
				'main deadlift 4 x 5 at 70%\naccessory strict-bent-row 6 x 12 at 40 kg tempo 2-1-2-1\naccessory plank 3 x 30 s rest 60 s',
			),
		).toEqual([1962, 1962])
	})

	it('counts as fast as possible as one second', () => {
		// 2 × 5 × (3 + 1 + 1 + 0) + 90 = 140
		expect(secondsOf('accessory romanian-deadlift 2 x 5 tempo 3-1-x-0')).toEqual([140, 140])
	})

	it('counts both sides of a set on each side', () => {
		// 2 × (2 × 30) + 90 = 210
		expect(secondsOf('accessory suitcase-hold 2 x 30 s each side')).toEqual([210, 210])
	})

	it('is a range where reps, holds or sets are one', () => {
		// Low: 2 × 6 × 3 + 180 = 216. High: 3 × 8 × 3 + 2 × 180 = 432.
		expect(secondsOf('main deadlift 2-3 x 6-8 at 70%')).toEqual([216, 432])
	})

	it('walks a metre a second in a carry, and takes written minutes as they are', () => {
		// 2 × 20 + 90 + 90 + 20 × 60 = 1420
		expect(secondsOf('accessory suitcase-carry 2 x 20 m\nconditioning sled-push 1 x 20 min')).toEqual([1420, 1420])
	})

	it('goes back to back in rounds, each with the rest of its last item', () => {
		// Rounds 1 and 2: 15 + 30 + 60; round 3, the row alone: 15, and no rest after it. 105 + 105 + 15 = 225
		const together =
			'accessory strict-bent-row 3 x 5 at 40 kg rest 2 min\naccessory plank 2 x 30 s rest 60 s\nwith the item above'
		expect(secondsOf(together)).toEqual([225, 225])
		// One after the other: 3 × (15 + 120) + 2 × (30 + 60) − 60 = 525
		expect(secondsOf(together.replace('\nwith the item above', ''))).toEqual([525, 525])
	})

	it('counts computed warm-ups', () => {
		// (5 + 3 + 2) × 3 + 3 × 90 + 5 × 3 = 315
		expect(secondsOf('warm-up deadlift\nmain deadlift 1 x 5 at 70%')).toEqual([315, 315])
	})

	it('is nothing without sets', () => {
		expect(secondsOf('')).toEqual([0, 0])
		expect(secondsOf('main deadlift')).toEqual([0, 0])
	})
})
