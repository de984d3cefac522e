import { describe, expect, it } from 'vitest'
import { doneLines } from '../../../client/views/log/done.ts'
import { LogView } from '../../../client/views/log/log-view.tsx'
import { readerOf } from '../../../client/views/reader/reader.ts'
import type { DoneSets, LogSession, PlannedAgainstDone } from '../../../language/reports/planned-against-done.ts'
import { textOf } from './support/html.ts'
import { item, set } from './support/invented.ts'

const reader = readerOf(null)
const done = (change: Partial<DoneSets> = {}): DoneSets => ({
	sets: 1,
	reps: 5,
	seconds: null,
	metres: null,
	tookSeconds: null,
	load: '100',
	unit: 'kg',
	bodyweight: false,
	rpe: null,
	rir: null,
	missed: 0,
	brokeWith: null,
	eachSide: false,
	...change,
})
const session = (change: Partial<LogSession> = {}): LogSession => ({
	date: '2026-10-05',
	session: 'heavy-pull',
	title: 'Heavy pull',
	state: 'done',
	plannedOn: null,
	because: null,
	items: [],
	felt: null,
	hurt: [],
	notes: [],
	place: null,
	...change,
})
const log = (sessions: readonly LogSession[]): PlannedAgainstDone => ({
	lifter: 'mara-lind',
	title: 'Mara Lind',
	weeks: [
		{ monday: '2026-10-05', planned: 2, done: 1, load: { total: '490', unrated: 1, monotony: null, strain: null }, sessions },
	],
})

describe('what was done', () => {
	it.each([
		['sets done alike', [done({ sets: 4, rpe: '7.5' })], ['4 × 5 100 kg RPE 7.5']],
		['sets that differ in their reps alone', [done({ sets: 2, reps: 8 }), done({ reps: 7 })], ['8, 8, 7 100 kg']],
		['sets at another load', [done({ reps: 3 }), done({ reps: 3, load: '90' })], ['1 × 3 100 kg', '1 × 3 90 kg']],
		['holds', [done({ reps: null, seconds: 45, load: null, unit: null })], ['1 × 45 s']],
		[
			'distances for time',
			[
				done({ reps: null, metres: 20, tookSeconds: 14.2, load: '60' }),
				done({ reps: null, metres: 20, tookSeconds: 74.2, load: '60' }),
				done({ reps: null, metres: 20, load: '60' }),
			],
			['20 m in 14.2 s, 20 m in 74.2 s 60 kg', '1 × 20 m 60 kg'],
		],
		['reps in a time', [done({ reps: 31, tookSeconds: 100.1, load: null, unit: null })], ['1 × 31 in 1 min 40.1 s']],
		['bodyweight and more', [done({ bodyweight: true, load: '10' })], ['1 × 5 bodyweight + 10 kg']],
		['what went wrong', [done({ missed: 2, brokeWith: 'Back rounds' })], ['1 × 5 100 kg 2 missed broke with Back rounds']],
	])('of %s', (_, sets, lines) => {
		const shown = doneLines(sets, reader).map(({ work, load, facts }) =>
			[work, ...(load === null ? [] : [load]), ...facts].join(' '),
		)
		expect(shown.map(line => line.replaceAll('\u00a0', ' '))).toEqual(lines)
	})
})

describe('the view of a log', () => {
	it('sets what was done beside what was planned', () => {
		const items = [
			{
				movement: 'deadlift',
				title: 'Deadlift',
				planned: item({ sets: [set({ load: '112.5' }), set({ load: '112.5' })] }),
				done: [done({ sets: 2, load: '110' })],
				place: null,
			},
			{ movement: 'plank', title: 'Plank', planned: null, done: [done({ reps: null, seconds: 30, load: null })], place: null },
		]
		const text = textOf(<LogView log={log([session({ items, felt: { rating: '7', minutes: '70', load: '490' } })])} go={null} />)
		expect(text).toMatch(/Deadlift Planned 2 × 5 112\.5 kg Done 2 × 5 110 kg/)
		expect(text).toMatch(/Plank Planned not planned Done 1 × 30 s/)
		expect(text).toContain('felt 7, 70 min, load 490')
		expect(text).toContain('1 of 2 planned sessions done')
	})

	it('says what was missed and why, what is not in the log, and what hurt', () => {
		const text = textOf(
			<LogView
				log={log([
					session({ state: 'missed', because: 'night shift' }),
					session({ state: 'not-logged', date: '2026-10-07' }),
					session({ state: 'beside-the-plan', hurt: ['left knee'], date: '2026-10-08' }),
				])}
				go={null}
			/>,
		)
		expect(text).toMatch(/missed ?night shift/)
		expect(text).toContain('not in the log')
		expect(text).toContain('not in the plan')
		expect(text).toContain('hurt: left knee')
	})
})
