import { type ExtensionContext, Uri, window } from 'vscode'
import { LanguageClient, TransportKind } from 'vscode-languageclient/node'
import { clientName, clientOptions, quiet } from './client-options.ts'
import { startExtension } from './extension.ts'
import { hindranceOfHost } from './host.ts'

let client: LanguageClient | undefined

/** An editor with Node calls this when a folder has `.stave` files, or such a text is opened. */
export function activate(context: ExtensionContext): void {
	const hindrance = hindranceOfHost(process.versions.node)
	if (hindrance) {
		void window.showErrorMessage(hindrance)
		return
	}
	const server = {
		module: Uri.joinPath(context.extensionUri, 'dist', 'server.cjs').fsPath,
		transport: TransportKind.ipc,
	}
	client = quiet(new LanguageClient(...clientName, { run: server, debug: server }, clientOptions()))
	startExtension(context, client)
}

/** The editor calls this when it closes; the server ends with it. */
export async function deactivate(): Promise<void> {
	if (client?.isRunning()) await client.stop()
}
