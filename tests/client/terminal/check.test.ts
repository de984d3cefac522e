import { mkdir, symlink, writeFile } from 'node:fs/promises'
import path from 'node:path'
import { describe, expect, test } from 'vitest'
import { barstave, startBarstave } from './support/program.ts'
import { inShort, resultBySchema } from './support/result.ts'
import { sound, withError, withHint, withWarning, workspaceOf } from './support/workspace.ts'

async function checkedJson(cwd: string, ...words: string[]) {
	const ended = await barstave(['check', '--format', 'json', ...words], { cwd })
	return { ...ended, result: resultBySchema('check', ended.out) }
}

const renamed = (text: string, name: string) => text.replace('first-steps', name)

describe('the status', () => {
	test.each([
		{ text: sound, level: 'error', status: 0 },
		{ text: sound, level: 'info', status: 0 },
		{ text: withHint, level: 'info', status: 0 },
		{ text: withWarning, level: 'error', status: 0 },
		{ text: withWarning, level: 'warning', status: 1 },
		{ text: withWarning, level: 'info', status: 1 },
		{ text: withError, level: 'error', status: 1 },
		{ text: withError, level: 'info', status: 1 },
	])('is $status from level $level on', async ({ text, level, status }) => {
		const cwd = await workspaceOf({ 'a.stave': text })
		expect((await barstave(['check', '--fail-on', level], { cwd })).status).toBe(status)
	})

	test('is 2 where nothing is found to check, unless that is allowed', async () => {
		const cwd = await workspaceOf({ 'notes.txt': 'no training text' })
		const ended = await barstave(['check'], { cwd })
		expect(ended).toMatchObject({ status: 2, out: '' })
		expect(ended.said).toContain('no training texts')
		const allowed = await checkedJson(cwd, '--allow-empty')
		expect(allowed.status).toBe(0)
		expect(allowed.result.files).toBe(0)
	})

	test.each([
		[['check', '--formt', 'json'], '--formt'],
		[['check', '--format', 'yaml'], 'yaml'],
		[['check', '--fail-on', 'hint'], 'hint'],
		[['check', '--today', '2026-02-30'], 'A date is written like'],
		[['check', '--shard', '5/4'], 'A part is written like'],
		[['check', '--fix', '--stdin'], '--fix'],
		[['check', '--fix', '-'], 'Standard input'],
		[['check', 'missing.stave'], 'no such file'],
		[['check', 'notes.txt'], 'not a training text'],
		[['check', '.hidden/h.stave'], 'hidden'],
		[['check', '..'], 'outside the workspace'],
		[['check', '--workspace', 'nowhere'], 'no such file or folder'],
		[['check', '--workspace', 'a.stave'], 'not a folder'],
		[['check', '--merge', 'notes.txt'], 'not a result'],
		[['chek'], 'chek'],
		[[], 'Usage'],
	])('is 2 for %j, and nothing is printed as a result', async (words, said) => {
		const cwd = await workspaceOf({ 'a.stave': sound, 'notes.txt': 'no training text', '.hidden/h.stave': sound })
		const ended = await barstave(words, { cwd })
		expect(ended).toMatchObject({ status: 2, out: '' })
		expect(ended.said).toContain(said)
		expect(ended.said).not.toMatch(/\n\s+at /)
	})

	test('is 0 for help and for the version', async () => {
		expect(await barstave(['--version'])).toMatchObject({ status: 0, out: expect.stringMatching(/^\d+\.\d+\.\d+\n$/) })
		expect(await barstave(['check', '--help'])).toMatchObject({ status: 0, out: expect.stringContaining('--fail-on') })
	})
})

describe('which files are read', () => {
	test('all below the folder, hidden ones and what npm installs apart', async () => {
		const cwd = await workspaceOf({
			'a.stave': renamed(withError, 'a'),
			'deep/er/b.stave': renamed(withError, 'b'),
			'.hidden/c.stave': renamed(withError, 'c'),
			'.d.stave': renamed(withError, 'd'),
			'node_modules/pack/e.stave': renamed(withError, 'e'),
			'f.stave.txt': renamed(withError, 'f'),
		})
		const { result } = await checkedJson(cwd)
		expect(result.files).toBe(2)
		expect(inShort(result)).toEqual(['a.stave 4:15 unknown-name error', 'deep/er/b.stave 4:15 unknown-name error'])
	})

	test('linked files by the names of their links; a link that leads nowhere cannot be opened, the rest is checked', async () => {
		const elsewhere = await workspaceOf({ 'real.stave': withError })
		const cwd = await workspaceOf({ 'a.stave': sound.replace('first-steps', 'other-steps') })
		await symlink(path.join(elsewhere, 'real.stave'), path.join(cwd, 'link.stave'))
		expect(inShort((await checkedJson(cwd)).result)).toEqual(['link.stave 4:15 unknown-name error'])
		await symlink(path.join(elsewhere, 'gone.stave'), path.join(cwd, 'broken.stave'))
		const ended = await checkedJson(cwd)
		expect(ended.status).toBe(2)
		expect(ended.said).toContain('"broken.stave" cannot be opened')
		expect(inShort(ended.result)).toEqual(['link.stave 4:15 unknown-name error'])
	})

	test('paths choose what is shown, never what is read', async () => {
		const cwd = await workspaceOf({
			'blocks/a.stave': renamed(withError, 'a').replace('no-such-movement', 'own-hold'),
			'blocks/b.stave': renamed(withWarning, 'b'),
			'own.stave': 'movement own-hold "Own hold"\n',
			'c.stave': renamed(withError, 'c'),
		})
		expect(inShort((await checkedJson(cwd, 'blocks')).result)).toEqual(['blocks/b.stave 4:5 role-not-allowed warning'])
		expect(inShort((await checkedJson(cwd, 'blocks/a.stave', './c.stave')).result)).toEqual(['c.stave 4:15 unknown-name error'])
		expect((await checkedJson(cwd, path.join(cwd, 'c.stave'), 'c.stave')).result.files).toBe(1)
		// Paths are meant from the current folder, and shown from the workspace.
		const below = await checkedJson(path.join(cwd, 'blocks'), '--workspace', '..', 'b.stave')
		expect(inShort(below.result)).toEqual(['blocks/b.stave 4:5 role-not-allowed warning'])
	})

	test('a folder that ends like a text is a folder', async () => {
		const cwd = await workspaceOf({ 'a.stave': sound })
		await mkdir(path.join(cwd, 'odd.stave'))
		await writeFile(path.join(cwd, 'odd.stave', 'b.stave'), renamed(withError, 'b'))
		expect(inShort((await checkedJson(cwd)).result)).toEqual(['odd.stave/b.stave 4:15 unknown-name error'])
	})
})

describe('the result', () => {
	test('is in the order of path, line, column, code, whatever the order of the disk', async () => {
		const both = `${renamed(withWarning, 'w')}\n${renamed(withError, 'e')}`
		const cwd = await workspaceOf({
			'b.stave': both.replace('w "', 'x "').replace('e "', 'y "'),
			'B.stave': both,
			'a/z.stave': renamed(withError, 'z'),
		})
		const { result, status } = await checkedJson(cwd)
		expect(inShort(result)).toEqual([
			'B.stave 4:5 role-not-allowed warning',
			'B.stave 9:15 unknown-name error',
			'a/z.stave 4:15 unknown-name error',
			'b.stave 4:5 role-not-allowed warning',
			'b.stave 9:15 unknown-name error',
		])
		expect(result.counts).toEqual({ error: 3, warning: 2, info: 0, hint: 0 })
		expect(status).toBe(1)
		const again = await checkedJson(cwd)
		expect(again.out).toBe((await checkedJson(cwd)).out)
	})

	test('counts columns in UTF-16 units, whatever stands before the fault', async () => {
		const before = '/* 🏋️🏋️ 深蹲 e\u0301 */ '
		const cwd = await workspaceOf({ 'a.stave': withError.replace('    accessory', `${before}accessory`) })
		const { result } = await checkedJson(cwd)
		expect(result.problems[0]).toMatchObject({ line: 4, column: before.length + 'accessory '.length + 1 })
	})

	test.each(['\n', '\r\n', '\r'])('counts lines that end with %j', async end => {
		const cwd = await workspaceOf({ 'a.stave': withError.replaceAll('\n', end) })
		expect(inShort((await checkedJson(cwd)).result)).toEqual(['a.stave 4:15 unknown-name error'])
	})

	test('is the same with a byte-order mark: it is no fault and shifts no column', async () => {
		const firstLine = withError.replaceAll('\n', ' ')
		const [without, marked] = [
			await workspaceOf({ 'a.stave': firstLine }),
			await workspaceOf({ 'a.stave': `\ufeff${firstLine}` }),
		]
		const { result } = await checkedJson(marked)
		expect(result.problems[0]?.line).toBe(1)
		expect(result).toEqual((await checkedJson(without)).result)
	})

	test('names places in the built-in library', async () => {
		const cwd = await workspaceOf({ 'a.stave': withWarning })
		const { result } = await checkedJson(cwd)
		expect(result.problems[0]?.related).toEqual([
			{
				file: expect.stringMatching(/^barstave-library:\/.+\.stave$/),
				line: expect.any(Number),
				column: 3,
				message: expect.any(String),
			},
		])
	})
})

describe('bytes that are no UTF-8 text', () => {
	const latin = Buffer.from(sound.replace('First steps', 'Första steg'), 'latin1')

	test('are one problem of their file, at their place; the rest goes on', async () => {
		const cwd = await workspaceOf({ 'a.stave': latin, 'b.stave': renamed(withWarning, 'b') })
		const { status, result } = await checkedJson(cwd)
		expect(status).toBe(1)
		expect(inShort(result)).toEqual(['a.stave 1:21 syntax error', 'b.stave 4:5 role-not-allowed warning'])
		expect(result.problems[0]?.message).toContain('UTF-8')
	})

	test('leave the names of their file known', async () => {
		const plan = 'plan autumn for nobody-yet\n  start 2026-10-05\n  run first-steps\n'
		const cwd = await workspaceOf({ 'a.stave': latin, 'plan.stave': plan })
		expect((await checkedJson(cwd)).result.problems.filter(problem => problem.message.includes('first-steps'))).toEqual([])
	})

	test.each([
		['UTF-16', Buffer.from(`\ufeff${sound}`, 'utf16le'), 'UTF-16'],
		['a picture', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]), 'UTF-8'],
	])('say what they are: %s', async (_, bytes, word) => {
		const { result, status } = await checkedJson(await workspaceOf({ 'a.stave': bytes }))
		expect(status).toBe(1)
		expect(result.problems).toHaveLength(1)
		expect(result.problems[0]).toMatchObject({ line: 1, column: 1, message: expect.stringContaining(word) })
	})
})

describe('standard input', () => {
	test.each([['--stdin'], ['-']])('is checked with %s, beside the workspace', async word => {
		const cwd = await workspaceOf({ 'own.stave': 'movement own-hold "Own hold"\n', 'b.stave': renamed(withError, 'b') })
		const ended = await barstave(['check', word, '--format', 'json'], {
			cwd,
			input: withError.replace('no-such-movement', 'own-hold'),
		})
		expect(ended.status).toBe(0)
		expect(resultBySchema('check', ended.out)).toMatchObject({ files: 1, problems: [] })
		const faulty = await barstave(['check', word, '--format', 'json'], { cwd, input: withError })
		expect(faulty.status).toBe(1)
		expect(inShort(resultBySchema('check', faulty.out))).toEqual(['- 4:15 unknown-name error'])
	})

	test('stands for the file that is named, in place of what is on the disk', async () => {
		const cwd = await workspaceOf({ 'blocks/a.stave': withError })
		const words = ['check', '--stdin-path', 'blocks/a.stave', '--format', 'json']
		expect(await barstave(words, { cwd, input: sound })).toMatchObject({ status: 0 })
		const faulty = await barstave(words, { cwd, input: withWarning })
		expect(inShort(resultBySchema('check', faulty.out))).toEqual(['blocks/a.stave 4:5 role-not-allowed warning'])
	})
})

describe('parts of the work', () => {
	const files = Object.fromEntries(['a', 'b', 'c', 'd', 'e'].map(name => [`${name}.stave`, renamed(withError, name)]))

	test('cover every file once, and merge into the whole', async () => {
		const cwd = await workspaceOf(files)
		const results = await workspaceOf({})
		const names: string[] = []
		for (const part of ['1/3', '2/3', '3/3']) {
			const { out, result, status } = await checkedJson(cwd, '--shard', part)
			expect(status).toBe(1)
			expect(result.shard).toBe(part)
			const name = path.join(results, `${part.replace('/', '-')}.json`)
			await writeFile(name, out)
			names.push(name)
		}
		const whole = await checkedJson(cwd)
		const merged = await checkedJson(cwd, '--merge', ...names)
		expect(merged).toEqual(whole)
		expect((await barstave(['check', '--merge', ...names], { cwd })).out).toBe((await barstave(['check'], { cwd })).out)

		const missing = await barstave(['check', '--merge', names[0]!, names[2]!], { cwd })
		expect(missing).toMatchObject({ status: 2, out: '', said: expect.stringContaining('2/3') })
		const twice = await barstave(['check', '--merge', ...names, names[1]!], { cwd })
		expect(twice).toMatchObject({ status: 2, said: expect.stringContaining('more than once') })
	})

	test('may be empty where there are more parts than files', async () => {
		const cwd = await workspaceOf({ 'a.stave': sound })
		expect(await checkedJson(cwd, '--shard', '2/2')).toMatchObject({ status: 0, result: { files: 0 } })
	})
})

test('a reader that ends early is no fault', async () => {
	const { process: started, ended } = await startBarstave(['check', '--help'])
	started.stdin.end()
	started.stdout.destroy()
	expect((await ended).said).toBe('')
})

describe('today', () => {
	const example = path.resolve(import.meta.dirname, '../../../examples/faults/missed-work')

	test.each([
		{ words: [], said: ['missed-work'] },
		{ words: ['--today', '2026-10-20'], said: ['missed-work'] },
		{ words: ['--today', '2026-10-15'], said: [] },
		{ words: ['--today', '2026-12-24'], said: [] },
	])('is the last entry of a log, or what $words says', async ({ words, said }) => {
		const { result } = await checkedJson(example, ...words)
		expect(result.problems.map(problem => problem.code)).toEqual(said)
	})
})
