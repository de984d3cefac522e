import { type ExtensionContext, l10n, window } from 'vscode'
import { registerCommands } from './commands.ts'
import { isTooOld, oldestNode } from './host.ts'
import { loadScript } from './load-script-node.ts'
import { type Session, sessionScript } from './session.ts'

let session: Promise<Session> | undefined

/**
 * An editor with Node calls this when a folder has `.stave` files, or such a text is opened. It gives the editor its hand back at once: the
 * library that talks to the server is large, so all that needs it is a script of its own that is loaded afterwards.
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
	session = startSession(context)
	context.subscriptions.push(registerCommands(session.then(({ commands }) => commands)))
}

async function startSession(context: ExtensionContext): Promise<Session> {
	const script = await loadScript<typeof import('./session-node.ts')>(context.extensionUri, sessionScript, require)
	return script.startSession(context)
}

/** The editor calls this when it closes; the server ends with it. */
export async function deactivate(): Promise<void> {
	await (await session)?.stop()
}
