import { describe, expect, it } from 'vitest'
import { keepLastGood, type Shown } from '../../../client/preview/keep-last-good.ts'
import type { Picture, PreviewData } from '../../../language/reports/preview.ts'
import { picture, session, sheet, volume, week } from '../views/support/invented.ts'

const data = (change: Partial<PreviewData> = {}): PreviewData => ({
	version: 1,
	choices: [],
	chosen: { kind: 'plan', name: 'mara-autumn' },
	team: null,
	log: null,
	picture: twoBlocks('41'),
	stale: null,
	...change,
})

/** A week of one block and a week of the next; `minutes` tells an old picture from a new one. */
function twoBlocks(minutes: string, change: Partial<Picture> = {}): Picture {
	return picture({
		sheet: sheet([
			session({ minutes: Number(minutes) }),
			session({ date: '2026-10-12', planWeek: 2, block: 'peak', minutes: Number(minutes) }),
		]),
		volume: volume([week({ minutes: Number(minutes) }), week({ week: 2, block: 'peak', minutes: Number(minutes) })]),
		needs: [null, { links: {}, muscles: {} }],
		written: { places: [], ofSets: [[[0]], [[1]]] },
		...change,
	})
}

const first = keepLastGood(null, data())
const minutesOf = ({ data }: Shown) => [
	data.picture!.sheet!.sessions.map(one => one.minutes),
	data.picture!.volume!.weeks.map(one => one.minutes),
]

describe('what is shown while a text is broken', () => {
	it('is the new picture where nothing is broken', () => {
		const shown = keepLastGood(first, data({ picture: twoBlocks('50') }))
		expect(minutesOf(shown)).toEqual([
			[50, 50],
			[50, 50],
		])
		expect(shown.staleBlocks).toEqual([])
	})

	it('keeps the weeks of a broken block as they were, and takes the others', () => {
		const shown = keepLastGood(first, data({ picture: twoBlocks('50'), stale: { message: '…', blocks: ['peak'] } }))
		expect(minutesOf(shown)).toEqual([
			[50, 41],
			[50, 41],
		])
		expect(shown.staleBlocks).toEqual(['peak'])
		// Old places would lead to text that has moved.
		expect(shown.data.picture!.written!.ofSets).toEqual([[[0]], []])
		expect(shown.data.picture!.needs).toEqual([null, { links: {}, muscles: {} }])
	})

	it('keeps a block that the broken text has lost altogether', () => {
		const halved = twoBlocks('50', {
			sheet: sheet([session({ minutes: 50 })]),
			volume: volume([week({ minutes: 50 })]),
			needs: [null],
		})
		const shown = keepLastGood(first, data({ picture: halved, stale: { message: '…', blocks: ['peak'] } }))
		expect(minutesOf(shown)).toEqual([
			[50, 41],
			[50, 41],
		])
	})

	it('still knows the good picture after many broken ones', () => {
		let shown = first
		for (let time = 0; time < 5; time++)
			shown = keepLastGood(shown, data({ picture: twoBlocks('0'), stale: { message: '…', blocks: ['peak', 'rebuild'] } }))
		expect(minutesOf(shown)).toEqual([
			[41, 41],
			[41, 41],
		])
		expect(minutesOf(keepLastGood(shown, data({ picture: twoBlocks('50') })))[0]).toEqual([50, 50])
	})

	it('keeps all of it where the plan itself is broken, or is no longer found', () => {
		const stale = { message: '…', blocks: null }
		for (const next of [data({ picture: twoBlocks('0'), stale }), data({ picture: null, chosen: null, stale })]) {
			const shown = keepLastGood(first, next)
			expect(minutesOf(shown)[0]).toEqual([41, 41])
			expect(shown.staleBlocks).toBeNull()
			expect(shown.data.chosen).toEqual({ kind: 'plan', name: 'mara-autumn' })
		}
	})

	it('never shows one plan’s weeks as another’s', () => {
		const other = data({
			chosen: { kind: 'plan', name: 'tom-autumn' },
			picture: twoBlocks('50'),
			stale: { message: '…', blocks: ['peak'] },
		})
		expect(minutesOf(keepLastGood(first, other))[0]).toEqual([50, 50])
	})

	it('shows what there is where nothing was known before', () => {
		const broken = data({ stale: { message: '…', blocks: ['peak'] } })
		expect(keepLastGood(null, broken)).toEqual({ data: broken, staleBlocks: [] })
	})

	it('shows new problems even where all else stays', () => {
		const place = { uri: 'file:///a.stave', range: { start: { line: 0, character: 0 }, end: { line: 0, character: 1 } } }
		const problem = {
			file: 'a.stave',
			line: 1,
			column: 1,
			code: 'syntax',
			level: 'error',
			message: 'm',
			source: null,
			place,
		} as const
		const next = data({ picture: twoBlocks('0', { problems: [problem] }), stale: { message: '…', blocks: null } })
		expect(keepLastGood(first, next).data.picture!.problems).toEqual([problem])
	})
})
