import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises'
import path from 'node:path'
import { describe, expect, test } from 'vitest'
import type { LoadSheet } from '../../../language/reports/load-sheet.ts'
import { barstave, temporaryFolder } from './support/program.ts'
import { resultBySchema } from './support/result.ts'
import { workspaceOf } from './support/workspace.ts'

async function started(): Promise<string> {
	const cwd = path.join(await temporaryFolder(), 'new', 'club')
	const ended = await barstave(['start', cwd])
	expect(ended).toMatchObject({ status: 0, said: '' })
	return cwd
}

describe('start', () => {
	test('writes gym, lifter, block and plan, each with a word on what to change', async () => {
		const cwd = await started()
		expect((await readdir(cwd)).sort()).toEqual(['block.stave', 'gym.stave', 'lifter.stave', 'plan.stave'])
		for (const name of await readdir(cwd)) expect(await readFile(path.join(cwd, name), 'utf8')).toMatch(/^\/\/ [1-4]\. /)
	})

	test('what it writes checks with nothing to report at all', async () => {
		const cwd = await started()
		const ended = await barstave(['check', '--format', 'json', '--fail-on', 'info'], { cwd })
		expect(resultBySchema('check', ended.out)).toMatchObject({ files: 4, problems: [] })
		expect(ended).toMatchObject({ status: 0, said: '' })
	})

	test('what it writes has every load, and runs as the commands that it names', async () => {
		const cwd = await started()
		const sheet = resultBySchema<LoadSheet>('sheet', (await barstave(['sheet', 'first-plan', '--format', 'json'], { cwd })).out)
		const sets = sheet.sessions.flatMap(session => session.items.flatMap(item => item.sets))
		expect(sheet.sessions).toHaveLength(8)
		expect(sets.filter(set => set.reason !== null)).toEqual([])
		const named = (await barstave(['start', path.join(cwd, 'again')])).out.match(/barstave .+/g)!
		for (const line of named) expect((await barstave(line.split(' ').slice(1))).status).toBe(0)
	})

	test('what it invites to do is answered: taking the rows out is reported', async () => {
		const cwd = await started()
		const block = await readFile(path.join(cwd, 'block.stave'), 'utf8')
		const poorer = block.replace(/^.*(strict-bent-row|plank).*\n(?:\s+each week.*\n)?/gm, '')
		await writeFile(path.join(cwd, 'block.stave'), poorer)
		const ended = await barstave(['check', '--format', 'json'], { cwd })
		expect(resultBySchema('check', ended.out).problems.map(problem => problem.code)).toContain('missing-stability-work')
	})

	test('refuses a folder that is not empty, and touches nothing there', async () => {
		const cwd = await workspaceOf({ 'mine.txt': 'mine' })
		expect(await barstave(['start', '.'], { cwd })).toMatchObject({
			status: 2,
			out: '',
			said: expect.stringContaining('not empty'),
		})
		expect(await readdir(cwd)).toEqual(['mine.txt'])
		const file = await barstave(['start', path.join(cwd, 'mine.txt')])
		expect(file).toMatchObject({ status: 2, out: '' })
		expect(await readFile(path.join(cwd, 'mine.txt'), 'utf8')).toBe('mine')
	})

	test('takes an empty folder that is there', async () => {
		const cwd = await temporaryFolder()
		await mkdir(path.join(cwd, 'empty'))
		expect((await barstave(['start', 'empty'], { cwd })).status).toBe(0)
	})
})
