import { readFile } from 'node:fs/promises'
import path from 'node:path'
import { byteOrderMark, decode } from './file-text.ts'
import { reasonOf } from './find-files.ts'
import type { Workspace, WorkspaceFile } from './workspace.ts'
import { writeWhole } from './write-file.ts'

/**
 * Writes a file's new text in one step, unless someone else has written the file since it was read: then their text stays.
 * @returns why the file was not written, or `undefined`.
 */
export async function rewrite(workspace: Workspace, before: WorkspaceFile, text: string): Promise<string | undefined> {
	const where = path.join(workspace.root, before.path)
	try {
		if (decode(await readFile(where)).text !== before.text) return 'it was changed by someone else meanwhile'
		await writeWhole(where, (before.byteOrderMark ? byteOrderMark : '') + text)
		return undefined
	} catch (problem) {
		return reasonOf(problem)
	}
}
