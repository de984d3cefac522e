import { type ExtensionContext, Uri } from 'vscode'
import { LanguageClient, TransportKind } from 'vscode-languageclient/node'
import { clientName, clientOptions, quiet } from './client-options.ts'

/** The client of a server that runs as a process beside the editor; it is not started yet. */
export function createClient({ extensionUri }: ExtensionContext): LanguageClient {
	const server = { module: Uri.joinPath(extensionUri, 'dist', 'server.cjs').fsPath, transport: TransportKind.ipc }
	return quiet(new LanguageClient(...clientName, { run: server, debug: server }, clientOptions()))
}
