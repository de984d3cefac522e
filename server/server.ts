import {
	type Connection,
	DidChangeWatchedFilesNotification,
	type FileSystemWatcher,
	type InitializeResult,
	TextDocumentSyncKind,
	TextDocuments,
	WatchKind,
} from 'vscode-languageserver'
import { TextDocument } from 'vscode-languageserver-textdocument'
import { isRealDate } from '../language/compute/calendar.ts'
import type { Feature } from './feature.ts'
import { codeActions } from './features/code-actions.ts'
import { completion } from './features/completion.ts'
import { counters } from './features/counters.ts'
import { definition } from './features/definition.ts'
import { diagnostics } from './features/diagnostics.ts'
import { documentSymbols } from './features/document-symbols.ts'
import { folding } from './features/folding.ts'
import { formatting } from './features/formatting.ts'
import { hover } from './features/hover.ts'
import { libraryText } from './features/library-text.ts'
import { preview } from './features/preview.ts'
import { references } from './features/references.ts'
import { rename } from './features/rename.ts'
import { workspaceSymbols } from './features/workspace-symbols.ts'
import type { Files } from './files.ts'
import { followToday } from './today.ts'
import { Workspace } from './workspace.ts'

const features: readonly Feature[] = [
	diagnostics,
	hover,
	completion,
	definition,
	references,
	rename,
	documentSymbols,
	workspaceSymbols,
	folding,
	formatting,
	codeActions,
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

/** Serves one editor over a connection until that ends. */
export function startServer(connection: Connection, files: Files): void {
	const workspace = new Workspace(files)
	const documents = new TextDocuments(TextDocument)
	let folders: readonly string[] = []
	let watchesFiles = false
	let changesFolders = false

	connection.onInitialize((params): InitializeResult => {
		folders = params.workspaceFolders?.map(folder => folder.uri) ?? (params.rootUri ? [params.rootUri] : [])
		watchesFiles = params.capabilities.workspace?.didChangeWatchedFiles?.dynamicRegistration ?? false
		changesFolders = params.capabilities.workspace?.workspaceFolders ?? false
		const told: unknown = params.initializationOptions?.today
		// An editor that says which day it is, as tests do, is believed; else the clock says it.
		if (typeof told === 'string' && isRealDate(told)) workspace.setToday(told)
		else followToday(date => workspace.setToday(date))
		const capabilities = Object.assign({}, ...features.map(feature => feature.capabilities))
		return {
			serverInfo: { name: 'Barstave' },
			capabilities: {
				...capabilities,
				textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental, save: false },
				workspace: { workspaceFolders: { supported: true, changeNotifications: true } },
			},
		}
	})

	connection.onInitialized(() => {
		if (watchesFiles) void connection.client.register(DidChangeWatchedFilesNotification.type, { watchers: watched })
		if (changesFolders)
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

	for (const feature of features) feature.register({ connection, workspace })
	documents.listen(connection)
	connection.listen()
}
