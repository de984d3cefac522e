// Sheets and volumes as files: what the program itself makes of them. What stands in them is tested where they are written.
import { execFile } from 'node:child_process'
import { readdirSync, readFileSync } from 'node:fs'
import { readFile } from 'node:fs/promises'
import path from 'node:path'
import { promisify } from 'node:util'
import { parse } from 'csv-parse/sync'
import ICAL from 'ical.js'
import { describe, expect, test } from 'vitest'
import type { LoadSheet } from '../../../language/reports/load-sheet.ts'
import { readPdf } from '../outputs/support/pdf.ts'
import { barstave, builtProgram, temporaryFolder } from './support/program.ts'
import { resultBySchema } from './support/result.ts'
import { workspaceOf } from './support/workspace.ts'

const languagePage = path.join(import.meta.dirname, 'language-page')

/** The page's texts without the block that is not there: they check without an error. */
const texts = Object.fromEntries(
	readdirSync(languagePage).map(name => [name, readFileSync(path.join(languagePage, name), 'utf8')]),
)
texts['plan.stave'] = texts['plan.stave']!.replace('  run peak-three\n', '')

async function sheetOf(cwd: string, ...words: string[]): Promise<LoadSheet> {
	return resultBySchema<LoadSheet>('sheet', (await barstave(['sheet', 'mara-autumn', '--format', 'json', ...words], { cwd })).out)
}

async function outputOf(cwd: string, ...words: string[]): Promise<string> {
	const ended = await barstave(words, { cwd })
	expect(ended).toMatchObject({ status: 0, said: '' })
	return ended.out
}

async function pdfOf(cwd: string, ...words: string[]) {
	const out = path.join(await temporaryFolder(), 'sheet.pdf')
	const ended = await barstave(['sheet', 'mara-autumn', '--format', 'pdf', '--out', out, ...words], { cwd })
	expect(ended).toMatchObject({ status: 0, out: '' })
	return { ...(await readPdf(await readFile(out))), said: ended.said }
}

const rowsOf = (csv: string): Record<string, string>[] => parse(csv, { bom: true, columns: true, record_delimiter: '\r\n' })
const eventsOf = (text: string) => new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent')
const idsOf = (text: string) => eventsOf(text).map(event => String(event.getFirstPropertyValue('uid')))

describe('a sheet', () => {
	test('is the same in every format, whole or of one week', async () => {
		const cwd = await workspaceOf(texts)
		for (const words of [[], ['--week', '2']]) {
			const { sessions } = await sheetOf(cwd, ...words)
			const rows = rowsOf(await outputOf(cwd, 'sheet', 'mara-autumn', '--format', 'csv', ...words))
			const sets = sessions.flatMap(session => session.items.flatMap(item => item.sets))
			expect(rows.filter(row => row.Set !== '').map(row => [row.Load, row.Reps])).toEqual(
				sets.map(set => [set.load ?? '', String(set.reps?.from ?? '')]),
			)
			const events = eventsOf(await outputOf(cwd, 'sheet', 'mara-autumn', '--format', 'ics', ...words))
			expect(events.map(event => String(event.getFirstPropertyValue('dtstart')))).toEqual(sessions.map(session => session.date))
			const { pages } = await pdfOf(cwd, ...words)
			expect(pages.map(page => /Week \d of 5/.exec(page.text)?.[0])).toEqual(
				[...new Set(sessions.map(session => session.planWeek))].map(week => `Week ${week} of 5`),
			)
		}
	})

	test('as a calendar keeps its ids while loads, days and the rest of the plan change', async () => {
		const calendarOf = async (change: Record<string, string>) =>
			outputOf(await workspaceOf({ ...texts, ...change }), 'sheet', 'mara-autumn', '--format', 'ics')
		const before = await calendarOf({})
		expect(idsOf(before)[0]).toBe('mara-autumn.hinge-rebuild-1.week-1.heavy-pull@mara-lind.barstave')
		const heavier = await calendarOf({ 'lifter.stave': texts['lifter.stave']!.replace('160 kg', '170 kg') })
		expect(heavier).not.toBe(before)
		expect(idsOf(heavier)).toEqual(idsOf(before))
		const later = await calendarOf({ 'plan.stave': texts['plan.stave']!.replace('start 2026-10-05', 'start 2026-10-12') })
		expect(idsOf(later)).toEqual(idsOf(before))
		const longer = await calendarOf({ 'plan.stave': `${texts['plan.stave']!.trimEnd()}\n  run hinge-rebuild\n` })
		expect(idsOf(longer).slice(0, idsOf(before).length)).toEqual(idsOf(before))
		expect(new Set(idsOf(longer)).size).toBe(2 * idsOf(before).length)
	})

	describe('as a calendar with the times at which sessions begin', () => {
		/** One session in the morning, one in the evening, one on no part of the day, and another day. */
		const twice = {
			'plan.stave': `plan twice for mara-lind
  start 2026-10-05
  run twice-a-day

lifter mara-lind "Mara Lind"
  best deadlift 160 kg on 2026-09-12

block twice-a-day "Twice a day"
  weeks 2
  session pull "Pull" on monday morning
    main deadlift 4 x 5 at 70%
  session trunk "Trunk" on monday evening
    accessory plank 10 x 60 s rest 60 s
  session walk "Walk" on monday, saturday
    accessory suitcase-hold 3 x 30 s
`,
		}
		const calendarOf = async (cwd: string, ...words: string[]) => outputOf(cwd, 'sheet', 'twice', '--format', 'ics', ...words)
		const timesOf = (text: string) =>
			eventsOf(text).map(event => ['summary', 'dtstart', 'dtend'].map(name => String(event.getFirstPropertyValue(name))))

		test('has the sessions of whose part of the day it is said when it begins there, and the others all day', async () => {
			const cwd = await workspaceOf(twice)
			const { sessions } = resultBySchema<LoadSheet>('sheet', await outputOf(cwd, 'sheet', 'twice', '--format', 'json'))
			const file = await calendarOf(cwd, '--week', '1', '--begin', 'morning 7:00, evening 11:50 pm, saturday 10:00')
			const length = (name: string) => sessions.find(one => one.session === name)!.minutes * 60
			expect(timesOf(file)).toEqual([
				['Pull (morning)', '2026-10-05T07:00:00', expect.stringMatching(/^2026-10-05T07:/)],
				['Walk', '2026-10-05', '2026-10-06'],
				// Ten minutes of holds, and the rests between them: past midnight.
				['Trunk (evening)', '2026-10-05T23:50:00', '2026-10-06T00:09:00'],
				['Walk', '2026-10-10T10:00:00', expect.stringMatching(/^2026-10-10T10:/)],
			])
			const lengths = eventsOf(file).map(event => {
				const [end, start] = ['dtend', 'dtstart'].map(name => event.getFirstPropertyValue(name) as InstanceType<typeof ICAL.Time>)
				return end!.subtractDate(start!).toSeconds()
			})
			expect(lengths).toEqual([length('pull'), 86_400, length('trunk'), length('walk')])
		})

		test('keeps the ids of the calendar without them', async () => {
			const cwd = await workspaceOf(twice)
			const [plain, timed] = [await calendarOf(cwd), await calendarOf(cwd, '--begin', '17:30, morning 7:00')]
			expect(timed).not.toBe(plain)
			expect(idsOf(timed)).toEqual(idsOf(plain))
			expect(idsOf(timed)).toContain('twice.twice-a-day-1.week-1.walk@mara-lind.barstave')
		})

		test('says the same times wherever it is made, with whole lines of the format', async () => {
			const cwd = await workspaceOf(twice)
			const words = ['sheet', 'twice', '--format', 'ics', '--begin', '17:30, morning 7:00, evening 18:30']
			const [here, ...elsewhere] = await Promise.all(
				['UTC', 'America/New_York', 'Pacific/Auckland'].map(TZ => barstave(words, { cwd, env: { TZ } })),
			)
			for (const one of elsewhere) expect(one).toEqual(here)
			const lines = here!.out.split('\r\n')
			expect(lines.pop()).toBe('')
			expect(lines).toContain('DTSTART:20261005T173000')
			for (const line of lines) {
				expect(line).not.toMatch(/[\r\n]/)
				expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75)
			}
		})

		test('is the only one with such times', async () => {
			const cwd = await workspaceOf(twice)
			for (const format of ['text', 'json', 'html', 'csv', 'pdf'])
				expect(await barstave(['sheet', 'twice', '--format', format, '--begin', '17:30'], { cwd })).toEqual({
					status: 2,
					out: '',
					said: 'Only a calendar says when sessions begin: --begin goes with --format ics.\n',
				})
		})
	})

	test('goes into a file or a pipe as it is, and a PDF never to a terminal', async () => {
		const cwd = await workspaceOf(texts)
		const folder = await temporaryFolder()
		for (const format of ['csv', 'ics']) {
			const out = path.join(folder, `sheet.${format}`)
			expect(await barstave(['sheet', 'mara-autumn', '--format', format, '--out', out], { cwd })).toMatchObject({
				status: 0,
				out: '',
			})
			expect(await readFile(out, 'utf8')).toBe(await outputOf(cwd, 'sheet', 'mara-autumn', '--format', format))
		}
		const sheet = `${process.execPath} ${await builtProgram()} sheet mara-autumn --format pdf`
		// The program `script` runs a command on a terminal of its own.
		const run = promisify(execFile)('script', ['-qec', sheet, '/dev/null'], { cwd })
		await expect(run).rejects.toMatchObject({
			code: 2,
			stdout: expect.stringMatching(/^This is no text.*--out sheet\.pdf\.\s*$/),
		})
		const piped = await promisify(execFile)('sh', ['-c', `${sheet} | head -c 5`], { cwd })
		expect(piped.stdout).toBe('%PDF-')
	})

	test('as a PDF is on the paper that was asked for; no other format has one', async () => {
		const cwd = await workspaceOf(texts)
		expect((await pdfOf(cwd)).pages[0]).toMatchObject({ width: 595.28 })
		expect((await pdfOf(cwd, '--paper', 'letter')).pages[0]).toMatchObject({ width: 612, height: 792 })
		expect(await barstave(['sheet', 'mara-autumn', '--paper', 'letter'], { cwd })).toMatchObject({
			status: 2,
			out: '',
			said: 'Only a PDF has a size of paper: --paper goes with --format pdf.\n',
		})
	})

	test('whose texts have errors is written all the same, and says so', async () => {
		const note = /^Note: "barstave check" finds \d+ errors? in the texts/
		for (const format of ['csv', 'ics']) {
			const ended = await barstave(['sheet', 'mara-autumn', '--format', format], { cwd: languagePage })
			expect(ended).toMatchObject({ status: 0, said: expect.stringMatching(note) })
			expect(ended.out.length).toBeGreaterThan(1000)
		}
		const { pages, said } = await pdfOf(languagePage)
		expect(said).toMatch(note)
		expect(pages[0]!.text).toMatch(/\d errors? in the texts that this is made of/)
	})

	test('of a plan without a session is empty, and no calendar', async () => {
		const cwd = await workspaceOf({ 'plan.stave': 'plan mara-autumn for mara-lind\n' })
		expect(rowsOf((await barstave(['sheet', 'mara-autumn', '--format', 'csv'], { cwd })).out)).toEqual([])
		expect(await barstave(['sheet', 'mara-autumn', '--format', 'ics'], { cwd })).toMatchObject({
			status: 2,
			out: '',
			said: expect.stringMatching(/^There are no sessions, so there is no calendar\.$/m),
		})
		expect((await pdfOf(cwd)).pages.map(page => page.text)).toEqual([expect.stringContaining('There is nothing to do')])
	})

	test('of a team is a calendar of each who has sessions then', async () => {
		const block = 'block pull "Pull"\n  weeks 2\n  session a on monday\n    accessory plank 3 x 30 s\n'
		const team = 'lifter ann "Ann"\nlifter bo "Bo"\nteam firsts "Firsts"\n  members ann, bo\n'
		const plan = 'plan winter "Winter" for firsts\n  start 2027-01-04\n  run pull\n'
		const away = '  for bo\n    pause 2027-01-04 to 2027-01-10 because "away"\n'
		const cwd = await workspaceOf({ 'club.stave': block + team + plan + away })
		const words = ['sheet', 'winter', '--format', 'ics', '--out', 'out/', '--week']
		expect(await barstave([...words, '1'], { cwd })).toMatchObject({
			status: 0,
			said: '"winter/bo" has no sessions in week 1, so there is no calendar of it.\n',
		})
		expect(readdirSync(path.join(cwd, 'out'))).toEqual(['winter-ann.ics'])
		expect(await barstave([...words, '2'], { cwd })).toMatchObject({ status: 0, said: '' })
		expect(readdirSync(path.join(cwd, 'out')).sort()).toEqual(['winter-ann.ics', 'winter-bo.ics'])
	})

	test('tells in its help what each format is for', async () => {
		const { out } = await barstave(['sheet', '--help'])
		for (const format of ['text', 'json', 'html', 'csv', 'ics', 'pdf'])
			expect(out).toMatch(new RegExp(`^${format} +(for|one|to) `, 'm'))
	})
})

test('a volume is a table of a plan with its loads, and of a block in percents', async () => {
	const cwd = await workspaceOf(texts)
	const plan = rowsOf(await outputOf(cwd, 'volume', 'mara-autumn', '--format', 'csv'))
	// 4 sets of 5 at 112.5 kg.
	expect(plan.find(row => row.Name === 'deadlift' && row.Figure === 'Tonnage')).toMatchObject({
		Week: '1',
		Monday: '2026-10-05',
		Block: 'Hinge rebuild',
		Unit: 'kg',
		From: '2250',
		To: '2250',
	})
	const block = rowsOf(await outputOf(cwd, 'volume', 'hinge-rebuild', '--format', 'csv'))
	// 20 reps × 70.
	expect(block.find(row => row.Name === 'deadlift' && row.Figure === 'Sets × reps × percent')).toMatchObject({
		From: '1400',
		Monday: '',
	})
	expect(block.some(row => row.Figure === 'Tonnage')).toBe(false)
})
