import { type ExtensionContext, l10n, Uri, window } from 'vscode'
import { LanguageClient, TransportKind } from 'vscode-languageclient/node'
import { clientName, clientOptions, quiet } from './client-options.ts'
import { startExtension } from './extension.ts'
import { fileWriter } from './file-writer-node.ts'
import { isTooOld, oldestNode } from './host.ts'

let client: LanguageClient | undefined

/** An editor with Node calls this when a folder has `.stave` files, or such a text is opened. */
export function activate(context: ExtensionContext): void {
	const { node } = process.versions
	if (isTooOld(node)) {
		const message = l10n.t(
			'Barstave cannot check texts in this editor: it is built on Node {0}, and Barstave needs Node {1} or later. A newer version of the editor will do.',
			node,
			oldestNode,
		)
		void window.showErrorMessage(message)
		return
	}
	const server = {
		module: Uri.joinPath(context.extensionUri, 'dist', 'server.cjs').fsPath,
		transport: TransportKind.ipc,
	}
	client = quiet(new LanguageClient(...clientName, { run: server, debug: server }, clientOptions()))
	startExtension(context, client, fileWriter(context.extensionUri))
}

/** The editor calls this when it closes; the server ends with it. */
export async function deactivate(): Promise<void> {
	if (client?.isRunning()) await client.stop()
}
