import { readdir, readFile } from 'node:fs/promises'
import path from 'node:path'
import { describe, expect, test } from 'vitest'
import type { LoadSheet } from '../../../language/reports/load-sheet.ts'
import type { WeeklyVolume } from '../../../language/reports/weekly-volume.ts'
import { barstave } from './support/program.ts'
import { resultBySchema } from './support/result.ts'
import { workspaceOf } from './support/workspace.ts'

const club = {
	'people.stave': `lifter mara-lind "Mara Lind"
  best deadlift 160 kg on 2026-09-12

lifter per-holst "Per Holst"
  best deadlift 200 kg on 2026-09-12

team first-platform "First platform"
  members mara-lind, per-holst
`,
	'plan.stave': `block pull "Pull"
  weeks 2
  session heavy-pull "Heavy pull" on monday
    main deadlift 4 x 5 at 70%

plan winter "Winter" for first-platform
  start 2 weeks before 2026-12-19
  run pull
`,
}

describe('a plan for a team', () => {
	test('is asked for by the member', async () => {
		const cwd = await workspaceOf(club)
		const sheet = await barstave(['sheet', 'winter/per-holst', '--format', 'json'], { cwd })
		const data = resultBySchema<LoadSheet>('sheet', sheet.out)
		// 2026-12-19 is in the week of monday 12-14; two weeks before it is 11-30.
		expect(data).toMatchObject({
			plan: 'winter/per-holst',
			lifter: 'per-holst',
			sessions: [{ date: '2026-11-30' }, { date: '2026-12-07' }],
		})
		const volume = await barstave(['volume', 'winter/mara-lind', '--format', 'json'], { cwd })
		expect(resultBySchema<WeeklyVolume>('volume', volume.out)).toMatchObject({ of: 'winter/mara-lind' })
		const why = await barstave(['why', 'winter/per-holst', '2026-11-30', 'deadlift'], { cwd })
		// 70% of 200 kg.
		expect(why.out).toContain('140 kg')
	})

	test('by its own name gives the sheets of all members, one after the other', async () => {
		const { out, status } = await barstave(['sheet', 'winter', '--week', '1'], { cwd: await workspaceOf(club) })
		expect(status).toBe(0)
		expect(out.match(/^Winter · .*$/gm)).toEqual(['Winter · Mara Lind', 'Winter · Per Holst'])
	})

	test('is called by its name where it has no title, and by the title of the member', async () => {
		const untitled = { ...club, 'plan.stave': club['plan.stave'].replace('plan winter "Winter"', 'plan late-winter') }
		const { out } = await barstave(['sheet', 'late-winter/per-holst', '--week', '1'], { cwd: await workspaceOf(untitled) })
		expect(out).toMatch(/^Late winter · Per Holst$/m)
	})

	test('by its own name gives a file for each member, in a folder', async () => {
		const cwd = await workspaceOf(club)
		for (const words of [
			['sheet', 'winter', '--format', 'pdf', '--out', 'to hand out/'],
			['sheet', 'winter', '--out', 'to hand out'],
			['volume', 'winter', '--format', 'csv', '--out', 'to hand out'],
		]) {
			expect(await barstave(words, { cwd })).toEqual({ status: 0, out: '', said: '' })
		}
		expect((await readdir(path.join(cwd, 'to hand out'))).sort()).toEqual(
			['csv', 'pdf', 'txt'].flatMap(ending => [`winter-mara-lind.${ending}`, `winter-per-holst.${ending}`]).sort(),
		)
		expect(await readFile(path.join(cwd, 'to hand out', 'winter-per-holst.txt'), 'utf8')).toMatch(/^Winter · Per Holst$/m)
	})

	test('by its own name adds up for each member', async () => {
		const { out } = await barstave(['volume', 'winter'], { cwd: await workspaceOf(club) })
		expect(out.match(/^Winter · .*$/gm)).toEqual(['Winter · Mara Lind: weekly volume', 'Winter · Per Holst: weekly volume'])
	})

	test('by its own name says whose there are, where one lifter’s is wanted', async () => {
		const cwd = await workspaceOf(club)
		for (const words of [
			['sheet', 'winter', '--format', 'json'],
			['volume', 'winter', '--format', 'csv'],
			['why', 'winter', '2026-11-30', 'deadlift'],
		]) {
			const { said, status } = await barstave(words, { cwd })
			expect(status).toBe(2)
			expect(said).toContain('winter/mara-lind, winter/per-holst')
		}
		const file = await barstave(['sheet', 'winter', '--format', 'pdf', '--out', 'winter.pdf'], { cwd })
		expect(file.said).toContain('Or have a file for each of them in a folder: --out FOLDER/')
		const { said } = await barstave(['sheet', 'winter/per-hols'], { cwd })
		expect(said).toContain('Did you mean "winter/per-holst"?')
	})
})
