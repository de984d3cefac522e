import type { Uri } from 'vscode'
import { type FileWriter, writersScript } from './file-writer.ts'
import { loadScript } from './load-script-node.ts'

/** Writes files where there is Node. The script is one for every kind of editor, so it is no module that Node could load by itself. */
export function fileWriter(extensionUri: Uri): FileWriter {
	let writer: Promise<{ readonly writeFile: FileWriter }> | undefined
	return async request => {
		writer ??= loadScript(extensionUri, writersScript)
		return (await writer).writeFile(request)
	}
}
