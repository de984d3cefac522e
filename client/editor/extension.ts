import { type ExtensionContext, window } from 'vscode'
import type { BaseLanguageClient } from 'vscode-languageclient'
import { registerRestartServer } from './commands/restart-server.ts'
import { registerShowLog } from './commands/show-log.ts'
import { registerFiles } from './files.ts'
import { registerLibraryTexts } from './library-texts.ts'
import { registerPreview } from './preview-panel.ts'

/** What is the same in every editor, on the desktop and in the browser. The editor does not wait until the server is there. */
export function startExtension(context: ExtensionContext, client: BaseLanguageClient): void {
	context.subscriptions.push(
		registerFiles(client),
		registerLibraryTexts(client),
		registerRestartServer(client),
		registerShowLog(client),
	)
	registerPreview(context, client)
	void startServer(client)
}

async function startServer(client: BaseLanguageClient): Promise<void> {
	try {
		await client.start()
	} catch (problem) {
		client.outputChannel.error(problem instanceof Error ? problem : String(problem))
		const showLog = 'Show the log'
		const choice = await window.showErrorMessage('Barstave could not start, so texts are not checked. The log says why.', showLog)
		if (choice === showLog) client.outputChannel.show()
	}
}
