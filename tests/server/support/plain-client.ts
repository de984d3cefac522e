import type { ChildProcessWithoutNullStreams } from 'node:child_process'
import { startBarstave } from '../../client/terminal/support/program.ts'

export interface Message {
	readonly id?: number | string | null
	readonly method?: string
	readonly params?: unknown
	readonly result?: unknown
	readonly error?: { readonly code: number; readonly message: string }
}

interface Published {
	readonly uri: string
	readonly diagnostics: readonly { readonly code: string; readonly range: unknown }[]
}

/**
 * An editor of another make: JSON-RPC by hand over the pipes of `barstave language-server --stdio`. It shares no code with the server, writes
 * what it is told to write, in whatever order, and keeps all that comes.
 */
export class PlainClient {
	readonly received: Message[] = []
	/** What came that is no message, or a message with a wrong length. */
	readonly noise: string[] = []
	readonly ended: Promise<{ readonly status: number | null; readonly said: string }>
	private rest = Buffer.alloc(0)
	private waiting: (() => void)[] = []
	private lastId = 0

	private constructor(
		private readonly process: ChildProcessWithoutNullStreams,
		ended: PlainClient['ended'],
	) {
		this.ended = ended
		process.stdout.on('data', (chunk: Buffer | string) => this.take(Buffer.from(chunk)))
	}

	static async start(): Promise<PlainClient> {
		const { process, ended } = await startBarstave(['language-server', '--stdio'])
		// As bytes: lengths are counted in them.
		process.stdout.setEncoding(undefined as never)
		return new PlainClient(process, ended)
	}

	/** Writes messages in one go, cut into pieces of so many bytes. */
	write(messages: readonly Message[], pieces?: number): void {
		const bytes = Buffer.concat(messages.map(message => framed(JSON.stringify({ jsonrpc: '2.0', ...message }))))
		for (let at = 0; at < bytes.length; at += pieces ?? bytes.length)
			this.process.stdin.write(bytes.subarray(at, at + (pieces ?? bytes.length)))
	}

	/** Writes a body that is none. */
	writeText(body: string): void {
		this.process.stdin.write(framed(body))
	}

	notify(method: string, params: unknown): void {
		this.write([{ method, params }])
	}

	async request(method: string, params: unknown): Promise<Message> {
		const id = ++this.lastId
		this.write([{ id, method, params }])
		return this.answerTo(id)
	}

	answerTo(id: number | string): Promise<Message> {
		return this.until(() => this.received.find(one => one.id === id && one.method === undefined))
	}

	async until<T>(found: () => T | undefined): Promise<T> {
		for (;;) {
			const value = found()
			if (value !== undefined) return value
			await new Promise<void>(resolve => this.waiting.push(resolve))
		}
	}

	/** What the server asks of the editor. */
	get asked(): readonly Message[] {
		return this.received.filter(one => one.method !== undefined && one.id !== undefined)
	}

	/** The latest list of problems of a file. */
	problemsOf(uri: string): Published['diagnostics'] | undefined {
		const lists = this.received.flatMap(one =>
			one.method === 'textDocument/publishDiagnostics' ? [one.params as Published] : [],
		)
		return lists.findLast(one => one.uri === uri)?.diagnostics
	}

	closeInput(): void {
		this.process.stdin.end()
	}

	private take(chunk: Buffer): void {
		this.rest = Buffer.concat([this.rest, chunk])
		for (;;) {
			const end = this.rest.indexOf('\r\n\r\n')
			if (end < 0) break
			const header = this.rest.subarray(0, end).toString('ascii')
			const length = Number(/^Content-Length: (\d+)$/m.exec(header)?.[1])
			if (!Number.isInteger(length)) {
				this.noise.push(header)
				this.rest = this.rest.subarray(end + 4)
				continue
			}
			if (this.rest.length < end + 4 + length) break
			const body = this.rest.subarray(end + 4, end + 4 + length).toString('utf8')
			this.rest = this.rest.subarray(end + 4 + length)
			this.received.push(JSON.parse(body))
		}
		for (const wake of this.waiting.splice(0)) wake()
	}
}

function framed(body: string): Buffer {
	const bytes = Buffer.from(body, 'utf8')
	return Buffer.concat([
		Buffer.from(`Content-Type: application/vscode-jsonrpc; charset=utf-8\r\nContent-Length: ${bytes.length}\r\n\r\n`, 'ascii'),
		bytes,
	])
}
