import { spawn } from 'node:child_process'
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import { root } from './root.mjs'

/** The names of the plans in a folder, in the order in which an editor offers them; the built program is asked, as an editor asks it. */
export async function plansIn(folder, program = path.join(root, 'dist/barstave.cjs')) {
	const { createProtocolConnection, StreamMessageReader, StreamMessageWriter } = await import('vscode-languageserver/node')
	const server = spawn(process.execPath, [program, 'language-server', '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] })
	const connection = createProtocolConnection(new StreamMessageReader(server.stdout), new StreamMessageWriter(server.stdin))
	connection.listen()
	try {
		const workspaceFolders = [{ uri: pathToFileURL(folder).href, name: path.basename(folder) }]
		await connection.sendRequest('initialize', { processId: process.pid, rootUri: null, capabilities: {}, workspaceFolders })
		await connection.sendNotification('initialized', {})
		const { plans } = await connection.sendRequest('barstave/plans', {})
		await connection.sendRequest('shutdown')
		await connection.sendNotification('exit')
		return plans.map(({ name }) => name)
	} finally {
		connection.dispose()
		server.kill()
	}
}
