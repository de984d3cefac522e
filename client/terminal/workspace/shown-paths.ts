import { realpathSync, statSync } from 'node:fs'
import path from 'node:path'
import { Refusal } from '../refusal.ts'
import { fileEnding, reasonOf } from './find-files.ts'
import { type Workspace, withSlashes } from './workspace.ts'

/**
 * The files of the workspace that the given paths stand for: files, or folders with all below them. No path: all files.
 * @param given Relative to the current folder, or absolute.
 * @throws {Refusal} for a path that cannot be opened, that lies outside the workspace, or that is no text of ours.
 */
export function shownPaths(workspace: Workspace, given: readonly string[]): string[] {
	const all = [...workspace.files.keys()].sort()
	if (given.length === 0) return all
	const shown = new Set(given.flatMap(one => filesAt(workspace, one, all)))
	return all.filter(where => shown.has(where))
}

/** What is said where there is nothing to work on. */
export function nothingFound({ root, files }: Workspace, given: readonly string[]): Refusal {
	const where = files.size === 0 || given.length === 0 ? `"${root}"` : given.map(one => `"${one}"`).join(', ')
	return new Refusal(
		`There are no training texts (files that end in ${fileEnding}) in ${where}. "barstave start FOLDER" writes a first workspace.`,
	)
}

function filesAt(workspace: Workspace, given: string, all: readonly string[]): string[] {
	const where = relativePath(workspace.root, given)
	if (statSync(given).isDirectory()) return where === '' ? [...all] : all.filter(one => one.startsWith(`${where}/`))
	if (workspace.files.has(where)) return [where]
	if (!where.endsWith(fileEnding)) throw new Refusal(`"${given}" is not a training text: those end in ${fileEnding}.`)
	const closed = workspace.closed.find(one => one.path === where)
	if (closed) throw new Refusal(`"${given}" cannot be opened: ${closed.reason}.`)
	throw new Refusal(`"${given}" is hidden, or lies in a folder that is: it is not part of the workspace.`)
}

/** The path of a given path within the workspace; a link in the way to it makes no difference. */
function relativePath(root: string, given: string): string {
	let real: string
	try {
		// The last part stays as it is: a linked file goes by the name of its link.
		real = path.join(realpathSync(path.dirname(path.resolve(given))), path.basename(path.resolve(given)))
		statSync(real)
	} catch (problem) {
		throw new Refusal(`"${given}" cannot be opened: ${reasonOf(problem)}.`)
	}
	const where = path.relative(root, real)
	if (where === '..' || where.startsWith(`..${path.sep}`) || path.isAbsolute(where)) {
		throw new Refusal(`"${given}" lies outside the workspace "${root}". Say which workspace is meant with --workspace.`)
	}
	return withSlashes(where)
}
