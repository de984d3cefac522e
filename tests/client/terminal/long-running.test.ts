import { rename, rm, writeFile } from 'node:fs/promises'
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import { describe, expect, test } from 'vitest'
import { createProtocolConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-languageserver/node'
import { startBarstave } from './support/program.ts'
import { sound, withError, workspaceOf } from './support/workspace.ts'

/** Waits until something holds; the tests' own time limit ends what never does. */
async function until(holds: () => boolean): Promise<void> {
	while (!holds()) await new Promise(resolve => setTimeout(resolve, 20))
}

describe('check --watch', () => {
	test('checks again after changes, new files, renames and deletions, and says nothing where nothing differs', async () => {
		const cwd = await workspaceOf({ 'a.stave': sound })
		const { process: started, texts, ended } = await startBarstave(['check', '--watch'], { cwd })
		const reports = () => texts.out.split(/(?<=checked[,:].*\n)/).filter(report => report.trim() !== '')
		const clean = /checked, nothing to report/

		await until(() => reports().length === 1)
		expect(reports()[0]).toMatch(clean)
		await writeFile(path.join(cwd, 'a.stave'), withError)
		await until(() => reports().length === 2)
		expect(reports()[1]).toContain('no-such-movement')
		await writeFile(path.join(cwd, 'own.stave'), 'movement no-such-movement "Ours"\n')
		await until(() => reports().length === 3)
		expect(reports()[2]).toMatch(/2 files checked, nothing/)
		await rename(path.join(cwd, 'own.stave'), path.join(cwd, 'own.txt'))
		await until(() => reports().length === 4)
		expect(reports()[3]).toContain('no-such-movement')
		await writeFile(path.join(cwd, '.hidden.stave'), 'movement no-such-movement "Hidden"\n')
		await writeFile(path.join(cwd, 'a.stave'), `${withError}// a word more\n`)
		await rm(path.join(cwd, 'a.stave'))
		await writeFile(path.join(cwd, 'b.stave'), sound)
		await until(() => reports().length === 5)
		expect(reports()[4]).toMatch(/1 file checked, nothing/)

		started.kill()
		await ended
		expect(texts.said).toBe('')
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
