import { type ExtensionContext, Uri } from 'vscode'
import { LanguageClient, TransportKind } from 'vscode-languageclient/node'
import { clientName, clientOptions, quiet } from './client-options.ts'
import { startExtension } from './extension.ts'
import { fileWriter } from './file-writer-node.ts'
import type { Session } from './session.ts'

/** Begins to talk to a server that runs as a process beside the editor. */
export function startSession(context: ExtensionContext): Session {
	const { extensionUri } = context
	const server = { module: Uri.joinPath(extensionUri, 'dist', 'server.cjs').fsPath, transport: TransportKind.ipc }
	const client = quiet(new LanguageClient(...clientName, { run: server, debug: server }, clientOptions()))
	return {
		commands: startExtension(context, client, fileWriter(extensionUri)),
		stop: async () => {
			if (client.isRunning()) await client.stop()
		},
	}
}
