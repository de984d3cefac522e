import { type ChildProcess, spawn } from 'node:child_process'
import { cp, mkdir, mkdtemp, readFile, realpath, rm, writeFile } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import { afterAll } from 'vitest'
import {
	type ClientCapabilities,
	createProtocolConnection,
	type Diagnostic,
	type ProtocolConnection,
	type PublishDiagnosticsParams,
	StreamMessageReader,
	StreamMessageWriter,
} from 'vscode-languageserver/node'
import { buildProgram, root } from '../../support/build-program.ts'

let program: Promise<string> | undefined

const folders: string[] = []
afterAll(async () => {
	for (const folder of folders) await rm(folder, { recursive: true, force: true })
})

/** A folder that is gone when the tests of its file are. */
async function temporaryFolder(purpose: string): Promise<string> {
	const folder = await realpath(await mkdtemp(path.join(os.tmpdir(), `barstave-${purpose}-`)))
	folders.push(folder)
	return folder
}

/** The real server, built from the sources once a test file. */
async function serverProgram(): Promise<string> {
	program ??= temporaryFolder('server').then(folder => buildProgram('server/main-node.ts', path.join(folder, 'server.cjs')))
	return program
}

/** A workspace folder on the disk, made for one test. */
export async function makeFolder(files: Readonly<Record<string, string>>): Promise<string> {
	const folder = await temporaryFolder('folder')
	for (const [name, text] of Object.entries(files)) await writeIn(folder, name, text)
	return folder
}

export async function writeIn(folder: string, name: string, text: string): Promise<void> {
	await mkdir(path.dirname(path.join(folder, name)), { recursive: true })
	await writeFile(path.join(folder, name), text)
}

/** A copy of an example of ours, to change at will. */
export async function copyOfExample(name: string): Promise<string> {
	const folder = await temporaryFolder('example')
	await cp(path.join(root, 'examples', name), folder, { recursive: true })
	return folder
}

export const uriOf = (folder: string, name = '') => pathToFileURL(path.join(folder, name)).href

/** What most editors can do, and say so. */
const usual: ClientCapabilities = {
	textDocument: {
		definition: { linkSupport: true },
		completion: { completionItem: { snippetSupport: true } },
		codeAction: { codeActionLiteralSupport: { codeActionKind: { valueSet: ['quickfix', 'refactor', 'source.fixAll'] } } },
	},
	workspace: {
		workspaceFolders: true,
		configuration: true,
		workspaceEdit: { documentChanges: true },
		inlayHint: { refreshSupport: true },
		codeLens: { refreshSupport: true },
		semanticTokens: { refreshSupport: true },
	},
}

/** An editor that speaks the protocol with the real server over stdio; it keeps what was published. */
export class Editor {
	readonly published: PublishDiagnosticsParams[] = []
	/** What the server has asked to be asked for again. */
	readonly refreshes: string[] = []
	plansChanged = 0
	/** What the editor answers when it is asked for our settings. */
	settings: unknown = {}
	private readonly diagnostics = new Map<string, readonly Diagnostic[]>()
	private readonly texts = new Map<string, { version: number; text: string }>()
	private waiting: (() => void)[] = []

	private constructor(
		readonly connection: ProtocolConnection,
		readonly process: ChildProcess,
	) {
		connection.onNotification('textDocument/publishDiagnostics', (params: PublishDiagnosticsParams) => {
			this.published.push(params)
			this.diagnostics.set(params.uri, params.diagnostics)
			for (const wake of this.waiting.splice(0)) wake()
		})
		connection.onRequest('client/registerCapability', () => null)
		connection.onRequest('workspace/configuration', ({ items }: { items: unknown[] }) => items.map(() => this.settings))
		for (const what of ['inlayHint', 'codeLens', 'diagnostics', 'semanticTokens'])
			connection.onRequest(`workspace/${what === 'diagnostics' ? 'diagnostic' : what}/refresh`, () => {
				this.refreshes.push(what)
				return null
			})
		connection.onNotification('barstave/plansChanged', () => void this.plansChanged++)
	}

	/** @param today What the editor says which day it is; without it the server looks at its clock. */
	static async start(
		folders: readonly string[],
		capabilities: ClientCapabilities = {},
		today?: string,
		options: Readonly<Record<string, unknown>> = {},
		nodeOptions: readonly string[] = [],
	): Promise<Editor> {
		// What the server says beside messages is shown, unless a test has made it speak.
		const said = nodeOptions.length > 0 ? 'pipe' : 'inherit'
		const child = spawn(process.execPath, [...nodeOptions, await serverProgram(), '--stdio'], { stdio: ['pipe', 'pipe', said] })
		const connection = createProtocolConnection(new StreamMessageReader(child.stdout!), new StreamMessageWriter(child.stdin!))
		const editor = new Editor(connection, child)
		connection.listen()
		await connection.sendRequest('initialize', {
			processId: process.pid,
			rootUri: null,
			capabilities: {
				...usual,
				...capabilities,
				textDocument: { ...usual.textDocument, ...capabilities.textDocument },
				workspace: { ...usual.workspace, ...capabilities.workspace },
			},
			initializationOptions: { today, ...options },
			workspaceFolders: folders.map(folder => ({ uri: uriOf(folder), name: path.basename(folder) })),
		})
		await connection.sendNotification('initialized', {})
		return editor
	}

	async open(folder: string, name: string): Promise<string> {
		const uri = uriOf(folder, name)
		await this.openText(uri, await readFile(path.join(folder, name), 'utf8'))
		return uri
	}

	async openText(uri: string, text: string): Promise<void> {
		this.texts.set(uri, { version: 1, text })
		await this.connection.sendNotification('textDocument/didOpen', {
			textDocument: { uri, languageId: 'barstave', version: 1, text },
		})
	}

	/** Replaces the whole text, as a key or a paste would. */
	async change(uri: string, text: string): Promise<number> {
		const version = (this.texts.get(uri)?.version ?? 0) + 1
		this.texts.set(uri, { version, text })
		await this.connection.sendNotification('textDocument/didChange', {
			textDocument: { uri, version },
			contentChanges: [{ text }],
		})
		return version
	}

	async close(uri: string): Promise<void> {
		this.texts.delete(uri)
		await this.connection.sendNotification('textDocument/didClose', { textDocument: { uri } })
	}

	async filesChanged(changes: readonly { uri: string; type: 1 | 2 | 3 }[]): Promise<void> {
		await this.connection.sendNotification('workspace/didChangeWatchedFiles', { changes })
	}

	request<T>(method: string, params: unknown): Promise<T> {
		return this.connection.sendRequest(method, params)
	}

	at(uri: string, line: number, character: number) {
		return { textDocument: { uri }, position: { line, character } }
	}

	problemsOf(uri: string): readonly Diagnostic[] {
		return this.diagnostics.get(uri) ?? []
	}

	codesOf(uri: string): (string | number | undefined)[] {
		return this.problemsOf(uri).map(one => one.code)
	}

	/** Waits until what was published is as wished; fails with what there is. */
	async until(wished: () => boolean, what: string): Promise<void> {
		const end = Date.now() + 60_000
		while (!wished()) {
			if (Date.now() > end) {
				const all = [...this.diagnostics].map(([uri, list]) => `${uri}: ${list.map(one => one.code).join(', ')}`)
				throw new Error(`not reached: ${what}\n${all.join('\n')}`)
			}
			await new Promise<void>(resolve => {
				const timer = setTimeout(resolve, 100)
				this.waiting.push(() => {
					clearTimeout(timer)
					resolve()
				})
			})
		}
	}

	/** Fulfilled when the server has taken in everything that was sent before, and has told of all that it found there. */
	async settled(): Promise<void> {
		await this.request('barstave/counters', {})
	}

	async stop(): Promise<void> {
		await this.connection.sendRequest('shutdown')
		const ended = new Promise(resolve => this.process.once('exit', resolve))
		await this.connection.sendNotification('exit')
		await ended
		this.connection.dispose()
	}
}
