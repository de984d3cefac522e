import { describe, expect, it } from 'vitest'
import { sheetPdf } from '../../../client/outputs/pdf/sheet-pdf.ts'
import { readerOf } from '../../../client/views/reader/reader.ts'
import { discsOf, loadOf } from '../../../client/views/sheet/wording.ts'
import type { Picture } from '../../../language/reports/preview.ts'
import { clubPictures } from '../views/support/club.ts'
import { item, picture, session, set, sheet } from '../views/support/invented.ts'
import { awkward, dressedIn, withoutSessions } from './support/awkward.ts'
import { readPdf } from './support/pdf.ts'

const written = async (content: Picture, change: Partial<Parameters<typeof sheetPdf>[1]> = {}) =>
	readPdf(await sheetPdf(content, { paper: 'a4', locale: null, ...change }))

const spaces = (text: string) => text.replace(/\s+/g, ' ')

describe('the sheet as a PDF', () => {
	it.each([...clubPictures()])('%s: one week a page on both papers, with every load and disc of the sheet', async (_, one) => {
		const reader = readerOf(null)
		const weeks = [...new Set(one.sheet!.sessions.map(session => session.planWeek))]
		for (const paper of ['a4', 'letter'] as const) {
			const { pages, outline } = await written(one, { paper })
			expect(pages).toHaveLength(weeks.length)
			expect(outline).toEqual(weeks.map(week => `Week ${week}`))
			for (const [index, week] of weeks.entries()) {
				const { text } = pages[index]!
				expect(text).toContain(`Week ${week} of ${weeks.at(-1)}`)
				for (const words of [one.title, one.lifterTitle!, 'no medical advice', 'Felt, 0–10', 'Remarks'])
					expect(text).toContain(words)
				for (const session of one.sheet!.sessions.filter(session => session.planWeek === week)) {
					expect(text).toContain(session.date)
					for (const line of session.items)
						for (const each of line.sets)
							for (const words of [line.title, loadOf(each, line, reader), discsOf(each, reader)])
								if (words !== null) expect(text).toContain(spaces(words))
				}
			}
		}
	})

	it('has pages of the size that was asked for', async () => {
		const size = async (paper: 'a4' | 'letter') => {
			const [page] = (await written(picture(), { paper })).pages
			return [page!.width, page!.height]
		}
		// ISO 216: 210 × 297 mm; ANSI: 8.5 × 11 in.
		expect(await size('a4')).toEqual([595.28, 841.89])
		expect(await size('letter')).toEqual([612, 792])
	})

	it('is told in the order of the session, each line of sets as one piece', async () => {
		const one = set({ load: '112.5', exact: '112', perSide: ['25', '20'], tempo: '3-1-1-0' })
		const notes = ['Bar close.']
		const [page] = (await written(picture({ sheet: sheet([session({ items: [item({ sets: [one, one], notes })] })]) }))).pages
		expect(page!.told.filter(piece => piece.as !== 'P').map(({ as, text }) => `${as} ${text}`)).toEqual([
			'H1 Mara, autumn Week 1 of 1',
			'H2 Mon 2026-10-05 Heavy pull',
		])
		const texts = page!.told.map(piece => piece.text)
		const [movement, note, sets] = ['Deadlift', 'Bar close.', '2 × 5 112.5 kg 25 + 20 3-1-1-0 3 min'].map(text =>
			texts.indexOf(text),
		)
		expect(movement).toBeGreaterThan(-1)
		expect([note, sets]).toEqual([movement! + 1, movement! + 2])
		// Nothing is written that is not told.
		expect(texts.join(' ').split(' ').sort()).toEqual(page!.text.split(' ').sort())
	})

	it('has every font in the file', async () => {
		for (const name of ['Arabic', 'Hebrew', 'Greek'] as const) {
			const file = Buffer.from(await sheetPdf(dressedIn(awkward[name]), { paper: 'a4', locale: null })).toString('latin1')
			const fonts = file.match(/\/Type \/FontDescriptor\b/g)!
			expect(fonts.length).toBeGreaterThan(2)
			expect(file.match(/\/FontFile2? /g)).toHaveLength(fonts.length)
			expect(file.match(/\/ToUnicode /g)).toHaveLength(fonts.length)
		}
	})

	it('is the same bytes each time', async () => {
		const bytes = () => sheetPdf(dressedIn(awkward.Arabic), { paper: 'a4', locale: null })
		expect(await bytes()).toEqual(await bytes())
	})

	it('has real text in Latin, Greek, Cyrillic, Hebrew and Arabic letters, and its title', async () => {
		for (const name of ['Arabic', 'Hebrew', 'Greek', 'Cyrillic', 'letters with marks', 'quotes', 'backslashes'] as const) {
			const text = awkward[name]
			const { pages, title, author } = await written(dressedIn(text))
			expect(pages[0]!.text.split(text).length - 1, name).toBeGreaterThanOrEqual(4)
			expect([title, author]).toEqual([`${text} – ${text}`, text])
			expect(pages[0]!.text).not.toContain('\ufffd')
		}
	})

	it('marks letters that it has no font for, and says so', async () => {
		for (const name of ['emoji', 'Chinese'] as const) {
			const [page] = (await written(dressedIn(awkward[name]))).pages
			expect(page!.text).toContain('\ufffd stands for a letter that this file has no font for.')
			expect(page!.text.split('\ufffd').length).toBeGreaterThan(4)
		}
		expect((await written(picture())).pages[0]!.text).not.toContain('no font')
	})

	it('writes line breaks as such, and notes of any length on as many pages as they need', async () => {
		const [broken] = (await written(dressedIn(awkward['line breaks']))).pages
		for (const line of awkward['line breaks'].split('\n')) expect(broken!.text).toContain(line)
		const long = awkward['a very long note']
		const notes = [long, 'x'.repeat(3000)]
		const { pages } = await written(picture({ sheet: sheet([session({ notes, items: [item({ notes })] })]) }))
		expect(pages.length).toBeGreaterThan(1)
		for (const page of pages) expect(page.text).toContain('Week 1 of 1')
		const text = pages.map(page => page.text).join(' ')
		expect(text.split('Breathe out,').length - 1).toBeGreaterThanOrEqual(800)
		expect(text.replace(/[^x]/g, '').length).toBeGreaterThanOrEqual(6000)
		expect(text).toContain('continued, page 2')
	})

	it('goes on where a week has more than a page holds, and keeps each session together', async () => {
		const items = Array.from({ length: 12 }, (_, index) => item({ title: `Lift ${index + 1}` }))
		const sessions = ['2026-10-06', '2026-10-07', '2026-10-08', '2026-10-09'].map(date => session({ date, items }))
		const { pages } = await written(picture({ sheet: sheet(sessions) }))
		expect(pages.length).toBeGreaterThan(1)
		for (const { date } of sessions) {
			const holding = pages.filter(page => page.text.includes(date))
			expect(holding).toHaveLength(1)
			const after = holding[0]!.text.slice(holding[0]!.text.indexOf(date))
			expect(after.indexOf('Lift 12')).toBeGreaterThan(-1)
		}
	})

	it('writes one week alone, and still says of how many', async () => {
		const sessions = [1, 2, 3].map(week => session({ planWeek: week, date: `2026-10-${String(7 * week - 2).padStart(2, '0')}` }))
		const { pages } = await written(picture({ sheet: sheet(sessions) }), { week: 2 })
		expect(pages.map(page => /Week \d of \d/.exec(page.text)?.[0])).toEqual(['Week 2 of 3'])
	})

	it('says the cautions on every page, that texts have errors, and why a load is missing', async () => {
		const place = { uri: 'a', range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } } }
		const problem = { file: 'a.stave', line: 1, column: 1, code: 'syntax', message: 'x', source: null, place }
		const items = [item({ sets: [set({ reason: 'There is no best for this lift.' })] })]
		const sessions = [1, 2].map(week =>
			session({ planWeek: week, date: `2026-10-${String(7 * week - 2).padStart(2, '0')}`, items }),
		)
		const { pages } = await written(
			picture({
				sheet: sheet(sessions),
				cautions: ['Refer it before training it.'],
				problems: [
					{ ...problem, level: 'error' },
					{ ...problem, level: 'warning' },
				],
				meets: [{ date: '2026-11-28', title: 'Spring meet' }],
			}),
		)
		expect(pages).toHaveLength(2)
		for (const { text } of pages)
			for (const words of [
				'Refer it before training it.',
				'1 error in the texts',
				'There is no best for this lift.',
				'Spring meet',
			])
				expect(text).toContain(words)
	})

	it('of a plan without a session says so on one page', async () => {
		const { pages } = await written(withoutSessions())
		expect(pages.map(page => page.text)).toEqual([
			'Mara, autumn – Mara Lind There is nothing to do: no session of this plan has a date yet.',
		])
	})

	it('writes numbers and dates as its reader does', async () => {
		const sheets = sheet([session({ items: [item({ sets: [set({ load: '112.5' })] })] })])
		const [page] = (await written(picture({ sheet: sheets }), { locale: 'de-DE' })).pages
		expect(page!.text).toContain('112,5 kg')
	})
})
