import {
	type Disposable,
	type ExtensionContext,
	env,
	l10n,
	Range,
	type TextEditor,
	Uri,
	ViewColumn,
	type Webview,
	type WebviewPanel,
	window,
	workspace,
} from 'vscode'
import { type BaseLanguageClient, State } from 'vscode-languageclient'
import { Messenger } from 'vscode-messenger'
import type { Place, Position, PreviewData, PreviewQuestion, Subject } from '../../language/reports/preview.ts'
import { cursor, hold, holding, type PageState, ready, reveal, show, silence } from '../preview/messages.ts'
import { isOurs, isOurText } from './texts.ts'

const viewType = 'barstave.preview'
/** A cursor that moves on within this time has not come anywhere yet. */
const restMilliseconds = 80

export interface Preview {
	/** Opens it beside the text; from a menu it is given a file, from above a block the name of a plan. */
	open(given?: unknown): void
	/** What asks the server for what is shown, or would be. */
	question(): PreviewQuestion
}

/** The preview, and the panel's return after a reload. Everything ends with the extension. */
export function registerPreview(context: ExtensionContext, client: BaseLanguageClient): Preview {
	const messenger = new Messenger()
	let open: PreviewPanel | undefined
	const take = (panel: WebviewPanel, held: Subject | null) => {
		const taken = new PreviewPanel(panel, held, context.extensionUri, client, messenger)
		open = taken
		panel.onDidDispose(() => {
			if (open === taken) open = undefined
		})
	}
	context.subscriptions.push(
		window.registerWebviewPanelSerializer(viewType, {
			async deserializeWebviewPanel(panel: WebviewPanel, state: PageState | undefined) {
				// One preview at a time: a second one from an older window gives way.
				if (open) return panel.dispose()
				panel.webview.options = optionsFor(context)
				take(panel, state?.held ?? null)
			},
		}),
		{ dispose: () => open?.dispose() },
	)
	return {
		open(given) {
			const held: Subject | null = typeof given === 'string' ? { kind: 'plan', name: given } : null
			if (open) return open.bringForward(held)
			const column = { viewColumn: ViewColumn.Beside, preserveFocus: true }
			take(window.createWebviewPanel(viewType, l10n.t('Preview'), column, optionsFor(context)), held)
		},
		question: () => open?.question() ?? questionFor(client, null, null),
	}
}

/** Scripts run; files come from the built extension alone. */
function optionsFor({ extensionUri }: ExtensionContext) {
	return { enableScripts: true, localResourceRoots: [Uri.joinPath(extensionUri, 'dist')] }
}

/** How a question is asked. */
type Wish = Pick<PreviewQuestion, 'problemsMayBeOld'>

/** One panel: passes questions of its page to the server and answers back, and nothing more. */
class PreviewPanel implements Disposable {
	private readonly subscriptions: Disposable[] = []
	/** What the last answer showed. */
	private shown: Subject | null = null
	private looking: ReturnType<typeof setTimeout> | undefined
	private asking = false
	/** What is to be asked next. */
	private next: Wish | undefined

	constructor(
		private readonly panel: WebviewPanel,
		/** What was picked; until something is, the server picks by the place of the cursor. */
		private held: Subject | null,
		extensionUri: Uri,
		private readonly client: BaseLanguageClient,
		private readonly messenger: Messenger,
	) {
		const page = messenger.registerWebviewPanel(panel)
		const fromPage = { sender: page }
		this.subscriptions.push(
			panel.onDidDispose(() => this.release()),
			panel.onDidChangeViewState(() => this.ask()),
			// What the panel was opened for comes before what the page has kept.
			messenger.onNotification(ready, message => this.begin(this.held ?? message.held), fromPage),
			messenger.onNotification(hold, message => this.begin(message.held), fromPage),
			messenger.onNotification(reveal, place => this.reveal(place), fromPage),
			client.onNotification('barstave/previewChanged', () => this.ask()),
			// At once, not only when the server tells of the change, which it does as well: then the rules have looked at it too.
			workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
				if (isOurText(document) && contentChanges.length > 0) this.ask({ problemsMayBeOld: true })
			}),
			client.onDidChangeState(({ newState }) => {
				if (newState === State.Running) this.ask()
			}),
			window.onDidChangeActiveTextEditor(editor => {
				this.tellCursor(editor)
				if (this.held === null && isOurs(editor)) this.ask()
			}),
			window.onDidChangeTextEditorSelection(({ textEditor }) => {
				this.tellCursor(textEditor)
				if (this.held === null && isOurs(textEditor)) this.lookWhereTheCursorIs()
			}),
		)
		this.page = page
		panel.iconPath = Uri.joinPath(extensionUri, 'client', 'editor', 'media', 'file.svg')
		panel.webview.html = pageHtml(panel.webview, extensionUri)
	}

	private readonly page: ReturnType<Messenger['registerWebviewPanel']>

	bringForward(held: Subject | null): void {
		this.panel.reveal(undefined, true)
		if (held !== null) this.begin(held)
	}

	dispose(): void {
		this.panel.dispose()
	}

	private release(): void {
		clearTimeout(this.looking)
		for (const subscription of this.subscriptions) subscription.dispose()
	}

	private begin(held: Subject | null): void {
		this.held = held
		this.messenger.sendNotification(holding, this.page, { held })
		void this.ask()
		this.tellCursor(window.activeTextEditor)
	}

	/**
	 * Asks the server what to show. One question is under way at a time: what changes meanwhile is asked once more after it, so that fast
	 * typing never queues up behind slow answers.
	 */
	private async ask(wish: Wish = {}): Promise<void> {
		if (!this.panel.visible) return
		this.next = wish
		if (this.asking) return
		this.asking = true
		try {
			while (this.next !== undefined) {
				const question = { ...this.question(), ...this.next }
				this.next = undefined
				const answer = await this.client.sendRequest<PreviewData>('barstave/preview', question)
				// Where nothing can be shown at the moment, the page keeps what it has.
				if (answer.chosen !== null || answer.stale === null) this.shown = answer.chosen
				const title = answer.picture?.title ?? answer.team?.title ?? answer.log?.title
				if (answer.stale === null) this.panel.title = title === undefined ? l10n.t('Preview') : l10n.t('Preview: {0}', title)
				this.messenger.sendNotification(show, this.page, answer)
			}
		} catch {
			// The client has logged it. When the server is back, it is asked again.
			this.messenger.sendNotification(silence, this.page, { message: l10n.t('Barstave is not answering at the moment.') })
		} finally {
			this.asking = false
		}
	}

	/** The cursor may have come to another definition: a short question says whether something else is to be shown. */
	private lookWhereTheCursorIs(): void {
		clearTimeout(this.looking)
		this.looking = setTimeout(async () => {
			if (!this.panel.visible || this.client.state !== State.Running) return
			try {
				const next = await this.client.sendRequest<Subject | null>('barstave/previewSubject', this.question())
				if (next !== null && (next.kind !== this.shown?.kind || next.name !== this.shown.name)) await this.ask()
			} catch {
				// The client has logged it; the next key or click asks again.
			}
		}, restMilliseconds)
	}

	question(): PreviewQuestion {
		return questionFor(this.client, this.held, this.shown)
	}

	private tellCursor(editor: TextEditor | undefined): void {
		if (!isOurs(editor)) return
		const { uri, at: place } = placeOfCursor(this.client, editor)
		const at = { uri, ...place }
		this.messenger.sendNotification(cursor, this.page, { at })
	}

	/** Shows a place in the text, in the column where its file stands already. */
	private async reveal({ uri, range: { start, end } }: Place): Promise<void> {
		const document = await workspace.openTextDocument(this.client.protocol2CodeConverter.asUri(uri))
		const editor = window.visibleTextEditors.find(one => one.document === document)
		await window.showTextDocument(document, {
			viewColumn: editor?.viewColumn ?? ViewColumn.One,
			selection: new Range(start.line, start.character, end.line, end.character),
		})
	}
}

function questionFor(client: BaseLanguageClient, held: Subject | null, shown: Subject | null): PreviewQuestion {
	const editor = [window.activeTextEditor, ...window.visibleTextEditors].find(isOurs)
	return {
		...(held === null ? {} : { held }),
		...(shown === null ? {} : { shown }),
		...(editor ? placeOfCursor(client, editor) : {}),
	}
}

function placeOfCursor(client: BaseLanguageClient, editor: TextEditor): { readonly uri: string; readonly at: Position } {
	const { line, character } = editor.selection.active
	return { uri: client.code2ProtocolConverter.asUri(editor.document.uri), at: { line, character } }
}

/** The page's frame. Its policy lets in our one script and our one style sheet: no other address, no inline code, no inline style. */
function pageHtml(webview: Webview, extensionUri: Uri): string {
	const file = (name: string) => webview.asWebviewUri(Uri.joinPath(extensionUri, 'dist', name)).toString()
	const words = l10n.bundle === undefined ? '' : ` data-words="${escaped(JSON.stringify(l10n.bundle))}"`
	const nonce = btoa(String.fromCharCode(...crypto.getRandomValues(new Uint8Array(18))))
	return `<!doctype html>
<html lang="${l10n.bundle === undefined ? 'en' : env.language}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'nonce-${nonce}'; style-src ${webview.cspSource}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${l10n.t('Preview')}</title>
<link rel="stylesheet" href="${file('preview.css')}">
</head>
<body>
<div id="preview"${words}></div>
<script nonce="${nonce}" src="${file('preview.js')}"></script>
</body>
</html>`
}

/** A text as the value of an attribute. */
function escaped(text: string): string {
	return text.replaceAll('&', '&amp;').replaceAll('"', '&quot;')
}
