import { describe, expect, it } from 'vitest'
import type { ChartOption, Drawing } from '../../../client/views/charts/drawing.ts'
import { linkSecondsDrawing, linksDrawing } from '../../../client/views/charts/links.ts'
import { mainLiftDrawing } from '../../../client/views/charts/main-lift.ts'
import { muscleSetsDrawing } from '../../../client/views/charts/muscle-sets.ts'
import { numbersOnBars } from '../../../client/views/charts/parts.ts'
import { SurfaceContext, type SurfaceProps } from '../../../client/views/charts/surface.ts'
import { readerOf } from '../../../client/views/reader/reader.ts'
import { linkSeconds, linkSets, mainLifts, muscleSets, weekColumns } from '../../../client/views/volume/measures.ts'
import { WeeklyVolumeView } from '../../../client/views/volume/weekly-volume-view.tsx'
import type { NeededWork, WeekNeeds } from '../../../language/reports/preview.ts'
import type { LiftVolume } from '../../../language/reports/weekly-volume.ts'
import { clubPictures } from './support/club.ts'
import { textOf } from './support/html.ts'
import { item, session, sheet, volume, week } from './support/invented.ts'

const reader = readerOf(null)
const surface = { width: 640, fontFamily: 'sans-serif', fontSize: 12 }

interface Series {
	readonly id: string
	readonly data: readonly unknown[]
}
const seriesOf = (option: ChartOption) => option.series as unknown as readonly Series[]
const find = (drawing: Drawing, id: string) => seriesOf(drawing(surface).option).find(series => series.id === id)
const values = (series: Series | undefined) =>
	series?.data.map(datum => (datum !== null && typeof datum === 'object' && 'value' in datum ? datum.value : datum))
const labels = (series: Series | undefined) =>
	series?.data.map(datum => (datum as { label: { formatter: string } }).label.formatter)

const need = (change: Partial<NeededWork>): NeededWork => ({
	sets: '6',
	sessions: null,
	answeringSets: '0',
	answeringSessions: 0,
	because: ['Back rounds'],
	...change,
})
const needs = (change: Partial<WeekNeeds>): WeekNeeds => ({ links: {}, muscles: {}, ...change })

const lift = (change: Partial<LiftVolume>): LiftVolume => ({
	title: 'Deadlift',
	sessions: 1,
	sets: 4,
	setsTo: null,
	reps: { low: 20, high: 20 },
	tonnage: { low: '2250', high: '2250' },
	relative: null,
	averagePercent: '70',
	averagePercentTo: null,
	topPercent: '70',
	topPercentTo: null,
	zones: [],
	seconds: { low: 0, high: 0 },
	holdSeconds: { low: 0, high: 0 },
	carryMetres: { low: 0, high: 0 },
	excludedSets: 0,
	...change,
})

describe('charts', () => {
	const links = (stability: string, drive: string) => ({
		stability: { sets: stability, setsTo: null, seconds: 360, secondsTo: 420 },
		drive: { sets: drive, setsTo: null, seconds: 520, secondsTo: null },
	})
	const two = volume([week({ links: links('12', '11') }), week({ week: 2, links: links('8', '10'), deload: true })])
	const asked = [needs({ links: { stability: need({ answeringSets: '7' }) } }), null]

	it('part sets that answer from other sets, and draw what is needed only where it is', () => {
		const drawing = linksDrawing(linkSets(two, asked), weekColumns(two), reader)
		expect(values(find(drawing, 'Stability solid'))).toEqual([7, 0])
		expect(values(find(drawing, 'Stability pale'))).toEqual([5, 8])
		expect(labels(find(drawing, 'Stability pale'))).toEqual(['12', '8'])
		expect(find(drawing, 'Stability needed')!.data).toEqual([
			[0, 6],
			[1, 6],
			[1, null],
			[2, null],
		])
		expect(find(drawing, 'Drive needed')).toBeUndefined()
		expect(values(find(drawing, 'Drive solid'))).toEqual([11, 10])
	})

	it('draw a range as what is certain below what is possible', () => {
		const drawing = linkSecondsDrawing(linkSeconds(two), weekColumns(two), reader)
		expect(values(find(drawing, 'Stability solid'))).toEqual([360, 360])
		expect(values(find(drawing, 'Stability pale'))).toEqual([60, 60])
		expect(labels(find(drawing, 'Stability pale'))).toEqual(['6:00–7:00', '6:00–7:00'])
	})

	it('put muscles that are needed first, then those with most sets', () => {
		const weeks = volume([week({ muscles: { glutes: '9.5', lats: '2', quads: '12' }, musclesTo: { quads: '14' } })])
		const rows = muscleSets(weeks, [needs({ muscles: { lats: need({ sets: '4', answeringSets: '1.5' }) } })])
		expect(rows.map(row => row.name)).toEqual(['Lats', 'Quads', 'Glutes'])
		expect(rows[1]!.all.amounts).toEqual([{ low: '12', high: '14' }])
	})

	it('show a muscle that is needed and gets nothing', () => {
		const rows = muscleSets(volume([week()]), [needs({ muscles: { lats: need({ sets: '4' }) } })])
		expect(rows.map(({ name, all }) => [name, all.amounts])).toEqual([['Lats', [{ low: '0', high: '0' }]]])
	})

	it('leave a gap where a lift has no work, never a 0', () => {
		const weeks = volume([week({ lifts: { deadlift: lift({}) } }), week({ week: 2 })])
		const drawing = mainLiftDrawing(mainLifts(weeks, sheet([session()]))[0]!, weekColumns(weeks), reader)
		expect(values(find(drawing, 'Average intensity'))).toEqual([70, null])
		expect(values(find(drawing, 'work solid'))).toEqual([2250, null])
	})

	it('take the main lifts from the sheet, and know one by the name constructor', () => {
		const weeks = volume([week({ lifts: { plank: lift({ averagePercent: null }), deadlift: lift({}) } }), week({ week: 2 })])
		expect(mainLifts(weeks, sheet([session()])).map(one => one.lift)).toEqual(['deadlift'])
		const odd = mainLifts(
			volume([week({ lifts: { constructor: lift({ title: 'Odd' }) } }), week({ week: 2 })]),
			sheet([session({ items: [item({ movement: 'constructor' })] })]),
		)
		expect(odd[0]!.work.amounts).toEqual([{ low: '2250', high: '2250' }, null])
	})

	it('count percents for a block without a lifter', () => {
		const weeks = volume([
			week({ from: null, lifts: { deadlift: lift({ tonnage: null, relative: { low: '1400', high: '1400' } }) } }),
		])
		expect(mainLifts(weeks, null)[0]!.work).toMatchObject({ name: 'Sets × reps × percent', unit: null })
	})

	it('hold no functions, so that two can be compared', () => {
		const drawing = muscleSetsDrawing(muscleSets(two, asked), weekColumns(two), reader)
		const { option } = drawing(surface)
		expect(JSON.parse(JSON.stringify(option))).toEqual(option)
	})
})

describe('the weekly volume', () => {
	/** Collects the options of all charts beside the text of the page around them. */
	const look = (props: Parameters<typeof WeeklyVolumeView>[0]) => {
		const options: ChartOption[] = []
		const Collect = ({ drawing }: SurfaceProps) => {
			options.push(drawing(surface).option)
			return null
		}
		const text = textOf(
			<SurfaceContext.Provider value={Collect}>
				<WeeklyVolumeView {...props} />
			</SurfaceContext.Provider>,
		)
		return { text, options }
	}

	it('says beside each chart the numbers that the chart draws, for every plan of the example club', () => {
		for (const { volume, needs, sheet, caps } of clubPictures().values()) {
			const { text, options } = look({ volume: volume!, needs, sheet, caps })
			const drawn = options.flatMap(seriesOf)
			expect(drawn.length).toBeGreaterThan(4)
			for (const { id, data } of drawn.filter(series => / pale$/.test(series.id) && !/^(work|Stability|Drive)/.test(series.id))) {
				const row = labels({ id, data })!.join(' ')
				expect(text, id).toContain(row)
			}
			for (const lift of mainLifts(volume!, sheet))
				for (const amount of lift.work.amounts) if (amount) expect(text).toContain(`${amount.high} ${volume!.unit}`)
		}
	})

	it('says how many sets are not in the totals', () => {
		const { text } = look({
			volume: volume([week(), week({ week: 2, excludedSets: 3 })]),
			needs: [null, null],
			sheet: null,
			caps: [],
		})
		expect(text).toContain('week 2: 3 sets')
		expect(text).not.toContain('week 1:')
	})

	it('has needed sessions in its table', () => {
		const asked = [needs({ links: { stability: need({ sessions: 2, answeringSessions: 1 }) } })]
		const { text } = look({ volume: volume([week()]), needs: asked, sheet: null, caps: [] })
		expect(text).toMatch(/Stability, sessions answering 1 .*Stability, sessions needed 2/)
		expect(text).toContain('needed for Back rounds')
	})

	it('leaves the bars of a long season without numbers that would run into each other, but for the greatest', () => {
		const numbers = (weeks: number, texts: readonly string[]) =>
			numbersOnBars(
				{ amounts: texts.map(text => ({ low: text.split('–')[0]!, high: text.split('–').at(-1)! })), unit: null },
				{
					reader: readerOf(null),
					slot: 400 / weeks,
					abreast: 1,
					surface: { width: 400, fontFamily: 'sans-serif', fontSize: 11 },
				},
			)
		expect(numbers(8, ['12', '8–10', '14'])).toEqual(['12', '8–10', '14'])
		// 25 pixels a week: a range has no room, its high end has.
		expect(numbers(16, ['12', '10–14', '9'])).toEqual(['12', '14', '9'])
		expect(numbers(52, ['12', '10–14', '9'])).toEqual(['', '14', ''])
	})
})
