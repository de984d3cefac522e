import { readFile } from 'node:fs/promises'
import { compileFunction } from 'node:vm'
import { Uri } from 'vscode'

/**
 * Loads a script of the built extension where there is Node, without a wait for the disk: Node's own loader of modules reads files while all
 * else in the editor's host stands still.
 * @param name Its file in `dist`, a program in the form of CommonJS.
 * @param require What the script gets modules with, the editor's own among them; without it, the script can ask for none.
 */
export async function loadScript<Exports>(extensionUri: Uri, name: string, require?: NodeJS.Require): Promise<Exports> {
	const filename = Uri.joinPath(extensionUri, 'dist', name).fsPath
	const made = { exports: {} as Exports }
	compileFunction(await readFile(filename, 'utf8'), ['module', 'require'], { filename })(made, require)
	return made.exports
}
