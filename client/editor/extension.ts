import { type ExtensionContext, l10n, window } from 'vscode'
import type { BaseLanguageClient } from 'vscode-languageclient'
import { registerChosenPlan } from './chosen-plan.ts'
import { registerOpenSheet } from './commands/open-sheet.ts'
import { registerPrintSheet } from './commands/print-sheet.ts'
import { registerRestartServer } from './commands/restart-server.ts'
import { registerSaveSheet } from './commands/save-sheet.ts'
import { registerShowLog } from './commands/show-log.ts'
import { registerStartWorkspace } from './commands/start-workspace.ts'
import type { FileWriter } from './file-writer.ts'
import { registerFiles } from './files.ts'
import { registerLibraryTexts } from './library-texts.ts'
import { registerPreview } from './preview-panel.ts'

/** What is the same in every editor, on the desktop and in the browser. The editor does not wait until the server is there. */
export function startExtension(context: ExtensionContext, client: BaseLanguageClient, write: FileWriter): void {
	context.subscriptions.push(
		registerFiles(client),
		registerLibraryTexts(client),
		registerOpenSheet(client),
		registerRestartServer(client),
		registerShowLog(client),
		registerStartWorkspace(),
	)
	const question = registerPreview(context, client)
	context.subscriptions.push(registerSaveSheet(client, question, write), registerPrintSheet(context, client, question, write))
	registerChosenPlan(context, client)
	void startServer(client)
}

async function startServer(client: BaseLanguageClient): Promise<void> {
	try {
		await client.start()
	} catch (problem) {
		client.outputChannel.error(problem instanceof Error ? problem : String(problem))
		const showLog = l10n.t('Show the log')
		const message = l10n.t('Barstave could not start, so texts are not checked. The log says why.')
		if ((await window.showErrorMessage(message, showLog)) === showLog) client.outputChannel.show()
	}
}
