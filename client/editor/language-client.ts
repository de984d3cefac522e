import { type ExtensionContext, Uri } from 'vscode'
import { LanguageClient, TransportKind } from 'vscode-languageclient/node'
import { recovery } from './recovery.ts'

/** Texts that the server looks after: files, texts that are not saved yet, and the built-in library. */
const documentSelector = ['file', 'untitled', 'barstave-library'].map(scheme => ({ scheme, language: 'barstave' }))

/** The client of the server that runs beside the editor; it is not started yet. */
export function createClient(context: ExtensionContext): LanguageClient {
	const server = {
		module: Uri.joinPath(context.extensionUri, 'dist', 'server.cjs').fsPath,
		transport: TransportKind.ipc,
	}
	return new QuietClient(
		'barstave',
		'Barstave',
		{ run: server, debug: server },
		{
			documentSelector,
			errorHandler: recovery(),
			initializationFailedHandler: () => false,
			// Told, they come with the key; this editor asks for those of other files every two seconds alone.
			initializationOptions: { diagnostics: 'push' },
		},
	)
}

/**
 * What goes wrong between the editor and the server goes into the log and into no message: it is written for programmers. Where a coach
 * can do something, `recovery` and the extension's start say so.
 */
class QuietClient extends LanguageClient {
	override error(message: string, data?: unknown): void {
		super.error(message, data, false)
	}
}
