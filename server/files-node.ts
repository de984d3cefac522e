import { readdir, readFile, stat } from 'node:fs/promises'
import path from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { type Files, withoutByteOrderMark } from './files.ts'

/** Files of this machine; other schemes have none. */
export const nodeFiles: Files = {
	async list(folder) {
		if (!folder.startsWith('file:')) return []
		return listBelow(fileURLToPath(folder))
	},
	async read(uri) {
		if (!uri.startsWith('file:')) return undefined
		try {
			// Bytes that are no text stand as marks, as in the editor; the command line reports them.
			return withoutByteOrderMark(await readFile(fileURLToPath(uri), 'utf8'))
		} catch {
			// Gone, or not ours to read.
			return undefined
		}
	},
}

async function listBelow(folder: string): Promise<string[]> {
	const entries = await readdir(folder, { withFileTypes: true }).catch(() => [])
	const found = await Promise.all(
		entries.map(async entry => {
			if (entry.name.startsWith('.') || entry.name === 'node_modules') return []
			const where = path.join(folder, entry.name)
			if (entry.isDirectory()) return listBelow(where)
			if (!entry.name.endsWith('.stave')) return []
			return entry.isFile() || (entry.isSymbolicLink() && (await isFile(where))) ? [uriOfPath(where)] : []
		}),
	)
	return found.flat()
}

/** A link to a file is read as that file; links to folders are not followed, since they may go in circles. */
async function isFile(where: string): Promise<boolean> {
	return stat(where).then(
		found => found.isFile(),
		() => false,
	)
}

/** The URI of a path as editors write it: with `:` and the like escaped. */
function uriOfPath(where: string): string {
	return pathToFileURL(where).href
}
