import { workspace } from 'vscode'
import type { BaseLanguageClient, LanguageClientOptions } from 'vscode-languageclient'
import { recovery } from './recovery.ts'

/** The name of settings that the client library reads, and the one that it writes into the log. */
export const clientName = ['barstave', 'Barstave'] as const

/** Texts in no folder: files from elsewhere, texts that are not saved yet, and the built-in library. */
const looseSchemes = ['file', 'untitled', 'barstave-library']

/** How every build of the extension talks to its server. */
export function clientOptions(): LanguageClientOptions {
	// Folders may lie elsewhere than on a disk. Old versions of a text, as one sees them beside a difference, lie in none of them.
	const schemes = new Set([...looseSchemes, ...(workspace.workspaceFolders ?? []).map(({ uri }) => uri.scheme)])
	return {
		documentSelector: [...schemes].map(scheme => ({ scheme, language: 'barstave' })),
		errorHandler: recovery(),
		initializationFailedHandler: () => false,
		// Told, they come with the key; this editor asks for those of other files every two seconds alone.
		initializationOptions: { diagnostics: 'push', commands: ['barstave.openPreview'] },
	}
}

/**
 * What goes wrong between the editor and the server goes into the log and into no message: it is written for programmers. Where a coach
 * can do something, `recovery` and the extension's start say so.
 */
export function quiet<Client extends BaseLanguageClient>(client: Client): Client {
	const error = client.error.bind(client)
	client.error = (message, data) => error(message, data, false)
	return client
}
