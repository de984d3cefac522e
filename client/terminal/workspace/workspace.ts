import { readFile, realpath, stat } from 'node:fs/promises'
import path from 'node:path'
import { URI } from 'vscode-uri'
import { Folder } from '../../../language/workspace/folder.ts'
import { TextReader } from '../../../language/workspace/text-file.ts'
import { Progress } from '../output.ts'
import { Refusal } from '../refusal.ts'
import { decode, type FileText } from './file-text.ts'
import { type ClosedPath, findFiles, reasonOf } from './find-files.ts'

/** A file of a workspace: where it lies, and what was in it. */
export interface WorkspaceFile extends FileText {
	/** Relative to the workspace, with `/`. */
	readonly path: string
	readonly uri: string
}

/** The texts of one folder, read and known to each other. */
export class Workspace {
	readonly reader = new TextReader()
	readonly folder = new Folder(this.reader)
	/** By path, in the order of their characters. */
	readonly files = new Map<string, WorkspaceFile>()
	/** What could not be opened; everything else was read all the same. */
	closed: readonly ClosedPath[] = []

	/** @param root Absolute. */
	constructor(readonly root: string) {}

	/** Takes a text in, or in place of the one that a file had. */
	set(where: string, content: FileText): void {
		const uri = this.uriOf(where)
		this.files.set(where, { ...content, path: where, uri })
		this.folder.setFile(uri, content.text)
	}

	/** The URI of a file: the same that editors give it, so that both see the same order of definitions. */
	uriOf(where: string): string {
		return URI.file(path.join(this.root, where)).toString()
	}

	/** The path that a URI stands for; one that lies in no workspace (the built-in library's) stays as it is. */
	pathOf(uri: string): string {
		const { scheme, fsPath } = URI.parse(uri)
		return scheme === 'file' ? withSlashes(path.relative(this.root, fsPath)) : uri
	}

	/** Reads what is on the disk now; texts that have not changed keep all that is known of them. */
	async read(): Promise<void> {
		const found = await findFiles(this.root)
		const closed = [...found.closed]
		const progress = new Progress('Reading')
		const present = new Set<string>()
		for (const [index, where] of found.paths.entries()) {
			progress.at(index, found.paths.length)
			try {
				const bytes = await readFile(path.join(this.root, where))
				present.add(where)
				this.set(where, decode(bytes))
			} catch (problem) {
				closed.push({ path: where, reason: reasonOf(problem) })
			}
		}
		for (const where of [...this.files.keys()]) {
			if (present.has(where)) continue
			this.files.delete(where)
			this.folder.removeFile(this.uriOf(where))
		}
		progress.done()
		this.closed = closed
	}
}

/**
 * The workspace of a command: the folder given, or the current one, with all its texts read.
 * @throws {Refusal} where there is no such folder.
 */
export async function openWorkspace(given: string | undefined): Promise<Workspace> {
	const workspace = new Workspace(await rootOf(given ?? '.'))
	await workspace.read()
	return workspace
}

async function rootOf(given: string): Promise<string> {
	try {
		const root = await realpath(given)
		if ((await stat(root)).isDirectory()) return root
	} catch (problem) {
		throw new Refusal(`The workspace "${given}" cannot be opened: ${reasonOf(problem)}.`)
	}
	throw new Refusal(`The workspace "${given}" is not a folder.`)
}

export function withSlashes(where: string): string {
	return path.sep === '/' ? where : where.replaceAll(path.sep, '/')
}
