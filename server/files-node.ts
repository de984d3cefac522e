import { readdir, readFile } from 'node:fs/promises'
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
			const bytes = await readFile(fileURLToPath(uri))
			return withoutByteOrderMark(new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes))
		} catch {
			// Gone, not ours to read, or no text: the command line reports bytes that are none.
			return undefined
		}
	},
}

async function listBelow(folder: string): Promise<string[]> {
	const entries = await readdir(folder, { withFileTypes: true }).catch(() => [])
	const found = await Promise.all(
		entries.map(entry => {
			if (entry.name.startsWith('.') || entry.name === 'node_modules') return []
			const where = path.join(folder, entry.name)
			if (entry.isDirectory()) return listBelow(where)
			return entry.isFile() && entry.name.endsWith('.stave') ? [uriOfPath(where)] : []
		}),
	)
	return found.flat()
}

/** The URI of a path as editors write it: with `:` and the like escaped. */
function uriOfPath(where: string): string {
	return pathToFileURL(where).href
}
