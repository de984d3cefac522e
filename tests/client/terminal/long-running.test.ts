import { mkdir, rename, rm, writeFile } from 'node:fs/promises'
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { createProtocolConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-languageserver/node'
import { startBarstave } from './support/program.ts'
import { sound, withError, workspaceOf } from './support/workspace.ts'

/** So long is waited for a report, in milliseconds. */
const patience = 60_000

describe('check --watch', () => {
	let cwd: string
	let watching: Awaited<ReturnType<typeof startBarstave>>
	beforeEach(async () => {
		cwd = await workspaceOf({ 'a.stave': sound })
		watching = await startBarstave(['check', '--watch'], { cwd })
	})
	afterEach(async () => {
		watching.process.kill()
		await watching.ended
		expect(watching.texts.said).toBe('')
	})

	const reports = () => watching.texts.out.split(/(?<=checked[,:].*\n)/).filter(report => report.trim() !== '')
	/** The report with a number, once it is there and is the last. */
	async function report(number: number): Promise<string> {
		await vi.waitFor(() => expect(reports().length).toBeGreaterThanOrEqual(number), { timeout: patience })
		expect(reports().length).toBe(number)
		return reports()[number - 1]!
	}
	/** As many editors save: into another file first, which takes the place of the old one. */
	async function save(name: string, text: string): Promise<void> {
		const [file, part] = [path.join(cwd, name), path.join(cwd, path.dirname(name), '.part')]
		await writeFile(part, text)
		await rename(part, file)
	}
	const oursOf = (name: string) => `movement no-such-movement "${name}"\n`

	test('checks again after changes, new files, renames and deletions, and says nothing where nothing differs', async () => {
		expect(await report(1)).toMatch(/1 file checked, nothing to report/)
		// It is watched from the first report on.
		await save('a.stave', withError)
		expect(await report(2)).toContain('no-such-movement')
		await save('own.stave', oursOf('Ours'))
		expect(await report(3)).toMatch(/2 files checked, nothing/)
		await rename(path.join(cwd, 'own.stave'), path.join(cwd, 'own.txt'))
		expect(await report(4)).toContain('no-such-movement')
		await save('.hidden.stave', oursOf('Hidden'))
		await save('a.stave', `${withError}// a word more\n`)
		await save('b.stave', sound.replace('first-steps', 'second-steps'))
		expect(await report(5)).toMatch(/2 files checked: 1 error/)
		await rm(path.join(cwd, 'a.stave'))
		expect(await report(6)).toMatch(/1 file checked, nothing/)
	})

	test('sees each of many changes of one file, whichever way it is saved', async () => {
		await report(1)
		for (let change = 0; change < 4; change++) {
			await save('a.stave', withError)
			expect(await report(2 + change * 2)).toContain('no-such-movement')
			// A text that is written over in place, after one that took the place of another.
			await writeFile(path.join(cwd, 'a.stave'), sound)
			expect(await report(3 + change * 2)).toMatch(/1 file checked, nothing/)
		}
	})

	test('sees files in folders that are new, that went, and that came again', async () => {
		await report(1)
		await mkdir(path.join(cwd, 'deep/deeper'), { recursive: true })
		await save('deep/deeper/own.stave', oursOf('Ours'))
		expect(await report(2)).toMatch(/Nothing refers to[\s\S]*2 files checked/)
		await rm(path.join(cwd, 'deep'), { recursive: true })
		expect(await report(3)).toMatch(/1 file checked, nothing/)
		await mkdir(path.join(cwd, 'deep'))
		await save('deep/own.stave', 'movement')
		expect(await report(4)).toMatch(/2 files checked: 1 error/)
		await save('deep/own.stave', oursOf('Ours'))
		expect(await report(5)).toMatch(/Nothing refers to[\s\S]*2 files checked/)
	})
})

describe('language-server --stdio', () => {
	test('serves an editor', async () => {
		const cwd = await workspaceOf({ 'a.stave': withError })
		const { process: started, ended } = await startBarstave(['language-server', '--stdio'], { cwd })
		const connection = createProtocolConnection(new StreamMessageReader(started.stdout), new StreamMessageWriter(started.stdin))
		connection.listen()
		const uri = pathToFileURL(cwd).href
		const result = await connection.sendRequest('initialize', {
			processId: null,
			rootUri: uri,
			capabilities: {},
			workspaceFolders: [{ uri, name: 'club' }],
		})
		expect(result).toMatchObject({ serverInfo: { name: 'Barstave' } })
		await connection.sendRequest('shutdown')
		await connection.sendNotification('exit')
		expect((await ended).status).toBe(0)
		connection.dispose()
	})

	test('needs to be told how to talk', async () => {
		const { process: started, ended } = await startBarstave(['language-server'])
		started.stdin.end()
		expect(await ended).toMatchObject({ status: 2, out: '', said: expect.stringContaining('--stdio') })
	})
})
