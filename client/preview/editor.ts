import { HOST_EXTENSION, type NotificationType } from 'vscode-messenger-common'
import { Messenger } from 'vscode-messenger-webview'
import type { PageState } from './messages.ts'

/** The editor as the page sees it: typed messages to the extension and from it, and what outlives a reload. */
export interface Editor {
	send<P>(type: NotificationType<P>, params: P): void
	/** Each message has one listener; a later one takes its place. */
	on<P>(type: NotificationType<P>, listener: (params: P) => void): void
	/** Begins to listen: what comes before it is lost. */
	start(): void
	/** What the page kept over a reload. */
	readonly kept: PageState | undefined
	keep(state: PageState): void
}

/** What the editor gives a webview's page. */
interface EditorApi {
	postMessage(message: unknown): void
	getState(): PageState | undefined
	setState(state: PageState): void
}

declare function acquireVsCodeApi(): EditorApi

/** Connects to the extension. May be called once a page. */
export function connect(): Editor {
	const api = acquireVsCodeApi()
	const messenger = new Messenger(api)
	return {
		send: (type, params) => messenger.sendNotification(type, HOST_EXTENSION, params),
		on: (type, listener) => void messenger.onNotification(type, listener),
		start: () => messenger.start(),
		kept: api.getState(),
		keep: state => api.setState(state),
	}
}
