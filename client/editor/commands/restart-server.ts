import { commands, type Disposable } from 'vscode'
import type { LanguageClient } from 'vscode-languageclient/node'

/** Starts the server afresh, also after it was left alone. */
export function registerRestartServer(client: LanguageClient): Disposable {
	return commands.registerCommand('barstave.restartServer', () => client.restart())
}
