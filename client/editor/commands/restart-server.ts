import { commands, type Disposable } from 'vscode'
import type { BaseLanguageClient } from 'vscode-languageclient'

/** Starts the server afresh, also after it was left alone. */
export function registerRestartServer(client: BaseLanguageClient): Disposable {
	return commands.registerCommand('barstave.restartServer', async () => {
		// A client that has nothing to stop refuses to.
		if (client.isRunning()) await client.stop()
		await client.start()
	})
}
