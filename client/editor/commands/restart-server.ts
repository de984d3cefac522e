import type { BaseLanguageClient } from 'vscode-languageclient'

/** Starts the server afresh, also after it was left alone. */
export async function restartServer(client: BaseLanguageClient): Promise<void> {
	// A client that has nothing to stop refuses to.
	if (client.isRunning()) await client.stop()
	await client.start()
}
