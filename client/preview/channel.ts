import type { MessageType, PageState } from './messages.ts'

/** The page's end of the messenger. */
export interface Channel {
	send<P>(type: MessageType<P>, params: P): void
	/** @returns stops listening */
	on<P>(type: MessageType<P>, listener: (params: P) => void): () => void
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
export function openChannel(): Channel {
	const editor = acquireVsCodeApi()
	return {
		kept: editor.getState(),
		keep: state => editor.setState(state),
		send: ({ method }, params) => editor.postMessage({ method, receiver: { type: 'extension' }, params }),
		on(type, listener) {
			const hear = ({ data }: MessageEvent) => {
				if (data?.method === type.method) listener(data.params)
			}
			window.addEventListener('message', hear)
			return () => window.removeEventListener('message', hear)
		},
	}
}
