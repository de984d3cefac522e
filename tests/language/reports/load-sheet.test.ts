import { describe, expect, it } from 'vitest'
import { schedulePlan } from '../../../language/compute/schedule.ts'
import { type LoadSheet, loadSheet } from '../../../language/reports/load-sheet.ts'
import { rebuild } from '../../support/rebuild.ts'
import { planIn, workspaceOf } from '../../support/workspace.ts'

function sheetOf(text: string, name = 'mara-autumn', options = {}): LoadSheet {
	const folder = workspaceOf(text)
	return loadSheet(schedulePlan(planIn(folder, name), folder), folder, options)
}

/** A sheet of one session with these items, for a lifter with these lines. */
function setsOf(items: string, lifter = 'best pull 160 kg') {
	const text = `movement pull\nequipment barbell\nlifter someone\n${lifter}\nblock one\nweeks 1\nsession day on monday\n${items}\nplan test-plan for someone\nstart 2026-10-05\nrun one`
	return sheetOf(text, 'test-plan').sessions[0]!.items.flatMap(item => item.sets)
}

describe('a load sheet', () => {
	it('says what its lifter does on the first day, and with what on the bar', () => {
		const sheet = sheetOf(rebuild)
		expect(sheet).toMatchObject({ version: 1, plan: 'mara-autumn', lifter: 'mara-lind', unit: 'kg' })
		const [session] = sheet.sessions
		// 4 × (15 + 180) + 6 × (72 + 90) + 3 × (30 + 60) − 60 = 1962 s = 32.7 min
		expect(session).toMatchObject({
			date: '2026-10-05',
			weekday: 'monday',
			block: 'hinge-rebuild',
			week: 1,
			planWeek: 1,
			session: 'heavy-pull',
			title: 'Heavy pull',
			gym: 'north-hall',
			deload: false,
			minutes: 33,
			notes: ['Straps stay in the bag.'],
		})
		const [deadlift] = session!.items
		expect(deadlift).toMatchObject({
			movement: 'deadlift',
			title: 'Deadlift',
			role: 'main',
			notes: ['Every rep from a dead stop.'],
		})
		expect(deadlift!.sets).toHaveLength(4)
		// 70 % of 160 = 112; bar 20 + collars 2.5 + 2 × (25 + 20) = 112.5.
		expect(deadlift!.sets[0]).toEqual({
			optional: false,
			reps: { from: 5, to: 5 },
			openEnded: false,
			seconds: null,
			forReps: false,
			metres: null,
			forTime: false,
			clusterReps: null,
			clusterRestSeconds: null,
			eachSide: false,
			percent: { from: '70', to: '70' },
			of: 'best',
			rpe: null,
			rir: null,
			effortAtMost: false,
			untilRpe: null,
			untilRir: null,
			exact: '112',
			load: '112.5',
			loadTo: null,
			unit: 'kg',
			perSide: ['25', '20'],
			reason: null,
			tempo: null,
			restSeconds: 180,
		})
	})

	it('gives one entry a set, in the order done', () => {
		const week4 = sheetOf(rebuild, 'mara-autumn', { week: 4 })
		const [deadlift] = week4.sessions[0]!.items
		expect(deadlift!.sets.map(set => [set.of, set.exact, set.load])).toEqual([
			['best', '128', '127.5'],
			['top-set', '117.3', '117.5'],
			['top-set', '117.3', '117.5'],
			['top-set', '117.3', '117.5'],
		])
	})

	it('keeps one week of the plan where one is asked for', () => {
		expect(sheetOf(rebuild, 'mara-autumn', { week: 2 }).sessions.map(session => session.date)).toEqual([
			'2026-10-12',
			'2026-10-14',
		])
	})

	it('gives each kind of work its own column', () => {
		const sets = setsOf(
			[
				'accessory pull 1 x 6-8 at 75-80% rpe at most 8 tempo 3-1-x-0',
				'accessory pull 1 x 5 or more at 60 kg rir 1-2',
				'accessory plank 1 x 30-45 s each side',
				'accessory suitcase-carry 1 x 20 m',
				'conditioning sled-push 1 x 20 min',
				'accessory pull 1-2 x 12 to failure',
			].join('\n'),
		)
		expect(sets[0]).toMatchObject({
			reps: { from: 6, to: 8 },
			percent: { from: '75', to: '80' },
			rpe: { from: '8', to: '8' },
			effortAtMost: true,
			exact: '120',
			load: '120',
			// 128 lies between 127.5 and 130.
			loadTo: '127.5',
			tempo: '3-1-x-0',
		})
		expect(sets[1]).toMatchObject({
			openEnded: true,
			percent: null,
			of: null,
			rpe: null,
			rir: { from: '1', to: '2' },
			load: '60',
		})
		expect(sets[2]).toMatchObject({ reps: null, seconds: { from: 30, to: 45 }, eachSide: true, load: null, reason: null })
		expect(sets[3]).toMatchObject({ metres: { from: 20, to: 20 }, seconds: null })
		expect(sets[4]).toMatchObject({ seconds: { from: 1200, to: 1200 } })
		expect(sets.slice(5).map(set => [set.optional, set.openEnded])).toEqual([
			[false, true],
			[true, true],
		])
	})

	it('says why a load is not there', () => {
		expect(setsOf('main pull 1 x 5 at 70%', '')[0]).toMatchObject({
			percent: { from: '70', to: '70' },
			exact: null,
			load: null,
			perSide: null,
			reason: 'someone has no best of pull yet.',
		})
	})

	it('takes an effort alone for all that is asked: no best, and still nothing is missing', () => {
		for (const effort of ['rpe 8', 'rir 2', '@8'])
			expect(setsOf(`main pull 3 x 5 ${effort}`, '')[0]).toMatchObject({ load: null, reason: null })
		// Warm-ups that the tool makes up to it wait for the same best, and go without numbers.
		const [warmUp, working] = setsOf('warm-up pull\nmain pull 3 x 5 rpe 8', '').filter((_, index) => index === 0 || index === 3)
		expect([warmUp, working]).toMatchObject([
			{ load: null, reason: null },
			{ load: null, reason: null, rpe: { from: '8', to: '8' } },
		])
		// A percent or a rep max beside it asks for a load.
		for (const load of ['at 70% rpe 8', 'at 8 rm'])
			expect(setsOf(`main pull 3 x 5 ${load}`, '')[0]).toMatchObject({ reason: 'someone has no best of pull yet.' })
	})

	it('leaves out what has nothing to do that day', () => {
		const text = rebuild.replace(
			'accessory plank 3 x 30 s rest 60 s',
			'accessory plank 3 x 30 s rest 60 s\nweek 1: skip\nwarm-up glute-bridge',
		)
		expect(sheetOf(text).sessions[0]!.items.map(item => [item.movement, item.sets.length])).toEqual([
			['deadlift', 4],
			['strict-bent-row', 6],
			['glute-bridge', 0],
		])
	})

	it('names what a plan has swapped', () => {
		const sheet = sheetOf(`${rebuild}\nswap plank for side-plank`)
		expect(sheet.sessions[0]!.items.map(item => item.insteadOf)).toEqual([null, null, 'Plank'])
	})

	it('is the same after a way through JSON', () => {
		const sheet = sheetOf(rebuild)
		expect(JSON.parse(JSON.stringify(sheet))).toEqual(sheet)
	})

	it('says what comes once something is reached, and at which time of the day', () => {
		const text = [
			'lifter someone',
			'block one',
			'weeks 1',
			'session day on monday evening',
			'accessory plank 3 x 30 s',
			'once 3 x 45 s reached move to weighted-plank 3 x 30 s at 10 kg',
			'accessory dead-bug 3 x 8',
			'once 3 x 12 reached add 1 set',
			'plan test-plan for someone',
			'start 2026-10-05',
			'run one',
		].join('\n')
		const [session] = sheetOf(text, 'test-plan').sessions
		expect(session!.part).toBe('evening')
		expect(session!.items.map(item => item.milestones)).toEqual([
			['once 3 x 45 s are reached: move to Weighted plank, 3 x 30 s at 10 kg'],
			['once 3 x 12 reps are reached: add 1 set'],
		])
	})

	it('has the percent that a set is at, where kilograms are added or the plan scales it', () => {
		const text = [
			'lifter someone',
			'best deadlift 200 kg on 2026-09-01',
			'best bench-press 100 kg on 2026-09-01',
			'block one',
			'weeks 2',
			'session day on monday',
			'main deadlift 3 x 5 at 70% each week add 5 kg',
			'main bench-press 3 x 5 at 70-75%',
			'plan test-plan for someone',
			'start 2026-10-05',
			'run one',
			'scale bench-press 95%',
		].join('\n')
		const percents = sheetOf(text, 'test-plan').sessions.map(({ items }) => items.map(item => item.sets[0]!.percent))
		// 140 kg and 145 kg of 200 are 70% and 72.5%; 95% of 70% is 66.5%, of 75% 71.25%.
		const press = { from: '66.5', to: '71.3' }
		expect(percents).toEqual([
			[{ from: '70', to: '70' }, press],
			[{ from: '72.5', to: '72.5' }, press],
		])
	})

	it('leads up to a test, whose load is open', () => {
		// 50, 70, 80 and 90% of 160 kg: 80, 112, 128, 144. Without a gym steps of 2.5 kg: 80, 112.5, 127.5, 145.
		const sets = setsOf('test pull 1 x 1')
		expect(sets.map(({ exact, load, reason }) => [exact, load, reason])).toEqual([
			['80', '80', null],
			['112', '112.5', null],
			['128', '127.5', null],
			['144', '145', null],
			[null, null, null],
		])
		// 160 kg for 1 are 160 / (1 + 5/30) = 137.142857 kg for 5: half of it is 68.571429 kg.
		expect(setsOf('test pull 1 x 5')[0]).toMatchObject({ exact: '68.571429', load: '67.5' })
	})
})
