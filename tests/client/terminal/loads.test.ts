import { readdirSync, readFileSync } from 'node:fs'
import { readdir, readFile } from 'node:fs/promises'
import path from 'node:path'
import stringWidth from 'string-width'
import { describe, expect, test } from 'vitest'
import type { LoadSheet } from '../../../language/reports/load-sheet.ts'
import type { WeeklyVolume } from '../../../language/reports/weekly-volume.ts'
import { barstave, root, temporaryFolder } from './support/program.ts'
import { resultBySchema } from './support/result.ts'
import { sound, withError, workspaceOf } from './support/workspace.ts'

/** The plan that the language's own pages show, with its lifter, block and gym. */
const languagePage = path.join(import.meta.dirname, 'language-page')
const club = path.join(root, 'examples/club')
const clubPlans = readdirSync(path.join(club, 'plans')).map(name => path.basename(name, '.stave'))

async function json<T>(command: 'sheet' | 'volume', name: string, cwd: string, ...words: string[]): Promise<T> {
	const ended = await barstave([command, name, '--format', 'json', ...words], { cwd })
	expect(ended.status, ended.said).toBe(0)
	return resultBySchema<T>(command, ended.out)
}

describe('sheet', () => {
	test('the first session is the one of the documented contract', async () => {
		const sheet = await json<LoadSheet>('sheet', 'mara-autumn', languagePage)
		expect(sheet).toMatchObject({ version: 1, plan: 'mara-autumn', lifter: 'mara-lind', unit: 'kg' })
		const [session] = sheet.sessions
		expect(session).toMatchObject({
			date: '2026-10-05',
			weekday: 'monday',
			block: 'hinge-rebuild',
			week: 1,
			session: 'heavy-pull',
		})
		expect(session?.items[0]).toMatchObject({ movement: 'deadlift', title: 'Deadlift', role: 'main' })
		// 70 % of 160 kg is 112 kg. The bar of 20 kg with collars of 2.5 kg and 25 + 20 kg a side is 112.5 kg, the nearest that there is.
		const set = {
			optional: false,
			reps: { from: 5, to: 5 },
			openEnded: false,
			seconds: null,
			metres: null,
			eachSide: false,
			percent: { from: '70', to: '70' },
			of: 'best',
			rpe: null,
			rir: null,
			exact: '112',
			load: '112.5',
			loadTo: null,
			unit: 'kg',
			perSide: ['25', '20'],
			reason: null,
			tempo: null,
			restSeconds: 180,
		}
		expect(session?.items[0]?.sets).toMatchObject([set, set, set, set])
	})

	test('a swapped movement has no load of its own, and says why', async () => {
		const { sessions } = await json<LoadSheet>('sheet', 'mara-autumn', languagePage)
		const row = sessions[0]?.items[1]
		expect(row).toMatchObject({ movement: 'chest-supported-row', insteadOf: 'Strict bent-over row' })
		expect(row?.sets).toHaveLength(6)
		for (const set of row!.sets)
			expect(set).toMatchObject({ load: null, reason: expect.stringContaining('Strict bent-over row') })
	})

	test('one set more where the text leaves room: the fourth is optional', async () => {
		const cwd = await workspaceOf({
			...textsOf(languagePage),
			'block.stave': textAt('block.stave').replace('3 x 30 s rest', '3-4 x 30 s rest'),
		})
		const { sessions } = await json<LoadSheet>('sheet', 'mara-autumn', cwd)
		expect(sessions[0]?.items[2]?.sets.map(set => set.optional)).toEqual([false, false, false, true])
	})

	test('--week keeps one week; one that the plan does not have is wrong usage', async () => {
		const whole = await json<LoadSheet>('sheet', 'mara-autumn', languagePage)
		const second = await json<LoadSheet>('sheet', 'mara-autumn', languagePage, '--week', '2')
		expect(second.sessions).toEqual(whole.sessions.filter(session => session.planWeek === 2))
		expect(second.sessions).toHaveLength(2)
		for (const week of ['99', '0', 'two']) {
			expect(await barstave(['sheet', 'mara-autumn', '--week', week], { cwd: languagePage })).toMatchObject({
				status: 2,
				out: '',
			})
		}
	})

	test('for people: a table for each session, in one set of columns, with the caution under it', async () => {
		const { out, status } = await barstave(['sheet', 'mara-autumn', '--week', '1'], { cwd: languagePage })
		expect(status).toBe(0)
		expect(out).toContain('  Monday 2026-10-05  Heavy pull  about 33 min · North Hall\n')
		expect(out).toMatch(/\n {4}Deadlift +4 × 5 +112\.5 kg +25 \+ 20 +70% +3 min\n/)
		expect(out).toMatch(/\n {4}Suitcase hold +3 × 30 s each side +24 kg +90 s\n/)
		expect(out).toContain('no medical advice')
		const heads = out.split('\n').filter(line => line.trim().startsWith('Movement'))
		expect(heads).toHaveLength(2)
		expect(new Set(heads).size).toBe(1)
		const column = heads[0]!.indexOf('Load') + 'Load'.length
		for (const line of out.split('\n').filter(line => / kg /.test(line.slice(0, column + 1)))) {
			expect(line.slice(0, column)).toMatch(/ kg$/)
		}
	})

	test('columns stand under each other by display width', async () => {
		const cwd = await workspaceOf({
			...textsOf(languagePage),
			'own.stave': 'movement deadlift "デッドリフト 🏋️"\n  equipment barbell\n',
		})
		const { out } = await barstave(['sheet', 'mara-autumn', '--week', '1'], { cwd })
		const ends = out
			.split('\n')
			.filter(line => /kg/.test(line) && /^ {4}\S/.test(line))
			.map(line => stringWidth(line.slice(0, line.indexOf('kg'))))
		expect(ends.length).toBeGreaterThan(3)
		expect(new Set(ends).size).toBe(1)
	})

	test('--out writes the very result into a file, and nothing else', async () => {
		const out = path.join(await temporaryFolder(), 'sheet.json')
		const ended = await barstave(['sheet', 'mara-autumn', '--format', 'json', '--out', out], { cwd: languagePage })
		expect(ended).toMatchObject({ status: 0, out: '' })
		expect(await readFile(out, 'utf8')).toBe(
			(await barstave(['sheet', 'mara-autumn', '--format', 'json'], { cwd: languagePage })).out,
		)
		expect(await readdir(path.dirname(out))).toEqual(['sheet.json'])
		const nowhere = await barstave(['sheet', 'mara-autumn', '--out', path.join(out, 'x')], { cwd: languagePage })
		expect(nowhere).toMatchObject({ status: 2, out: '', said: expect.stringContaining('cannot be written') })
	})

	test('names the nearest plan, or those that there are', async () => {
		expect(await barstave(['sheet', 'mara-autum'], { cwd: languagePage })).toMatchObject({
			status: 2,
			out: '',
			said: 'No plan is called "mara-autum". Did you mean "mara-autumn"?\n',
		})
		const other = await barstave(['sheet', 'winter'], { cwd: languagePage })
		expect(other).toMatchObject({ status: 2, said: expect.stringContaining('mara-autumn') })
	})

	test('says beside the sheet that its texts have errors; other texts do not matter', async () => {
		const clean = await workspaceOf({
			...textsOf(languagePage),
			'plan.stave': textAt('plan.stave').replace('  run peak-three\n', ''),
			'other.stave': withError,
		})
		expect(await barstave(['sheet', 'mara-autumn'], { cwd: clean })).toMatchObject({ status: 0, said: '' })
		const ended = await barstave(['sheet', 'mara-autumn', '--format', 'json'], { cwd: languagePage })
		expect(ended.said).toMatch(/^Note: "barstave check" finds \d+ errors? in the texts/)
	})

	test('a plan without any session says so', async () => {
		const cwd = await workspaceOf({ 'a.stave': sound, 'plan.stave': 'plan empty for nobody\n' })
		expect(await barstave(['sheet', 'empty'], { cwd })).toMatchObject({
			status: 0,
			out: expect.stringContaining('nothing to do'),
		})
	})
})

describe('volume', () => {
	test('adds up a plan as the documented contract says', async () => {
		const volume = await json<WeeklyVolume>('volume', 'mara-autumn', languagePage)
		const [week] = volume.weeks
		expect(week).toMatchObject({ week: 1, blockWeek: 1, from: '2026-10-05', sessions: 2 })
		// 4 sets of 5 at 112.5 kg; the intensity is what the text asks for.
		expect(week?.lifts.deadlift).toMatchObject({
			sessions: 1,
			sets: 4,
			reps: { low: 20, high: 20 },
			tonnage: { low: '2250', high: '2250' },
			averagePercent: '70',
			topPercent: '70',
		})
		// The six sets of rows have no load of their own, and are never counted as 0.
		expect(week?.excludedSets).toBeGreaterThanOrEqual(6)
	})

	test('adds up a block without a lifter in percents', async () => {
		const volume = await json<WeeklyVolume>('volume', 'hinge-rebuild', languagePage)
		expect(volume.weeks).toHaveLength(5)
		// 20 reps × 70.
		expect(volume.weeks[0]?.lifts.deadlift).toMatchObject({ tonnage: null, relative: { low: '1400', high: '1400' } })
		expect(volume.weeks[0]).toMatchObject({ from: null, week: 1 })
	})

	test('for people: weeks side by side, the same figures', async () => {
		const { out, status } = await barstave(['volume', 'mara-autumn'], { cwd: languagePage })
		expect(status).toBe(0)
		expect(out).toMatch(/\nTonnage in kg +week 1 +week 2 +week 3 +week 4 +week 5\nDeadlift +2250 +2300 /)
		for (const line of out.split('\n')) expect(stringWidth(line)).toBeLessThanOrEqual(120)
	})

	test('no line is too long where there are many weeks', async () => {
		const block = `block long "Long"\n  weeks 30\n  session day-one on monday\n    main deadlift 10-12 x 10-12 at 70%\n`
		const { out } = await barstave(['volume', 'long'], { cwd: await workspaceOf({ 'a.stave': block }) })
		for (const line of out.split('\n')) expect(stringWidth(line)).toBeLessThanOrEqual(120)
		for (let week = 1; week <= 30; week++) expect(out).toContain(`week ${week} `.trimEnd())
	})
})

describe('every plan of the example club', () => {
	test.each(clubPlans)('%s has a sheet and a volume, for people and for machines', async plan => {
		const sheet = await json<LoadSheet>('sheet', plan, club)
		const volume = await json<WeeklyVolume>('volume', plan, club)
		expect(sheet.sessions.length).toBeGreaterThan(0)
		expect(volume.weeks.length).toBe(Math.max(...sheet.sessions.map(session => session.planWeek)))
		for (const words of [
			['sheet', plan],
			['volume', plan],
		]) {
			expect(await barstave(words, { cwd: club })).toMatchObject({
				status: 0,
				said: '',
				out: expect.stringContaining('no medical advice'),
			})
		}
	})
})

describe('pages', () => {
	test('hold the same loads, need nothing else, and run nothing', async () => {
		const title = 'block hinge-rebuild "<script>alert(1)</script>"'
		const cwd = await workspaceOf({
			...textsOf(languagePage),
			'block.stave': textAt('block.stave').replace('block hinge-rebuild "Hinge rebuild"', title),
		})
		const { out, status } = await barstave(['sheet', 'mara-autumn', '--format', 'html'], { cwd })
		expect(status).toBe(0)
		expect(out.slice(0, 15)).toBe('<!doctype html>')
		// Addresses within the page are its charts' own.
		expect(out.match(/<script|src=|<link|url\((?!#)/gi)).toBeNull()
		for (const words of ['112.5', '&lt;script']) expect(out.includes(words), words).toBe(true)
		expect(out.includes(path.basename(cwd))).toBe(false)
	})

	test('of one week hold that week alone; of the volume hold no sheet', async () => {
		const week = await barstave(['sheet', 'mara-autumn', '--format', 'html', '--week', '2'], { cwd: languagePage })
		expect([week.out.includes('2026-10-12'), week.out.includes('2026-10-19')]).toEqual([true, false])
		const volume = await barstave(['volume', 'mara-autumn', '--format', 'html'], { cwd: languagePage })
		expect([volume.out.includes('Weekly volume'), volume.out.includes('Discs a side')]).toEqual([true, false])
		const block = await barstave(['volume', 'hinge-rebuild', '--format', 'html'], { cwd: languagePage })
		expect([block.status, block.out.includes('Weekly volume')]).toEqual([0, true])
	})
})

function textAt(name: string): string {
	return readFileSync(path.join(languagePage, name), 'utf8')
}

function textsOf(folder: string): Record<string, string> {
	return Object.fromEntries(readdirSync(folder).map(name => [name, readFileSync(path.join(folder, name), 'utf8')]))
}
