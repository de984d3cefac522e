import { commands, type Disposable } from 'vscode'
import type { BaseLanguageClient } from 'vscode-languageclient'

/** Shows what the server has noted. */
export function registerShowLog(client: BaseLanguageClient): Disposable {
	return commands.registerCommand('barstave.showLog', () => client.outputChannel.show())
}
