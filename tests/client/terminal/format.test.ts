import { chmod, readdir, readFile, stat, symlink } from 'node:fs/promises'
import path from 'node:path'
import { describe, expect, test } from 'vitest'
import { barstave, startBarstave } from './support/program.ts'
import { workspaceOf } from './support/workspace.ts'

const loose = `block first-steps "First steps"   weeks 1 // short
  session pull-day on monday
      accessory plank 3x30 s
`
const laidOut = `block first-steps "First steps"
  weeks 1 // short

  session pull-day on monday
    accessory plank 3 x 30 s
`
const faulty = `block faulty "Faulty"
      session   s on monday
  accessory plank 3 y 30
`

const textAt = (cwd: string, name = 'a.stave') => readFile(path.join(cwd, name), 'utf8')

describe('format', () => {
	test('lays out all files, says which, and has nothing to do the second time', async () => {
		const cwd = await workspaceOf({
			'a.stave': loose,
			'blocks/b.stave': laidOut.replace('first', 'b'),
			'c.stave': loose.replace('first', 'c'),
		})
		expect(await barstave(['format'], { cwd })).toEqual({
			status: 0,
			out: 'a.stave\nc.stave\n2 of 3 files laid out.\n',
			said: '',
		})
		expect(await textAt(cwd)).toBe(laidOut)
		const before = await stat(path.join(cwd, 'a.stave'), { bigint: true })
		expect((await barstave(['format'], { cwd })).out).toBe('3 files, nothing to lay out.\n')
		const after = await stat(path.join(cwd, 'a.stave'), { bigint: true })
		expect([after.ino, after.mtimeNs]).toEqual([before.ino, before.mtimeNs])
	})

	test('touches only the files and folders that are named', async () => {
		const files = { 'a.stave': loose, 'blocks/b.stave': loose, 'c.stave': loose }
		const cwd = await workspaceOf(files)
		expect((await barstave(['format', 'blocks', 'c.stave'], { cwd })).out).toBe(
			'blocks/b.stave\nc.stave\n2 of 2 files laid out.\n',
		)
		expect(await textAt(cwd)).toBe(loose)
		expect(await textAt(cwd, 'blocks/b.stave')).toBe(laidOut)
	})

	test('leaves a definition that does not read, says so, and lays out the rest', async () => {
		const cwd = await workspaceOf({ 'a.stave': loose + faulty })
		const ended = await barstave(['format'], { cwd })
		expect(await textAt(cwd)).toBe(`${laidOut}\n${faulty}`)
		expect(ended).toMatchObject({
			status: 0,
			said: '"a.stave": one definition does not read and stays as written. "barstave check" says why.\n',
		})
	})

	test('keeps byte-order mark, line ends, links, and who may read the file, and leaves nothing beside it', async () => {
		const elsewhere = await workspaceOf({ 'real.stave': `\ufeff${loose}`.replaceAll('\n', '\r\n') })
		await chmod(path.join(elsewhere, 'real.stave'), 0o640)
		const cwd = await workspaceOf({})
		await symlink(path.join(elsewhere, 'real.stave'), path.join(cwd, 'link.stave'))
		expect((await barstave(['format'], { cwd })).status).toBe(0)
		expect(await textAt(elsewhere, 'real.stave')).toBe(`\ufeff${laidOut}`.replaceAll('\n', '\r\n'))
		expect((await stat(path.join(elsewhere, 'real.stave'))).mode & 0o777).toBe(0o640)
		expect((await readdir(cwd, { withFileTypes: true }))[0]?.isSymbolicLink()).toBe(true)
		expect(await readdir(elsewhere)).toEqual(['real.stave'])
	})

	test('puts a whole text in place of the old one', async () => {
		const cwd = await workspaceOf({ 'a.stave': loose })
		const before = await stat(path.join(cwd, 'a.stave'))
		await barstave(['format'], { cwd })
		// Another file was written and took the name: at no time did the name stand for half a text.
		expect((await stat(path.join(cwd, 'a.stave'))).ino).not.toBe(before.ino)
	})

	test('a run that is killed leaves every file the old one or the new one', async () => {
		const long = Array.from({ length: 40 }, (_, index) => loose.replace('first', `s${index}`)).join('')
		const names = Array.from({ length: 60 }, (_, index) => `${index}.stave`)
		const cwd = await workspaceOf(Object.fromEntries(names.map(name => [name, long])))
		const whole = (await barstave(['format', '-'], { input: long })).out
		const { process, ended } = await startBarstave(['format'], { cwd })
		while ((await textAt(cwd, '0.stave')) === long && process.exitCode === null)
			await new Promise(resolve => setTimeout(resolve, 1))
		process.kill('SIGKILL')
		await ended
		const texts = await Promise.all(names.map(name => textAt(cwd, name)))
		expect(texts.filter(text => text !== long && text !== whole)).toEqual([])
		expect(texts).toContain(whole)
	})

	test('bytes that are no text stay, and are a problem', async () => {
		const bytes = Buffer.from(loose.replace('First steps', 'Första steg'), 'latin1')
		const cwd = await workspaceOf({ 'a.stave': bytes, 'b.stave': loose })
		const ended = await barstave(['format'], { cwd })
		expect(ended).toMatchObject({ status: 1, out: 'b.stave\n1 of 2 files laid out.\n' })
		expect(ended.said).toMatch(/^"a\.stave" stays as it is\. .* not UTF-8 text/)
		expect(await readFile(path.join(cwd, 'a.stave'))).toEqual(bytes)
	})

	test('no files, no such file', async () => {
		const cwd = await workspaceOf({})
		expect((await barstave(['format'], { cwd })).status).toBe(2)
		expect(await barstave(['format', '--allow-empty'], { cwd })).toMatchObject({ status: 0, said: '' })
		expect(await barstave(['format', 'nowhere.stave'], { cwd })).toMatchObject({
			status: 2,
			said: '"nowhere.stave" cannot be opened: there is no such file or folder.\n',
		})
	})
})

describe('format --check', () => {
	test('says which files would change, and changes none', async () => {
		const cwd = await workspaceOf({ 'a.stave': loose, 'b.stave': laidOut.replace('first', 'b') })
		expect(await barstave(['format', '--check'], { cwd })).toEqual({
			status: 1,
			out: 'a.stave\n1 of 2 files would be laid out otherwise. "barstave format" does it.\n',
			said: '',
		})
		expect(await textAt(cwd)).toBe(loose)
		expect((await barstave(['format', '--check', 'b.stave'], { cwd })).status).toBe(0)
	})
})

describe('format -', () => {
	test('prints what it reads, laid out, and nothing else', async () => {
		expect(await barstave(['format', '-'], { input: `\ufeff${loose}` })).toEqual({ status: 0, out: `\ufeff${laidOut}`, said: '' })
		expect(await barstave(['format', '-'], { input: '' })).toEqual({ status: 0, out: '', said: '' })
	})

	test('with --check it prints nothing', async () => {
		expect(await barstave(['format', '--check', '-'], { input: loose })).toMatchObject({ status: 1, out: '' })
		expect(await barstave(['format', '--check', '-'], { input: laidOut })).toEqual({ status: 0, out: '', said: '' })
	})

	test('bytes that are no text are not printed', async () => {
		const ended = await barstave(['format', '-'], { input: Buffer.from('// fü', 'latin1') })
		expect(ended).toMatchObject({ status: 1, out: '' })
		expect(ended.said).toContain('not UTF-8')
	})

	test('does not go with files', async () => {
		expect((await barstave(['format', '-', 'examples'])).status).toBe(2)
	})
})
