import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { renderPage } from '../../../client/views/page.tsx'
import { readerOf } from '../../../client/views/reader/reader.ts'
import { loadOf, percentOf } from '../../../client/views/sheet/wording.ts'
import { clubPictures } from './support/club.ts'
import { plainText } from './support/html.ts'
import { item, picture, session, set, sheet } from './support/invented.ts'

const page = (change: Parameters<typeof picture>[0] = {}, locale: string | null = null) =>
	renderPage({ ...picture(change), locale })

/** Every opening tag with its attributes. */
const tagsOf = (html: string) => html.replace(/<style\b[\s\S]*?<\/style>/g, '').match(/<[a-z][^>]*>/g)!

const nasty = [
	'<script>alert(1)</script>',
	'"><img src=x onerror=alert(1)>',
	'</style><script>alert(1)</script>',
	'</title><svg onload=alert(1)>',
	'javascript:alert(1)',
	'<!-- ',
	']]><x>',
	'&lt;b&gt;',
]

describe('a page', () => {
	/** A page with the same text wherever a person may write one. */
	const dressed = (text: string) =>
		page({
			title: text,
			lifterTitle: text,
			titles: { blocks: { rebuild: text }, gyms: { 'north-hall': text, 'pier-house': text } },
			meets: [{ date: '2026-11-28', title: text }],
			cautions: [text],
			problems: [
				{
					file: text,
					line: 1,
					column: 1,
					code: 'syntax',
					level: 'error',
					message: text,
					source: text,
					place: { uri: text, range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } } },
				},
			],
			sheet: sheet([
				session({
					title: text,
					notes: [text],
					items: [item({ title: text, notes: [text], insteadOf: text, sets: [set({ reason: text })] })],
				}),
				session({ date: '2026-10-07', gym: 'pier-house' }),
			]),
		})
	const namesOf = (html: string) => tagsOf(html).map(tag => /^<[a-z]+\d?/.exec(tag)![0])
	const occurrences = (html: string, text: string) => plainText(html).split(text).length - 1

	it.each(nasty)('shows %s as text, wherever a person may write it', text => {
		const html = dressed(text)
		const harmless = dressed('harmless words')
		expect(namesOf(html)).toEqual(namesOf(harmless))
		for (const tag of tagsOf(html)) expect(tag).not.toMatch(/^<[^"]*\son\w+=|href="javascript:/)
		expect(html.match(/<\/style>|<!--/g)).toEqual(['</style>'])
		expect(occurrences(html, text.trim())).toBe(occurrences(harmless, 'harmless words'))
		expect(occurrences(harmless, 'harmless words')).toBeGreaterThan(14)
	})

	it('needs nothing from elsewhere and allows nothing but its own style sheet', () => {
		const html = page()
		const policy = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(html)![1]!.replaceAll('&#39;', "'")
		const style = /<style>([\s\S]*?)<\/style>/.exec(html)![1]!
		const hash = createHash('sha256').update(style).digest('base64')
		expect(policy.split('; ')).toEqual(expect.arrayContaining(["default-src 'none'", `style-src 'sha256-${hash}'`]))
		expect(policy).not.toContain('unsafe')
		for (const tag of tagsOf(html)) {
			expect(tag).not.toMatch(/^<(script|link|img|iframe|object|base)\b/)
			expect(tag).not.toMatch(/\s(src|style|srcset)=/)
			expect(/\bhref="([^"]*)"/.exec(tag)?.[1] ?? '#').toMatch(/^#/)
		}
		expect(html.replace(/<svg[\s\S]*?<\/svg>/g, '')).not.toMatch(/url\(|https?:|@import/)
	})

	it('gives every id once, and leads every link to one', () => {
		const [mara] = clubPictures().values()
		const html = renderPage({ ...mara!, locale: null })
		const ids = [...html.matchAll(/\sid="([^"]*)"/g)].map(match => match[1])
		expect(new Set(ids).size).toBe(ids.length)
		const targets = [...html.matchAll(/\shref="#([^"]*)"|url\(#([^)]*)\)/g)].map(match => match[1] ?? match[2])
		expect(targets.length).toBeGreaterThan(5)
		for (const target of targets) expect(ids).toContain(target)
	})

	it('is the same each time', () => expect(page()).toBe(page()))

	it('shows every load, percent and title of every plan of the example club', () => {
		const reader = readerOf(null)
		for (const [name, one] of clubPictures()) {
			const text = plainText(renderPage({ ...one, locale: null }))
			let at = 0
			for (const session of one.sheet!.sessions)
				for (const line of session.items)
					for (const each of line.sets) {
						const load = loadOf(each, line, reader)?.replaceAll('\u00a0', ' ')
						const percent = percentOf(each, reader)?.replaceAll('\u00a0', ' ')
						at = text.indexOf(line.title, at)
						expect(at, `${name}: ${line.title}`).toBeGreaterThan(-1)
						if (load) expect(text.indexOf(load, at), `${name}: ${load}`).toBeGreaterThan(-1)
						if (percent) expect(text.indexOf(percent, at), `${name}: ${percent}`).toBeGreaterThan(-1)
						at -= 1
					}
		}
	})

	it('writes as its reader does', () => {
		const sheets = sheet([session({ items: [item({ sets: [set({ load: '112.5' })] })] })])
		expect(plainText(page({ sheet: sheets }, 'de-DE'))).toContain('112,5 kg')
		expect(plainText(page({ sheet: sheets }))).toContain('112.5 kg')
	})

	it('lets names run from right to left', () => {
		const html = page({ lifterTitle: 'مارا ليند' })
		expect(html).toContain('<p class="lifter"><bdi>مارا ليند</bdi></p>')
		// A sentence of ours that begins with such a name is read from the left all the same.
		const reason = page({ sheet: sheet([session({ items: [item({ sets: [set({ reason: 'مارا has no best yet.' })] })] })]) })
		expect(reason).toContain('<span lang="en" dir="ltr">مارا has no best yet.</span>')
	})

	it('always carries the cautions', () => {
		const text = plainText(page({ cautions: ['Refer it before training it.'] }))
		expect(text).toContain('Refer it before training it.')
		expect(text).toContain('A planning aid for coaches, no medical advice. Stop and refer on pain or symptoms')
		expect(text).toContain('local rules and licensed practice come first.')
	})

	it('stands without a sheet, as for a block, and without a volume', () => {
		expect(plainText(page({ sheet: null, lifterTitle: null }))).toContain('Weekly volume')
		expect(plainText(page({ volume: null }))).not.toContain('Weekly volume')
	})

	it('says the open problems with their lines, and in short at the top', () => {
		const place = { uri: 'file:///a.stave', range: { start: { line: 8, character: 0 }, end: { line: 8, character: 4 } } }
		const problem = {
			file: 'a.stave',
			line: 9,
			column: 1,
			code: 'frequency-cap',
			message: 'Too often.',
			source: 'common practice',
			place,
		}
		const text = plainText(
			page({
				problems: [
					{ ...problem, level: 'warning' },
					{ ...problem, line: 11, level: 'info' },
				],
			}),
		)
		expect(text).toContain('1 warning, 1 note')
		expect(text).toMatch(/Too often\. a\.stave:9 frequency-cap · common practice/)
	})
})
