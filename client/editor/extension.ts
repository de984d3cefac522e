import { type ExtensionContext, window } from 'vscode'
import type { LanguageClient } from 'vscode-languageclient/node'
import { registerRestartServer } from './commands/restart-server.ts'
import { registerShowLog } from './commands/show-log.ts'
import { hindranceOfHost } from './host.ts'
import { createClient } from './language-client.ts'
import { registerLibraryTexts } from './library-texts.ts'
import { registerPreview } from './preview-panel.ts'

let client: LanguageClient | undefined

/** The editor calls this when the first `.stave` text is opened. */
export async function activate(context: ExtensionContext): Promise<void> {
	const hindrance = hindranceOfHost(process.versions.node)
	if (hindrance) {
		void window.showErrorMessage(hindrance)
		return
	}
	client = createClient(context)
	context.subscriptions.push(registerLibraryTexts(client), registerRestartServer(client), registerShowLog(client))
	registerPreview(context, client)
	try {
		await client.start()
	} catch (problem) {
		client.outputChannel.error(problem instanceof Error ? problem : String(problem))
		const showLog = 'Show the log'
		const choice = await window.showErrorMessage('Barstave could not start, so texts are not checked. The log says why.', showLog)
		if (choice === showLog) client.outputChannel.show()
	}
}

/** The editor calls this when it closes; the server ends with it. */
export async function deactivate(): Promise<void> {
	if (client?.isRunning()) await client.stop()
}
