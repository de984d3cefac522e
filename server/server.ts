import { URI } from 'langium'
import {
	type ClientCapabilities,
	type Connection,
	DidChangeWatchedFilesNotification,
	ErrorCodes,
	type FileSystemWatcher,
	type InitializeParams,
	type InitializeResult,
	PositionEncodingKind,
	ResponseError,
	type ServerCapabilities,
	TextDocumentSyncKind,
	TextDocuments,
	WatchKind,
} from 'vscode-languageserver'
import { TextDocument } from 'vscode-languageserver-textdocument'
import { isRealDate } from '../language/compute/calendar.ts'
import { ChosenPlans } from './chosen-plans.ts'
import { refusedQuestion } from './connection-options.ts'
import type { Feature, ServerContext } from './feature.ts'
import { codeActions } from './features/code-actions.ts'
import { codeLens } from './features/code-lens.ts'
import { completion } from './features/completion.ts'
import { counters } from './features/counters.ts'
import { definition } from './features/definition.ts'
import { diagnostics } from './features/diagnostics.ts'
import { documentHighlights } from './features/document-highlights.ts'
import { documentLinks } from './features/document-links.ts'
import { documentSymbols } from './features/document-symbols.ts'
import { folding } from './features/folding.ts'
import { formatting } from './features/formatting.ts'
import { hover } from './features/hover.ts'
import { inlayHints } from './features/inlay-hints.ts'
import { libraryText } from './features/library-text.ts'
import { onEnterFormatting } from './features/on-enter-formatting.ts'
import { planChoice } from './features/plan-choice.ts'
import { preview } from './features/preview.ts'
import { pullDiagnostics } from './features/pull-diagnostics.ts'
import { references } from './features/references.ts'
import { rename } from './features/rename.ts'
import { selectionRanges } from './features/selection-ranges.ts'
import { semanticTokens } from './features/semantic-tokens.ts'
import { signatureHelp } from './features/signature-help.ts'
import { workspaceSymbols } from './features/workspace-symbols.ts'
import type { Files } from './files.ts'
import { Settings } from './settings.ts'
import { followToday } from './today.ts'
import { Workspace } from './workspace.ts'

const features: readonly Feature[] = [
	diagnostics,
	pullDiagnostics,
	hover,
	completion,
	signatureHelp,
	definition,
	references,
	rename,
	documentHighlights,
	documentLinks,
	selectionRanges,
	semanticTokens,
	inlayHints,
	codeLens,
	documentSymbols,
	workspaceSymbols,
	folding,
	formatting,
	onEnterFormatting,
	codeActions,
	planChoice,
	preview,
	libraryText,
	counters,
]

/** A key's change is taken in so long after it, unless a request asks sooner. */
const pauseAfterKey = 10

/** Our files, and every folder that comes or goes: with it the files in it do, and nobody says so. */
const watched: FileSystemWatcher[] = [
	{ globPattern: '**/*.stave' },
	{ globPattern: '**', kind: WatchKind.Create | WatchKind.Delete },
]

/** What an editor may say at the start beside the protocol's own. */
interface InitializationOptions {
	/** Which day it is; else the clock says it. */
	readonly today?: unknown
	/** `push`: an editor that can ask for problems wants to be told of them all the same. */
	readonly diagnostics?: unknown
	/** The commands of ours that it has, such as `barstave.openPreview`. */
	readonly commands?: unknown
}

function capabilitiesOf(feature: Feature, context: ServerContext): ServerCapabilities {
	return { ...feature.capabilities, ...feature.capabilitiesFor?.(context) }
}

/** The only folder of an editor that knows of no more; old ones name it by its path. */
function rootOf({ rootUri, rootPath }: InitializeParams): string[] {
	if (rootUri) return [rootUri]
	return rootPath ? [URI.file(rootPath).toString()] : []
}

/** Serves one editor over a connection until that ends. */
export function startServer(connection: Connection, files: Files): void {
	const workspace = new Workspace(files)
	const documents = new TextDocuments(TextDocument)
	const settings = new Settings()
	const chosen = new ChosenPlans(workspace)
	let folders: readonly string[] = []
	let client: ClientCapabilities = {}

	connection.onInitialize((params): InitializeResult => {
		folders = params.workspaceFolders?.map(folder => folder.uri) ?? rootOf(params)
		client = params.capabilities
		isBegun = true
		const options = (params.initializationOptions ?? {}) as InitializationOptions
		const told = options.today
		// An editor that says which day it is, as tests do, is believed; else the clock says it.
		if (typeof told === 'string' && isRealDate(told)) workspace.setToday(told)
		else followToday(date => workspace.setToday(date))
		const context: ServerContext = {
			connection,
			workspace,
			client: params.capabilities,
			settings,
			chosen,
			wantsProblemsPushed: options.diagnostics === 'push',
			commands: new Set(Array.isArray(options.commands) ? options.commands : []),
		}
		for (const feature of features) feature.register(context)
		const capabilities = Object.assign({}, ...features.map(feature => capabilitiesOf(feature, context)))
		return {
			serverInfo: { name: 'Barstave' },
			capabilities: {
				...capabilities,
				positionEncoding: PositionEncodingKind.UTF16,
				textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental, save: false },
				workspace: { workspaceFolders: { supported: true, changeNotifications: true } },
			},
		}
	})

	// Features are there once the editor has said what it can do.
	let isBegun = false
	connection.onRequest(method => {
		if (method === refusedQuestion)
			throw new ResponseError(ErrorCodes.InvalidRequest, 'An editor begins once, and asks nothing after it has ended.')
		if (isBegun) throw new ResponseError(ErrorCodes.MethodNotFound, `No request is called ${method}.`)
		throw new ResponseError(ErrorCodes.ServerNotInitialized, 'An editor begins with "initialize".')
	})

	connection.onInitialized(() => {
		settings.follow(connection, client)
		if (client.workspace?.didChangeWatchedFiles?.dynamicRegistration)
			void connection.client.register(DidChangeWatchedFilesNotification.type, { watchers: watched })
		if (client.workspace?.workspaceFolders)
			connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
				for (const folder of removed) workspace.removeFolder(folder.uri)
				for (const folder of added) void workspace.addFolder(folder.uri)
			})
		for (const folder of folders) void workspace.addFolder(folder)
	})

	let timer: ReturnType<typeof setTimeout> | undefined
	documents.onDidChangeContent(({ document }) => {
		workspace.setOpen(document.uri, document.version, document.getText())
		clearTimeout(timer)
		timer = setTimeout(() => workspace.settle(), pauseAfterKey)
	})
	documents.onDidClose(({ document }) => void workspace.close(document.uri))
	connection.onDidChangeWatchedFiles(({ changes }) => void workspace.filesChanged(changes.map(change => change.uri)))

	documents.listen(connection)
	connection.listen()
}
