import { readFile, rm } from 'node:fs/promises'
import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import path from 'node:path'
import { build } from 'esbuild'
import type { Browser, Page } from 'playwright-core'
import type { NotificationType } from 'vscode-messenger-common'
import { launchBrowser } from '../../../end-to-end/workbench/browser.ts'

const root = path.resolve(import.meta.dirname, '../../../..')

/**
 * The panel's page in a browser, under the policy that the extension gives it. What the editor does for a page is stood in for by a few
 * lines: messages that the page sends are kept, messages to it are posted, its state outlives a reload.
 */
export class PreviewPage {
	readonly page: Page
	/** All that the page has complained about, violations of the policy too. */
	readonly complaints: string[]
	readonly #browser: Browser
	readonly #server: Server

	private constructor(page: Page, browser: Browser, server: Server, complaints: string[]) {
		this.page = page
		this.complaints = complaints
		this.#browser = browser
		this.#server = server
	}

	static async open(folder: string, { minify = false } = {}): Promise<PreviewPage> {
		await build({
			absWorkingDir: root,
			entryPoints: ['client/preview/main.tsx'],
			outfile: path.join(folder, 'preview.js'),
			bundle: true,
			format: 'iife',
			target: 'es2023',
			minify,
			define: { 'process.env.NODE_ENV': minify ? '"production"' : '"development"' },
			logLevel: 'error',
		})
		const server = createServer(async ({ url }, response) => {
			const type = { '/preview.js': 'text/javascript', '/preview.css': 'text/css' }[url ?? '']
			response.setHeader('content-type', type ?? 'text/html; charset=utf-8')
			response.end(type ? await readFile(path.join(folder, url!)) : frame)
		}).listen(0, '127.0.0.1')
		await new Promise(resolve => server.once('listening', resolve))
		const browser = await launchBrowser()
		const page = await browser.newPage({ viewport: { width: 700, height: 600 }, locale: 'en-GB' })
		const complaints: string[] = []
		page.on('console', message => complaints.push(message.text()))
		page.on('pageerror', error => complaints.push(error.message))
		await page.goto(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`)
		return new PreviewPage(page, browser, server, complaints)
	}

	/** Sends the page a message as the extension does. */
	async tell<P>(type: NotificationType<P>, params: P): Promise<void> {
		await this.page.evaluate(message => window.postMessage(message), messageOf(type, params))
		// Drawn, and the charts too.
		await this.page.evaluate(() => new Promise(resolve => setTimeout(() => requestAnimationFrame(resolve), 50)))
	}

	/**
	 * Sends the page a message, and gives the milliseconds from then until what it changes has been painted. The message is handed to the
	 * browser before that: the tool that drives it is busy with a large one for longer than the page is.
	 */
	async paint<P>(type: NotificationType<P>, params: P): Promise<number> {
		await this.page.evaluate(message => Object.assign(window, { handed: message }), messageOf(type, params))
		return this.page.evaluate(
			() =>
				new Promise<number>(resolve => {
					const start = performance.now()
					// Heard after the page itself has, which draws before the next frame.
					const heard = () => requestAnimationFrame(() => setTimeout(() => resolve(performance.now() - start)))
					window.addEventListener('message', heard, { once: true })
					window.postMessage((window as unknown as { handed: unknown }).handed)
				}),
		)
	}

	/** Sends the page a message, and gives an element's content at the end of the very frame in which the message is drawn. */
	async tellAndLook<P>(type: NotificationType<P>, params: P, selector: string): Promise<string> {
		return this.page.evaluate(
			([message, looked]) =>
				new Promise<string>(resolve => {
					// Heard after the page itself has, which asked for the same frame first.
					const heard = () => requestAnimationFrame(() => resolve(document.querySelector(looked)!.innerHTML))
					window.addEventListener('message', heard, { once: true })
					window.postMessage(message)
				}),
			[messageOf(type, params), selector] as const,
		)
	}

	/** What the page has sent to the extension with this message. */
	async heard<P>(type: NotificationType<P>): Promise<P[]> {
		const sent = await this.page.evaluate(() => (window as unknown as { sent: { method: string; params: unknown }[] }).sent)
		return sent.filter(message => message.method === type.method).map(message => message.params as P)
	}

	async close(folder: string): Promise<void> {
		await this.#browser.close()
		this.#server.close()
		await rm(folder, { recursive: true })
	}
}

function messageOf<P>({ method }: NotificationType<P>, params: P) {
	return { method, sender: { type: 'extension' }, receiver: { type: 'webview', webviewType: 'barstave.preview' }, params }
}

const policy = "default-src 'none'; script-src 'nonce-n'; style-src 'self'"
const standIn = `
	const kept = sessionStorage.getItem('state')
	let state = kept === null ? undefined : JSON.parse(kept)
	window.sent = []
	window.acquireVsCodeApi = () => ({
		postMessage: message => window.sent.push(message),
		getState: () => state,
		setState: next => sessionStorage.setItem('state', JSON.stringify((state = next))),
	})`
const frame = `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta http-equiv="Content-Security-Policy" content="${policy}"><title>Preview</title>
<link rel="stylesheet" href="/preview.css"></head>
<body class="vscode-dark"><div id="preview"></div><script nonce="n">${standIn}</script><script nonce="n" src="/preview.js"></script></body></html>`
