import { type ExtensionContext, Uri } from 'vscode'
import { BrowserMessageReader, BrowserMessageWriter, LanguageClient } from 'vscode-languageclient/browser'
import { clientName, clientOptions, quiet } from './client-options.ts'
import { registerCommands } from './commands.ts'
import { startExtension } from './extension.ts'
import { fileWriter } from './file-writer-browser.ts'

let client: LanguageClient | undefined
let worker: Worker | undefined

/** An editor in the browser calls this when a folder has `.stave` files, or such a text is opened. */
export function activate(context: ExtensionContext): void {
	const program = Uri.joinPath(context.extensionUri, 'dist', 'server-browser.js').toString(true)
	const startWorker = async () => {
		// A worker does not end by itself when its work is done.
		worker?.terminate()
		worker = new Worker(program)
		return { reader: new BrowserMessageReader(worker), writer: new BrowserMessageWriter(worker) }
	}
	client = quiet(new LanguageClient(...clientName, startWorker, clientOptions()))
	context.subscriptions.push(registerCommands(Promise.resolve(startExtension(context, client, fileWriter(context.extensionUri)))))
}

/** The editor calls this when it closes. */
export async function deactivate(): Promise<void> {
	if (client?.isRunning()) await client.stop()
	worker?.terminate()
}
