import { type Dirent, statSync } from 'node:fs'
import { readdir } from 'node:fs/promises'
import path from 'node:path'

export const fileEnding = '.stave'

/** What a workspace has. Paths are relative to it, with `/`, in the order of their characters. */
export interface FoundFiles {
	readonly paths: readonly string[]
	/** Folders that cannot be opened, with the reason. */
	readonly closed: readonly ClosedPath[]
}

/** A path that cannot be opened. */
export interface ClosedPath {
	readonly path: string
	readonly reason: string
}

/** Hidden files and folders, and what npm installs, are no part of a workspace. */
export function isSkipped(name: string): boolean {
	return name.startsWith('.') || name === 'node_modules'
}

/** All `.stave` files below a folder. Links to files are followed, links to folders are not: they can lead round in circles. */
export async function findFiles(root: string): Promise<FoundFiles> {
	const paths: string[] = []
	const closed: ClosedPath[] = []
	await lookInto('')
	return { paths: paths.sort(), closed }

	async function lookInto(folder: string): Promise<void> {
		let entries: Dirent[]
		try {
			entries = await readdir(path.join(root, folder), { withFileTypes: true })
		} catch (problem) {
			closed.push({ path: folder || '.', reason: reasonOf(problem) })
			return
		}
		for (const entry of entries) {
			if (isSkipped(entry.name)) continue
			const where = folder === '' ? entry.name : `${folder}/${entry.name}`
			if (entry.isDirectory()) await lookInto(where)
			else if (entry.name.endsWith(fileEnding) && (entry.isFile() || leadsToFile(entry, path.join(root, where))))
				paths.push(where)
		}
	}
}

function leadsToFile(entry: Dirent, where: string): boolean {
	if (!entry.isSymbolicLink()) return false
	const target = statSync(where, { throwIfNoEntry: false })
	// A link that leads nowhere is a file that cannot be opened, and is reported as such.
	return target === undefined || target.isFile()
}

/** The reason of a fault of the file system, in words. */
export function reasonOf(problem: unknown): string {
	const code = (problem as NodeJS.ErrnoException).code
	if (code === 'ENOENT') return 'there is no such file or folder'
	if (code === 'EACCES' || code === 'EPERM') return 'this account may not open it'
	if (code === 'EISDIR') return 'it is a folder'
	if (code === 'ENOTDIR') return 'it is not a folder'
	if (code === 'ENOSPC') return 'the disk is full'
	if (code === 'EROFS') return 'the disk is read-only'
	if (code === 'ELOOP') return 'the links lead round in a circle'
	return (problem as Error).message
}
