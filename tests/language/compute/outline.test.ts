import { describe, expect, it } from 'vitest'
import { lastTrainingWeek, outlineBlock } from '../../../language/compute/outline.ts'
import type { BlockOutline, PlannedItem } from '../../../language/model/schedule.ts'
import { setText } from '../../../language/reports/set-text.ts'
import { blockIn, workspaceOf } from '../../support/workspace.ts'

/** The outline of a block whose session holds these items. */
function outlineOf(items: string, lines = 'weeks 4'): BlockOutline {
	const folder = workspaceOf(`block test-block\n${lines}\nsession one on monday\n${items}`)
	return outlineBlock(blockIn(folder, 'test-block'), folder)
}

function itemIn(outline: BlockOutline, week: number, index = 0): PlannedItem {
	return outline.weeks[week - 1]!.sessions[0]!.items[index]!
}

/** "2 x 5 reps at 70%", "? 8 reps": the sets of an item in a week, equal neighbours counted, optional ones with a mark, rests left out. */
function sets(outline: BlockOutline, week: number, index = 0): string[] {
	const counted: { text: string; count: number }[] = []
	for (const set of itemIn(outline, week, index).sets) {
		const text = `${set.optional ? '? ' : ''}${setText(set).replace(/ rest .*/, '')}`
		const last = counted.at(-1)
		if (last?.text === text) last.count++
		else counted.push({ text, count: 1 })
	}
	return counted.map(({ text, count }) => `${count} x ${text}`)
}

function byWeek(outline: BlockOutline, index = 0): string[] {
	return outline.weeks.map(week => sets(outline, week.week, index).join(', '))
}

describe('what an item asks for in a week', () => {
	it('is the line of the week, in place of the one for every week', () => {
		const outline = outlineOf('main deadlift 3 x 5 at 70%\nweek 2-3: 4 x 4 at 75%\nweek 4: 1 x 3 at 80%, 3 x 3 at 92% of top set')
		expect(byWeek(outline)).toEqual([
			'3 x 5 reps at 70%',
			'4 x 4 reps at 75%',
			'4 x 4 reps at 75%',
			'1 x 3 reps at 80%, 3 x 3 reps at 92% of top set',
		])
		expect(outline.weeks.map((_, index) => itemIn(outline, index + 1).from)).toEqual([
			'every-week',
			'week-line',
			'week-line',
			'week-line',
		])
	})

	it('is nothing in a week to skip, and nothing where no line says anything', () => {
		const outline = outlineOf('main deadlift\nweek 1: 3 x 5 at 70%\nweek 2: skip')
		expect(byWeek(outline)).toEqual(['3 x 5 reps at 70%', '', '', ''])
		expect([1, 2, 3].map(week => itemIn(outline, week).from)).toEqual(['week-line', 'skip', 'none'])
		expect([1, 2].map(week => itemIn(outline, week).working)).toEqual([true, false])
		expect(outline.weeks.map(week => week.hasWork)).toEqual([true, false, false, false])
	})

	it('has optional sets where the number of sets is a range', () => {
		expect(sets(outlineOf('accessory plank 2-4 x 30-45 s'), 1)).toEqual(['2 x 30-45 s', '2 x ? 30-45 s'])
	})

	it('rests 3 min after main work and 90 s after accessories unless the text says otherwise', () => {
		const outline = outlineOf('main deadlift 3 x 5 at 70%\naccessory plank 3 x 30 s\naccessory side-plank 3 x 30 s rest 45 s')
		expect([0, 1, 2].map(index => itemIn(outline, 1, index).sets[0]!.restSeconds.valueOf())).toEqual([180, 90, 45])
	})

	it('refers its percents to the base where the block says so', () => {
		const outline = outlineOf('main deadlift 1 x 5 at 70%, 1 x 5 at 70% of best', 'weeks 1\npercents of base')
		expect(sets(outline, 1)).toEqual(['1 x 5 reps at 70% of base', '1 x 5 reps at 70%'])
	})

	it('covers the weeks that the lines reach where the block does not say how many there are', () => {
		expect(outlineOf('main deadlift 3 x 5 at 70%\nweek 6: 2 x 5 at 60%', '').weeks).toHaveLength(6)
	})
})

describe('a ramp', () => {
	it('is evenly spaced with both ends', () => {
		// 60, 66, 72, 78: 18 points in three steps of 6.
		expect(sets(outlineOf('main deadlift ramp 4 x 4 from 60% to 78%'), 1)).toEqual([
			'1 x 4 reps at 60%',
			'1 x 4 reps at 66%',
			'1 x 4 reps at 72%',
			'1 x 4 reps at 78%',
		])
	})

	it('reaches its top with the sets that are sure, and stays there', () => {
		expect(sets(outlineOf('main deadlift ramp 2-3 x 4 from 60% to 70%'), 1)).toEqual([
			'1 x 4 reps at 60%',
			'1 x 4 reps at 70%',
			'1 x ? 4 reps at 70%',
		])
	})

	it('of one set is its top', () => {
		expect(sets(outlineOf('main deadlift ramp 1 x 4 from 60% to 70%'), 1)).toEqual(['1 x 4 reps at 70%'])
	})
})

describe('each week add', () => {
	it('adds kilograms to the exact load, whatever it is counted from', () => {
		const outline = outlineOf('accessory romanian-deadlift 3 x 8 at 50%\neach week add 2.5 kg')
		expect(byWeek(outline)).toEqual([
			'3 x 8 reps at 50%',
			'3 x 8 reps at 50% + 2.5 kg',
			'3 x 8 reps at 50% + 5 kg',
			'3 x 8 reps at 50% + 7.5 kg',
		])
	})

	it('adds points of the reference, never a hundredth of the load', () => {
		expect(byWeek(outlineOf('main deadlift 3 x 5 at 70-72%\neach week add 1%'))).toEqual([
			'3 x 5 reps at 70-72%',
			'3 x 5 reps at 71-73%',
			'3 x 5 reps at 72-74%',
			'3 x 5 reps at 73-75%',
		])
	})

	it('adds seconds, metres, reps and sets to what has them', () => {
		const outline = outlineOf(
			'accessory plank 3 x 30 s\neach week add 5 s\naccessory suitcase-carry 2 x 20 m\neach week add 10 m\nmain deadlift 3 x 6-8 at 60%\neach week add 1 reps\neach week add 1 sets',
			'weeks 2',
		)
		expect([0, 1, 2].map(index => sets(outline, 2, index))).toEqual([['3 x 35 s'], ['2 x 30 m'], ['4 x 7-9 reps at 60%']])
	})

	it('adds a set when a whole one has come together', () => {
		expect(byWeek(outlineOf('accessory plank 3 x 30 s\neach week add 0.5 sets'))).toEqual([
			'3 x 30 s',
			'3 x 30 s',
			'4 x 30 s',
			'4 x 30 s',
		])
	})

	it('takes as it adds, down to one set, one rep and nothing on the bar', () => {
		const outline = outlineOf('main deadlift 3 x 3 at 2%\neach week take 1 reps\neach week take 1 sets\neach week take 1%')
		expect(byWeek(outline)).toEqual(['3 x 3 reps at 2%', '2 x 2 reps at 1%', '1 x 1 rep at 0%', '1 x 1 rep at 0%'])
	})

	it('leaves a share of the top set alone: it follows the top set', () => {
		const outline = outlineOf(
			'main deadlift 1 x 3 at 80%, 3 x 3 at 92% of top set\neach week add 2.5 kg\neach week add 1%',
			'weeks 2',
		)
		expect(sets(outline, 2)).toEqual(['1 x 3 reps at 81% + 2.5 kg', '3 x 3 reps at 92% of top set'])
	})

	it('begins with the first week that has work', () => {
		const outline = outlineOf('accessory plank 3 x 30 s\nweek 1-2: skip\neach week add 5 s')
		expect(byWeek(outline)).toEqual(['', '', '3 x 30 s', '3 x 35 s'])
	})

	it('passes over a week with a line of its own: it neither goes on in it nor begins anew after it', () => {
		const outline = outlineOf('accessory plank 3 x 30 s\nweek 3: 2 x 60 s\neach week add 5 s')
		expect(byWeek(outline)).toEqual(['3 x 30 s', '3 x 35 s', '2 x 60 s', '3 x 40 s'])
	})

	it('acts in a line for several weeks where there is none for every week', () => {
		const outline = outlineOf('accessory plank\nweek 1-3: 3 x 30 s\nweek 4: 2 x 60 s\neach week add 5 s')
		expect(byWeek(outline)).toEqual(['3 x 30 s', '3 x 35 s', '3 x 40 s', '2 x 60 s'])
	})

	it('rests in deload weeks and goes on after them', () => {
		const outline = outlineOf('accessory plank 3 x 30 s\neach week add 5 s', 'weeks 5\ndeload week 3')
		expect(byWeek(outline)).toEqual(['3 x 30 s', '3 x 35 s', '3 x 35 s', '3 x 40 s', '3 x 45 s'])
	})
})

describe('a deload week', () => {
	const deload = 'weeks 5\ndeload week 5 with 60% of sets at 90% of load'

	it('is filled from the last training week: sets rounded down but never to none, percent times the share', () => {
		// 60 % of 4 sets are 2.4, of 1 set 0.6; 90 % of 76 % are 68.4 %.
		const outline = outlineOf('main deadlift\nweek 1-3: 4 x 5 at 70%\nweek 4: 1 x 3 at 80%, 4 x 4 at 76%', deload)
		expect(sets(outline, 5)).toEqual(['1 x 3 reps at 72%', '2 x 4 reps at 68.4%'])
		expect(itemIn(outline, 5)).toMatchObject({ from: 'deload-fill', filledFrom: 4 })
		expect(outline.weeks.map(week => week.deload)).toEqual([false, false, false, false, true])
	})

	it('takes its share of kilograms and of what was added to bodyweight, and keeps reps, holds, efforts and help', () => {
		const outline = outlineOf(
			[
				'accessory strict-bent-row 6 x 12 at 40 kg rpe 8',
				'accessory pull-up 5 x 5 at bodyweight + 10 kg',
				'accessory dip 5 x 5 at bodyweight - 10 kg',
				'accessory plank 3 x 30 s',
			].join('\n'),
			deload,
		)
		expect([0, 1, 2, 3].map(index => sets(outline, 5, index))).toEqual([
			['3 x 12 reps at 36 kg rpe 8'],
			['3 x 5 reps at bodyweight + 9 kg'],
			['3 x 5 reps at bodyweight − 10 kg'],
			['1 x 30 s'],
		])
	})

	it('keeps shares of the top set, and takes its share of what the weeks have added', () => {
		const outline = outlineOf('main deadlift 1 x 3 at 80%, 3 x 3 at 90% of top set\neach week add 10 kg', deload)
		// Four training weeks have added 3 × 10 kg; 90 % of them are 27 kg.
		expect(sets(outline, 5)).toEqual(['1 x 3 reps at 72% + 27 kg', '1 x 3 reps at 90% of top set'])
	})

	it('stays a ramp where the training week ramps', () => {
		expect(sets(outlineOf('main deadlift ramp 4 x 4 from 60% to 80%', deload), 5)).toEqual([
			'1 x 4 reps at 54%',
			'1 x 4 reps at 72%',
		])
	})

	it('leaves an item with a line of its own alone', () => {
		expect(sets(outlineOf('main deadlift 4 x 5 at 70%\nweek 5: 5 x 5 at 50%', deload), 5)).toEqual(['5 x 5 reps at 50%'])
	})

	it('skips what the last training week skipped', () => {
		const outline = outlineOf('main deadlift 4 x 5 at 70%\naccessory plank 3 x 30 s\nweek 4: skip', deload)
		expect(itemIn(outline, 5, 1)).toMatchObject({ from: 'skip', sets: [] })
	})

	it('looks back past another deload week, but three weeks at most', () => {
		const near = outlineOf('main deadlift\nweek 1: 4 x 5 at 70%', 'weeks 4\ndeload week 2, 3, 4 with 50% of sets')
		expect(byWeek(near)).toEqual(['4 x 5 reps at 70%', '2 x 5 reps at 70%', '2 x 5 reps at 70%', '2 x 5 reps at 70%'])
		const far = outlineOf('main deadlift\nweek 1: 4 x 5 at 70%', 'weeks 5\ndeload week 2, 3, 4, 5 with 50% of sets')
		expect(itemIn(far, 5)).toMatchObject({ from: 'none', sets: [] })
	})

	it('that begins the block lightens the prescription for every week', () => {
		const outline = outlineOf('main deadlift 4 x 5 at 70%', 'weeks 2\ndeload week 1 with 50% of sets at 80% of load')
		expect(byWeek(outline)).toEqual(['2 x 5 reps at 56%', '4 x 5 reps at 70%'])
	})
})

describe('a warm-up without a prescription', () => {
	it('leads to the first working load of the first main item, in weeks that have one', () => {
		const outline = outlineOf('warm-up deadlift\nmain deadlift 4 x 5 at 70%\nweek 2: skip', 'weeks 2')
		expect(sets(outline, 1)).toEqual([
			'1 x 5 reps at 40% of the first working load',
			'1 x 3 reps at 60% of the first working load',
			'1 x 2 reps at 80% of the first working load',
		])
		expect(sets(outline, 2)).toEqual([])
		expect(itemIn(outline, 1)).toMatchObject({ from: 'computed-warm-up', working: false })
	})

	it('has no numbers for another lift, and keeps those that are written', () => {
		const outline = outlineOf('warm-up cat-camel\nwarm-up glute-bridge 2 x 10\nmain deadlift 4 x 5 at 70%')
		expect(itemIn(outline, 1, 0)).toMatchObject({ from: 'computed-warm-up', sets: [] })
		expect(sets(outline, 1, 1)).toEqual(['2 x 10 reps'])
	})

	it('counts a lift whose percents refer to the same best as the same lift', () => {
		expect(sets(outlineOf('warm-up romanian-deadlift\nmain deadlift 4 x 5 at 70%'), 1)).toHaveLength(3)
	})
})

describe('the last training week', () => {
	const week = (number: number, deload = false, hasWork = true) => ({ week: number, deload, hasWork })

	it('is the nearest earlier one that is no deload and has work', () => {
		const weeks = [week(1), week(2), week(3, true), week(4, false, false), week(5)]
		expect(lastTrainingWeek(weeks, 5)).toEqual(week(2))
		expect(lastTrainingWeek(weeks, 2)).toEqual(week(1))
		expect(lastTrainingWeek(weeks, 1)).toBeUndefined()
	})

	it('is at most three weeks back', () => {
		expect(lastTrainingWeek([week(1)], 4)).toEqual(week(1))
		expect(lastTrainingWeek([week(1)], 5)).toBeUndefined()
	})
})

describe('each week add … rpe', () => {
	it('raises the effort, and what is said in reps in reserve leaves as many fewer; it stays at 10 and at none', () => {
		expect(byWeek(outlineOf('main deadlift 3 x 5 rpe 7-8\neach week add 1 rpe'))).toEqual([
			'3 x 5 reps rpe 7-8',
			'3 x 5 reps rpe 8-9',
			'3 x 5 reps rpe 9-10',
			'3 x 5 reps rpe 10',
		])
		expect(byWeek(outlineOf('main deadlift 3 x 5 rir 2\neach week add 1 rpe'))).toEqual([
			...['3 x 5 reps rir 2', '3 x 5 reps rir 1', '3 x 5 reps rir 0', '3 x 5 reps rir 0'],
		])
	})

	it('moves the effort at which sets end', () => {
		const outline = outlineOf('main deadlift up to 5 x 3 at 80% until rpe 8\neach week add 0.5 rpe')
		expect(itemIn(outline, 3).sets[0]!.until!.value.from.valueOf()).toBe(9)
	})

	it('takes it back too, and leaves the percent beside a ceiling alone', () => {
		expect(sets(outlineOf('main deadlift 3 x 5 at 70% rpe at most 8\neach week take 0.5 rpe'), 2)).toEqual([
			'3 x 5 reps at 70% rpe at most 7.5',
		])
	})
})

describe('a test', () => {
	const items = (text: string) => outlineOf(text).weeks[0]!.sessions[0]!.items.map(({ role, working }) => [role, working])

	it('has sets that lead up to it, and a load that is open', () => {
		const outline = outlineOf('test deadlift 1 x 1 rpe 9')
		expect(sets(outline, 1, 0)).toEqual([...['1 x 5 reps at 50%', '1 x 3 reps at 70%', '1 x 2 reps at 80%', '1 x 1 rep at 90%']])
		expect(sets(outline, 1, 1)).toEqual(['1 x 1 rep rpe 9'])
		expect(items('test deadlift 1 x 1')).toEqual([
			['warm-up', false],
			['test', true],
		])
	})

	it('of several reps is led up to by the load for as many', () => {
		expect(sets(outlineOf('test deadlift 1 x 5'), 1, 0)[0]).toBe('1 x 5 reps at 5 rm x 50%')
	})

	it('fills the warm-up of its movement that leaves its sets open, and stays alone after one that has its own', () => {
		expect(sets(outlineOf('warm-up deadlift\ntest deadlift 1 x 1'), 1, 0)).toHaveLength(4)
		expect(items('warm-up deadlift\ntest deadlift 1 x 1')).toHaveLength(2)
		expect(items('warm-up deadlift 3 x 3 at 60%\ntest deadlift 1 x 1')).toHaveLength(2)
	})

	it('is led up to by nothing where its load is written or no best says one', () => {
		expect(items('test deadlift 1 x 1 at 100%')).toHaveLength(1)
		expect(items('test plank 1 x 60 s')).toHaveLength(1)
		expect(items('accessory plank 3 x 30 s\ntest deadlift 1 x 1\nwith the item above')).toHaveLength(2)
	})
})
