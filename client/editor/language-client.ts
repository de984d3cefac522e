import { type ExtensionContext, Uri } from 'vscode'
import { LanguageClient, RevealOutputChannelOn, TransportKind } from 'vscode-languageclient/node'
import { recovery } from './recovery.ts'

/** Texts that the server looks after: files, texts that are not saved yet, and the built-in library. */
const documentSelector = ['file', 'untitled', 'barstave-library'].map(scheme => ({ scheme, language: 'barstave' }))

/** The client of the server that runs beside the editor; it is not started yet. */
export function createClient(context: ExtensionContext): LanguageClient {
	const server = {
		module: Uri.joinPath(context.extensionUri, 'dist', 'server.cjs').fsPath,
		transport: TransportKind.ipc,
	}
	return new LanguageClient(
		'barstave',
		'Barstave',
		{ run: server, debug: server },
		{
			documentSelector,
			errorHandler: recovery(),
			// A request that fails is for the log; a coach could do nothing about it.
			revealOutputChannelOn: RevealOutputChannelOn.Never,
		},
	)
}
