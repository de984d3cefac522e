import type { BaseLanguageClient } from 'vscode-languageclient'

/** Shows what the server has noted. */
export function showLog(client: BaseLanguageClient): void {
	client.outputChannel.show()
}
