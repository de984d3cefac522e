// The panel's page as it is built, in a real browser.
import { mkdtemp } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { cursor, hold, ready, reveal, show, silence } from '../../../client/preview/messages.ts'
import type { Picture, PreviewData } from '../../../language/reports/preview.ts'
import { clubPictures } from '../views/support/club.ts'
import { item, picture, session, set, sheet } from '../views/support/invented.ts'
import { PreviewPage } from './support/page.ts'

const mara = clubPictures().get('mara-autumn')!
const choices = [
	{ kind: 'plan', name: 'mara-autumn', title: 'Mara, to the regionals', lifterTitle: 'Mara Lind' },
	{ kind: 'plan', name: 'tom-autumn', title: 'Tom, first winter', lifterTitle: 'Tom Aas' },
] as const
const data = (change: Partial<PreviewData> = {}): PreviewData => ({
	version: 1,
	choices,
	chosen: { kind: 'plan', name: 'mara-autumn' },
	picture: withPlaces(mara),
	team: null,
	log: null,
	stale: null,
	...change,
})

const places = [
	{ uri: 'file:///block.stave', range: { start: { line: 5, character: 18 }, end: { line: 5, character: 30 } } },
	{ uri: 'file:///block.stave', range: { start: { line: 9, character: 4 }, end: { line: 9, character: 20 } } },
]

/** Every first set is written in the first place, every other in the second. */
function withPlaces(one: Picture): Picture {
	const ofSets = one.sheet!.sessions.map(({ items }) => items.map(({ sets }, index) => sets.map(() => (index === 0 ? 0 : 1))))
	return { ...one, written: { places, ofSets } }
}

/** The same plan after one percent was typed over: the first working set of the first session. */
function typedOver(one: Picture, load: string): Picture {
	const [first, ...others] = one.sheet!.sessions
	const items = first!.items.map(line =>
		line.role === 'main' ? { ...line, sets: line.sets.map(set => ({ ...set, load, exact: load })) } : line,
	)
	return { ...one, sheet: { ...one.sheet!, sessions: [{ ...first!, items }, ...others] } }
}

/** The same plan with twice the work in each week: other bars in every chart. */
function twiceTheVolume(one: Picture): Picture {
	const volume = one.volume!
	const twice = (value: unknown): unknown => {
		if (typeof value === 'string' && /^\d+(\.\d+)?$/.test(value)) return String(2 * Number(value))
		if (Array.isArray(value)) return value.map(twice)
		if (typeof value !== 'object' || value === null) return value
		return Object.fromEntries(Object.entries(value).map(([name, inner]) => [name, twice(inner)]))
	}
	return { ...one, volume: { ...volume, weeks: twice(volume.weeks) as typeof volume.weeks } }
}

let folder: string
let preview: PreviewPage

beforeAll(async () => {
	folder = await mkdtemp(path.join(tmpdir(), 'barstave-preview-'))
	preview = await PreviewPage.open(folder)
}, 60_000)

afterAll(() => preview?.close(folder))

/** What stands on the page, or in a part of it. */
const text = async (part = '#preview') => (await preview.page.locator(part).textContent())!.replaceAll('\u00a0', ' ')

describe('the preview page', () => {
	it('asks when it is there, and says that it waits', async () => {
		await expect.poll(() => preview.heard(ready)).toEqual([{ held: null }])
		expect(await text()).toContain('Reading the plans')
	})

	it('shows a friendly page where there is no plan', async () => {
		await preview.tell(show, data({ choices: [], chosen: null, picture: null }))
		expect(await text()).toContain('No plan yet')
		expect(await text()).toContain('run hinge-rebuild')
	})

	it('shows a plan: picker, weeks, charts, problems, cautions', async () => {
		await preview.tell(show, data())
		const words = await text()
		for (const part of ['Mara, to the regionals', 'Week 1', '112.5 kg', 'Weekly volume', 'Open problems', 'no medical advice'])
			expect(words).toContain(part)
		expect(await preview.page.locator('.drawing svg').count()).toBeGreaterThan(4)
		expect(await preview.page.locator('vscode-single-select').evaluate(one => (one as HTMLSelectElement).value)).toBe(
			'plan mara-autumn',
		)
	})

	it('writes dates as the reader does', async () => expect(await text()).toContain('Mon 5 Oct'))

	it('replaces only what has changed: no other node is touched, the scroll place stays', async () => {
		await preview.page.evaluate(() => {
			window.scrollTo(0, 1200)
			const touched: string[] = []
			Object.assign(window, { touched })
			new MutationObserver(changes => {
				for (const { type, target } of changes) {
					const element = target instanceof Element ? target : target.parentElement
					touched.push(`${type} ${element?.closest('tr, .chart, .bar, .overview')?.className}`)
				}
			}).observe(document.body, { subtree: true, childList: true, characterData: true, attributes: true })
		})
		await preview.tell(show, data({ picture: withPlaces(typedOver(mara, '120')) }))
		const touched = await preview.page.evaluate(() => (window as unknown as { touched: string[] }).touched)
		expect(touched.length).toBeGreaterThan(0)
		expect(new Set(touched.filter(one => !one.endsWith('sets main')))).toEqual(new Set())
		expect(await preview.page.evaluate(() => window.scrollY)).toBe(1200)
		expect(await text('#week-1')).toContain('120 kg')
	})

	it('draws a chart that is looked at with the words, and one that is out of view soon after', async () => {
		const chart = preview.page.locator('.charts .drawing svg').first()
		const before = await chart.innerHTML()
		const typed = typedOver(mara, '120')
		await preview.page.evaluate(() => window.scrollTo(0, 0))
		await preview.tell(show, data({ picture: withPlaces(twiceTheVolume(typed)) }))
		await expect.poll(() => chart.innerHTML()).not.toBe(before)
		await chart.scrollIntoViewIfNeeded()
		// The page learns what is in view a frame later.
		await preview.tell(cursor, { at: null })
		const atOnce = await preview.tellAndLook(show, data({ picture: withPlaces(typed) }), '.charts .drawing svg')
		expect(atOnce).toBe(before)
	})

	it('goes to the text of a set by click and by key, each to its own place', async () => {
		const rows = preview.page.locator('#week-1 tr.sets')
		await rows.first().locator('button').click()
		await rows.last().locator('button').press('Enter')
		await rows.filter({ hasText: 'Pulldown' }).locator('td.load').click()
		expect(await preview.heard(reveal)).toEqual([places[0], places[1], places[1]])
	})

	it('lights up the sets that the cursor is in', async () => {
		await preview.tell(cursor, { at: { uri: 'file:///block.stave', line: 9, character: 6 } })
		const lit = await preview.page.locator('tr.lit').evaluateAll(rows => rows.map(row => row.getAttribute('data-place')))
		expect(lit.length).toBeGreaterThan(0)
		expect(new Set(lit)).toEqual(new Set(['1']))
		await preview.tell(cursor, { at: null })
		expect(await preview.page.locator('tr.lit').count()).toBe(0)
	})

	it('keeps the last good picture of a broken block, and says which part is old', async () => {
		const gone = {
			...mara,
			sheet: { ...mara.sheet!, sessions: mara.sheet!.sessions.filter(one => one.block !== 'hinge-rebuild') },
		}
		await preview.tell(
			show,
			data({ picture: withPlaces(gone), stale: { message: 'Hinge rebuild cannot be read.', blocks: ['hinge-rebuild'] } }),
		)
		expect(await text('.warning')).toContain('Hinge rebuild cannot be read.')
		expect(await text('#week-1')).toMatch(/as it was.*120 kg/)
		expect(await text('#week-8')).not.toContain('as it was')
	})

	it('keeps all of it while nobody answers, and recovers', async () => {
		await preview.tell(silence, { message: 'Barstave is not answering at the moment.' })
		expect(await text()).toContain('not answering')
		expect(await text('#week-1')).toContain('120 kg')
		await preview.tell(show, data())
		expect(await text()).not.toContain('not answering')
		expect(await text('#week-1')).toContain('112.5 kg')
	})

	it('lets a plan be picked', async () => {
		const picker = preview.page.locator('vscode-single-select')
		await picker.click()
		await preview.page.getByRole('option', { name: /Tom, first winter/ }).click()
		expect(await preview.heard(hold)).toEqual([{ held: { kind: 'plan', name: 'tom-autumn' } }])
	})

	it('shows hostile text as text', async () => {
		const hostile = '"><img src=x onerror="window.ran=1"><script>window.ran=1</script></style>'
		const line = item({ title: hostile, notes: [hostile], sets: [set({ reason: hostile })] })
		const dressed = picture({
			title: hostile,
			lifterTitle: hostile,
			cautions: [hostile],
			sheet: sheet([session({ title: hostile, items: [line] })]),
		})
		await preview.tell(
			show,
			data({
				choices: [{ kind: 'plan', name: 'odd', title: hostile, lifterTitle: hostile }],
				chosen: { kind: 'plan', name: 'odd' },
				picture: dressed,
			}),
		)
		expect((await text()).split(hostile).length).toBeGreaterThan(5)
		expect(await preview.page.locator('img').count()).toBe(0)
		expect(await preview.page.evaluate(() => 'ran' in window)).toBe(false)
	})

	it('comes back after a reload where it was', async () => {
		await preview.tell(show, data())
		await preview.page.evaluate(() => {
			// What earlier tests have left would be taken for what is kept now.
			sessionStorage.removeItem('state')
			window.scrollTo(0, 2400)
		})
		await preview.page.waitForFunction(() => sessionStorage.getItem('state')?.includes('"section":"week-'))
		await preview.page.reload()
		await expect.poll(() => preview.heard(ready)).toEqual([{ held: { kind: 'plan', name: 'tom-autumn' } }])
		await preview.tell(show, data())
		expect(await preview.page.evaluate(() => window.scrollY)).toBe(2400)
	})

	it.each([320, 640, 1200])('fits into %i pixels', async width => {
		await preview.page.setViewportSize({ width, height: 600 })
		await preview.tell(show, data())
		expect(await preview.page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width)
		const widths = await preview.page
			.locator('.drawing svg')
			.evaluateAll(all => all.map(one => one.getBoundingClientRect().right))
		for (const right of widths) expect(right).toBeLessThanOrEqual(width)
	})

	it('has met no complaint of the browser, nor broken its policy', () => expect(preview.complaints).toEqual([]))
})
