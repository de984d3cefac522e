import { describe, expect, it } from 'vitest'
import { BlockAsksView } from '../../../client/views/block/block-asks-view.tsx'
import { CalendarView } from '../../../client/views/calendar/calendar-view.tsx'
import { capExposuresDrawing } from '../../../client/views/charts/cap-exposures.ts'
import { gateTimelineDrawing } from '../../../client/views/charts/gate-timeline.ts'
import { liftZonesDrawing } from '../../../client/views/charts/lift-zones.ts'
import { GatesView } from '../../../client/views/gates/gates-view.tsx'
import { readerOf } from '../../../client/views/reader/reader.ts'
import { TeamView } from '../../../client/views/team/team-view.tsx'
import { capMeasure } from '../../../client/views/volume/measures.ts'
import type { PlanCalendar } from '../../../language/reports/calendar.ts'
import type { GateOnTimeline } from '../../../language/reports/gate-timeline.ts'
import type { TeamOverview } from '../../../language/reports/team-overview.ts'
import { textOf } from './support/html.ts'

const reader = readerOf(null)
const surface = { width: 640, fontFamily: 'sans-serif', fontSize: 12 }
const titles = { blocks: { rebuild: 'Rebuild' }, gyms: {} }
const weeks = [
	{ week: 1, deload: false },
	{ week: 2, deload: true },
]

interface Series {
	readonly id: string
	readonly data: readonly unknown[]
}
const valuesOf = ({ option }: { readonly option: unknown }, id: string) =>
	(option as { series: readonly Series[] }).series
		.find(series => series.id === id)!
		.data.map(datum => (datum !== null && typeof datum === 'object' && 'value' in datum ? datum.value : datum))

const calendar: PlanCalendar = {
	weeks: [
		{
			monday: '2026-10-05',
			week: 1,
			blocks: [{ block: 'rebuild', week: 1, deload: false }],
			pauses: [],
			days: [
				{
					date: '2026-10-07',
					sessions: [
						{ block: 'rebuild', session: 'pull', title: 'Pull', part: 'evening', deload: false, minutes: 40, main: ['Deadlift'] },
					],
					meets: [],
				},
			],
		},
		{
			monday: '2026-10-12',
			week: 2,
			blocks: [{ block: 'rebuild', week: 2, deload: true }],
			pauses: [{ because: 'flu' }],
			days: [{ date: '2026-10-17', sessions: [], meets: ['Regionals'] }],
		},
		{ monday: '2062-01-02', week: 9, blocks: [], pauses: [], days: [] },
	],
}

describe('the calendar', () => {
	const text = textOf(<CalendarView calendar={calendar} titles={titles} onSheet={[1]} />)

	it('has the days on which anything is, and no others', () => {
		expect(text).toMatch(/Week Block Wed Sat/)
		expect(text).not.toContain('Mon')
	})

	it('says sessions, lighter weeks, meets, and weeks that are left out', () => {
		expect(text).toMatch(/Pull ?evening · 40 min · Deadlift/)
		expect(text).toMatch(/week 2 ?lighter week/)
		expect(text).toContain('pause flu')
		expect(text).toContain('Regionals, Meet')
		expect(text).toContain('6 weeks without a session')
	})
})

const gate = (change: Partial<GateOnTimeline>): GateOnTimeline => ({
	text: 'Plank held 45 s',
	before: ['Weighted plank'],
	block: 'rebuild',
	neededOn: '2026-10-12',
	state: 'passed',
	passedOn: '2026-09-20',
	shownBy: 'passed',
	plannedOn: null,
	nearest: null,
	source: 'common practice',
	place: null,
	...change,
})

describe('the gates', () => {
	it('say when each was passed, will be, or that it is open', () => {
		const gates = [
			gate({}),
			gate({
				text: 'Plank held 60 s',
				state: 'planned',
				passedOn: null,
				plannedOn: '2026-10-05',
				nearest: { text: '50 s', on: null },
			}),
			gate({ text: 'a sign-off of Front squat', state: 'open', passedOn: null, before: [], source: null }),
		]
		const text = textOf(<GatesView gates={gates} calendar={calendar} titles={titles} go={null} />)
		expect(text).toMatch(/Plank held 45 s \(common practice\) Weighted plank by 2026-10-12 passed on 2026-09-20/)
		expect(text).toMatch(/gets there on 2026-10-05, if done as written; the most so far is 50 s/)
		expect(text).toMatch(/Front squat the block Rebuild by 2026-10-12 open/)
	})

	it('are drawn from where they are passed to where they are needed', () => {
		const tracks = [
			{ text: 'a', state: 'passed', shown: 0, needed: 2 } as const,
			{ text: 'b', state: 'open', shown: null, needed: 1 } as const,
		]
		const drawn = gateTimelineDrawing(
			tracks,
			[
				{ label: '1', deload: false },
				{ label: '2', deload: false },
			],
			'before',
		)(surface)
		expect(valuesOf(drawn, 'gate 0')).toEqual([
			[0, 1],
			[2, 1],
		])
		expect(valuesOf(drawn, 'gate 1')).toEqual([[1, 1]])
	})
})

describe('charts of caps and zones', () => {
	it('draw days up to the cap, over it, and the cap', () => {
		const cap = { movement: 'deadlift', title: 'Deadlift', cap: 2, fromPercent: null, source: null, exposures: [3, 1] }
		const measure = capMeasure(cap, 'Deadlift', 'Deadlift, limit')
		const drawn = capExposuresDrawing([{ measure, limit: 'at most 2 a week' }], weeks, reader)(surface)
		expect(valuesOf(drawn, 'Deadlift solid')).toEqual([2, 1])
		expect(valuesOf(drawn, 'Deadlift pale')).toEqual([1, 0])
		expect(valuesOf(drawn, 'Deadlift needed').map(point => (point as number[])[1])).toEqual([2, 2, 2, 2])
	})

	it('stack the lifts of each zone, and what may come on top', () => {
		const zones = [
			{ name: 'light', unit: null, amounts: [{ low: '12', high: '12' }, null] },
			{ name: 'heavy', unit: null, amounts: [{ low: '4', high: '6' }, null] },
		]
		const drawn = liftZonesDrawing(zones, weeks, reader)(surface)
		expect([valuesOf(drawn, 'light'), valuesOf(drawn, 'heavy')]).toEqual([
			[12, null],
			[4, null],
		])
		expect(valuesOf(drawn, 'where the high end is done')).toEqual([2, null])
	})
})

describe('what a block asks', () => {
	it('says gates, bests and equipment, each with what it is for', () => {
		const text = textOf(
			<BlockAsksView
				asks={{
					targets: ['Deadlift'],
					answers: ['Back rounds'],
					gates: [{ text: 'Plank held 45 s', before: ['Weighted plank'], week: 3, reachedIn: 1, source: null }],
					bests: [{ movement: 'deadlift', title: 'Deadlift', loads: ['Deadlift', 'Romanian deadlift'], base: true }],
					bodyweight: true,
					equipment: [{ name: 'safety-bar', movements: ['Good morning'] }],
				}}
			/>,
		)
		expect(text).toMatch(/before Weighted plank, week 3 ?; its own sets get there in week 1/)
		expect(text).toMatch(/Deadlift loads of Deadlift, Romanian deadlift a working base/)
		expect(text).toMatch(/Safety bar for Good morning/)
	})
})

describe('a team', () => {
	it('shows who is in which week, who has no plan, and whom a problem concerns', () => {
		const week = { block: 'rebuild', blockTitle: 'Rebuild', week: 1, of: 3, deload: true, sessions: 2, meets: ['Regionals'] }
		const team: TeamOverview = {
			team: 'juniors',
			title: 'Juniors',
			today: '2026-10-07',
			weeks: ['2026-10-05', '2026-10-12'],
			members: [
				{ lifter: 'mara', title: 'Mara', plans: [{ plan: 'autumn', title: 'Autumn', weeks: [week, null], problems: [0] }] },
				{ lifter: 'tom', title: 'Tom', plans: [] },
				{ lifter: 'ada', title: 'Ada', plans: [{ plan: 'ada-autumn', title: 'Autumn', weeks: [week, null], problems: [] }] },
				{
					lifter: 'eve',
					title: 'Eve',
					plans: [{ plan: 'later', title: 'Later', weeks: [null, { ...week, meets: [] }], problems: [] }],
				},
			],
			problems: [
				{
					file: 'a.stave',
					line: 3,
					column: 1,
					code: 'frequency-cap',
					level: 'warning',
					message: 'Too often.',
					source: null,
					place: { uri: 'a', range: { start: { line: 2, character: 0 }, end: { line: 2, character: 1 } } },
				},
			],
		}
		const text = textOf(<TeamView team={team} go={null} pick={null} />)
		expect(text).toContain('Mara Autumn Rebuild week 1 of 3 lighter week ◆ Regionals this week 1 warning')
		expect(text).toContain('Tom no plan')
		expect(text).toMatch(/Eve Later begins in the week of 2026-10-12 .*none/)
		// Who is in the same weeks stands in one row.
		expect(text).toMatch(/2026-10 5, this week 12 Mara, Ada Autumn Rebuild 1 ?week 1 of 3, lighter week ?◆ Regionals Eve/)
		expect(text).toMatch(/frequency-cap · concerns Mara/)
	})
})
