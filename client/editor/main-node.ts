import { type ExtensionContext, l10n, window } from 'vscode'
import type { LanguageClient } from 'vscode-languageclient/node'
import { registerCommands, type ServerCommands } from './commands.ts'
import { isTooOld, oldestNode } from './host.ts'

let client: LanguageClient | undefined

/**
 * An editor with Node calls this when a folder has `.stave` files, or such a text is opened. It gives the editor its hand back at once: the
 * library that talks to the server is large, and is loaded a turn later.
 */
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
	context.subscriptions.push(registerCommands(load(context)))
}

async function load(context: ExtensionContext): Promise<ServerCommands> {
	await new Promise(setImmediate)
	const [{ createClient }, { startExtension }, { fileWriter }] = await Promise.all([
		import('./client-node.ts'),
		import('./extension.ts'),
		import('./file-writer-node.ts'),
	])
	client = createClient(context)
	return startExtension(context, client, fileWriter(context.extensionUri))
}

/** The editor calls this when it closes; the server ends with it. */
export async function deactivate(): Promise<void> {
	if (client?.isRunning()) await client.stop()
}
