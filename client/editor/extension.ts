import { type ExtensionContext, l10n, window } from 'vscode'
import type { BaseLanguageClient } from 'vscode-languageclient'
import { ChosenPlan } from './chosen-plan.ts'
import { openSheet } from './commands/open-sheet.ts'
import { printSheet } from './commands/print-sheet.ts'
import { restartServer } from './commands/restart-server.ts'
import { saveSheet } from './commands/save-sheet.ts'
import { showLog } from './commands/show-log.ts'
import type { ServerCommands } from './commands.ts'
import type { FileWriter } from './file-writer.ts'
import { registerFiles } from './files.ts'
import { registerLibraryTexts } from './library-texts.ts'
import { registerPreview } from './preview-panel.ts'

/** What is the same in every editor, on the desktop and in the browser. The editor does not wait until the server is there. */
export function startExtension(context: ExtensionContext, client: BaseLanguageClient, write: FileWriter): ServerCommands {
	const chosen = new ChosenPlan(context, client)
	context.subscriptions.push(registerFiles(client), registerLibraryTexts(client), chosen)
	const preview = registerPreview(context, client)
	void startServer(client)
	return {
		openPreview: preview.open,
		openSheet: plan => openSheet(client, plan),
		saveSheet: () => saveSheet(client, preview.question(), write),
		printSheet: () => printSheet(context, client, preview.question(), write),
		choosePlan: () => chosen.choose(),
		restartServer: () => restartServer(client),
		showLog: () => showLog(client),
	}
}

async function startServer(client: BaseLanguageClient): Promise<void> {
	try {
		await client.start()
	} catch (problem) {
		client.outputChannel.error(problem instanceof Error ? problem : String(problem))
		const toLog = l10n.t('Show the log')
		const message = l10n.t('Barstave could not start, so texts are not checked. The log says why.')
		if ((await window.showErrorMessage(message, toLog)) === toLog) showLog(client)
	}
}
