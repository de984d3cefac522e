import { spawn } from 'node:child_process'
import { readFile } from 'node:fs/promises'
import { pathToFileURL } from 'node:url'
import {
	createProtocolConnection,
	type ProtocolConnection,
	type PublishDiagnosticsParams,
	StreamMessageReader,
	StreamMessageWriter,
} from 'vscode-languageserver/node'

/** One server in one workspace, driven as an editor drives it. */
export class Driver {
	private waiting: ((params: PublishDiagnosticsParams) => void)[] = []
	published = 0

	private readonly connection: ProtocolConnection
	private readonly child: ReturnType<typeof spawn>

	private constructor(connection: ProtocolConnection, child: ReturnType<typeof spawn>) {
		this.connection = connection
		this.child = child
		connection.onNotification('textDocument/publishDiagnostics', (params: PublishDiagnosticsParams) => {
			this.published++
			for (const wake of [...this.waiting]) wake(params)
		})
		connection.onRequest('client/registerCapability', () => null)
		connection.onRequest('workspace/configuration', ({ items }: { items: unknown[] }) => items.map(() => null))
	}

	static async start(program: string, folder: string): Promise<Driver> {
		const child = spawn(process.execPath, [program, '--stdio'], { stdio: ['pipe', 'pipe', 'inherit'] })
		const connection = createProtocolConnection(new StreamMessageReader(child.stdout!), new StreamMessageWriter(child.stdin!))
		const driver = new Driver(connection, child)
		connection.listen()
		await connection.sendRequest('initialize', {
			processId: process.pid,
			rootUri: null,
			capabilities: { workspace: { workspaceFolders: true } },
			workspaceFolders: [{ uri: pathToFileURL(folder).href, name: 'bench' }],
		})
		await connection.sendNotification('initialized', {})
		return driver
	}

	/** The first list of problems for a file that passes the test. */
	whenPublished(uri: string, wished: (params: PublishDiagnosticsParams) => boolean): Promise<void> {
		return new Promise((resolve, reject) => {
			const late = setTimeout(() => reject(new Error(`nothing was published for ${uri}`)), 120_000)
			const look = (params: PublishDiagnosticsParams) => {
				if (params.uri !== uri || !wished(params)) return
				this.waiting = this.waiting.filter(one => one !== look)
				clearTimeout(late)
				resolve()
			}
			this.waiting.push(look)
		})
	}

	open(uri: string, text: string) {
		return this.connection.sendNotification('textDocument/didOpen', {
			textDocument: { uri, languageId: 'barstave', version: 1, text },
		})
	}

	change(uri: string, version: number, text: string) {
		return this.connection.sendNotification('textDocument/didChange', {
			textDocument: { uri, version },
			contentChanges: [{ text }],
		})
	}

	request<T>(method: string, params: unknown = {}): Promise<T> {
		return this.connection.sendRequest(method, params)
	}

	async memory(): Promise<number> {
		const status = await readFile(`/proc/${this.child.pid}/status`, 'utf8').catch(() => '')
		return Number(/VmRSS:\s+(\d+)/.exec(status)?.[1] ?? Number.NaN) / 1024
	}

	stop() {
		this.connection.dispose()
		this.child.kill()
	}
}
