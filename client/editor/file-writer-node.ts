import { readFile } from 'node:fs/promises'
import { compileFunction } from 'node:vm'
import { Uri } from 'vscode'
import { type FileWriter, writersScript } from './file-writer.ts'

/** Writes files where there is Node. The script is one for every kind of editor, so it is no module that Node could load by itself. */
export function fileWriter(extensionUri: Uri): FileWriter {
	let writer: Promise<FileWriter> | undefined
	const filename = Uri.joinPath(extensionUri, 'dist', writersScript).fsPath
	const load = async (): Promise<FileWriter> => {
		const made: { exports?: { readonly writeFile: FileWriter } } = {}
		compileFunction(await readFile(filename, 'utf8'), ['module'], { filename })(made)
		return made.exports!.writeFile
	}
	return async request => {
		writer ??= load()
		return (await writer)(request)
	}
}
