import { chmod, readdir, readFile, stat, symlink } from 'node:fs/promises'
import path from 'node:path'
import { describe, expect, test } from 'vitest'
import { barstave } from './support/program.ts'
import { sound, withError, withHint, workspaceOf } from './support/workspace.ts'

const textAt = (cwd: string, name = 'a.stave') => readFile(path.join(cwd, name), 'utf8')

describe('check --fix', () => {
	test('makes what can be corrected safely, and leaves the rest', async () => {
		const faulty = `${withHint}    accessory no-such-movement 3x20 s\n`
		const cwd = await workspaceOf({ 'a.stave': faulty })
		const ended = await barstave(['check', '--fix'], { cwd })
		expect(await textAt(cwd)).toBe(faulty.replaceAll('3x', '3 x '))
		expect(ended.status).toBe(1)
		expect(ended.out).toContain('unknown-name')
		expect(ended.out).not.toContain('old-spelling')
		expect(ended.said).toMatch(/corrections? made in 1 file\./)
	})

	test('settles: what one correction brings up is corrected in the same run', async () => {
		const faulty = sound.replace('accessory', 'acessory').replace('3 x 30 s', '3x30 s')
		const cwd = await workspaceOf({ 'a.stave': faulty })
		expect((await barstave(['check', '--fix'], { cwd })).status).toBe(0)
		expect(await textAt(cwd)).toBe(sound)
		const again = await barstave(['check', '--fix', '--fail-on', 'info'], { cwd })
		expect(again).toMatchObject({ status: 0, out: '1 file checked, nothing to report.\n', said: '' })
	})

	test('writes what is pasted from elsewhere in our form', async () => {
		const cwd = await workspaceOf({ 'a.stave': sound.replace('plank 3 x 30 s', 'Plank 3x30" @8 each') })
		await barstave(['check', '--fix'], { cwd })
		expect(await textAt(cwd)).toBe(sound.replace('plank 3 x 30 s', 'plank 3 x 30 s rpe 8 each side'))
	})

	test.each(['deadlift 4 x 5 @80', 'plank 3x5x100', 'plank 3 x 30 s § 4', 'plank 3x30 s 8'])(
		'leaves a line to the coach where only the coach knows what it means: %s',
		async words => {
			const faulty = sound.replace('plank 3 x 30 s', words)
			const cwd = await workspaceOf({ 'a.stave': faulty })
			const ended = await barstave(['check', '--fix'], { cwd })
			expect(await textAt(cwd)).toBe(faulty)
			expect(ended.out).not.toContain('--fix')
		},
	)

	test('keeps byte-order mark, line ends, comments, and who may read the file', async () => {
		const faulty = `\ufeff// 🏋️ mine\n${withHint}`.replaceAll('\n', '\r\n')
		const cwd = await workspaceOf({ 'a.stave': faulty })
		await chmod(path.join(cwd, 'a.stave'), 0o640)
		await barstave(['check', '--fix'], { cwd })
		expect(await textAt(cwd)).toBe(faulty.replace('3x30', '3 x 30'))
		expect((await stat(path.join(cwd, 'a.stave'))).mode & 0o777).toBe(0o640)
	})

	test('touches no file that has nothing to correct, nor one that was not named', async () => {
		const cwd = await workspaceOf({
			'a.stave': withHint,
			'b.stave': withHint.replace('first-steps', 'b'),
			'c.stave': withError.replace('first-steps', 'c'),
		})
		const before = await stat(path.join(cwd, 'c.stave'), { bigint: true })
		await barstave(['check', '--fix', 'a.stave', 'c.stave'], { cwd })
		expect(await textAt(cwd)).toBe(sound)
		expect(await textAt(cwd, 'b.stave')).toBe(withHint.replace('first-steps', 'b'))
		const after = await stat(path.join(cwd, 'c.stave'), { bigint: true })
		expect([after.ino, after.mtimeNs]).toEqual([before.ino, before.mtimeNs])
	})

	test('leaves nothing beside the files, and a link stays a link', async () => {
		const elsewhere = await workspaceOf({ 'real.stave': withHint })
		const cwd = await workspaceOf({})
		await symlink(path.join(elsewhere, 'real.stave'), path.join(cwd, 'link.stave'))
		await barstave(['check', '--fix'], { cwd })
		expect(await readdir(cwd, { withFileTypes: true })).toMatchObject([{ name: 'link.stave' }])
		expect((await readdir(cwd, { withFileTypes: true }))[0]?.isSymbolicLink()).toBe(true)
		expect(await readdir(elsewhere)).toEqual(['real.stave'])
		expect(await textAt(elsewhere, 'real.stave')).toBe(sound)
	})

	test('puts a whole text in place of the old one: who holds the old one open keeps all of it', async () => {
		const cwd = await workspaceOf({ 'a.stave': withHint })
		const before = await stat(path.join(cwd, 'a.stave'))
		await barstave(['check', '--fix'], { cwd })
		// Another file was written and took the name: at no time did the name stand for half a text.
		expect((await stat(path.join(cwd, 'a.stave'))).ino).not.toBe(before.ino)
	})

	test('leaves bytes that are no text as they are', async () => {
		const bytes = Buffer.from(withHint.replace('First steps', 'Första steg'), 'latin1')
		const cwd = await workspaceOf({ 'a.stave': bytes })
		expect((await barstave(['check', '--fix'], { cwd })).status).toBe(1)
		expect(await readFile(path.join(cwd, 'a.stave'))).toEqual(bytes)
	})
})
