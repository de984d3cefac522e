import { execFile, spawn } from 'node:child_process'
import { Refusal } from '../refusal.ts'
import { decode } from './file-text.ts'
import { fileEnding, isSkipped } from './find-files.ts'
import { Workspace } from './workspace.ts'

/**
 * The workspace as it was in a revision that git knows. It lies where the present one lies: paths and URIs are the same.
 * @throws {Refusal} where git is not installed, the folder is no repository, or the revision is unknown.
 */
export async function openRevision(root: string, revision: string): Promise<Workspace> {
	const commit = (
		await git(root, ['rev-parse', '--verify', '--quiet', '--end-of-options', `${revision}^{commit}`], revision)
	).trim()
	const listing = await git(root, ['ls-tree', '-r', '-z', commit], revision)
	const entries = listing.split('\0').flatMap(entryOf).filter(isOurs)
	const contents = await readObjects(
		root,
		entries.map(entry => entry.object),
	)
	const workspace = new Workspace(root)
	for (const [index, { path }] of entries.entries()) workspace.set(path, decode(contents[index]!))
	return workspace
}

interface TreeEntry {
	/** Relative to the workspace, with `/`. */
	readonly path: string
	readonly object: string
}

/** `100644 blob 5d41…<tab>blocks/one.stave`; links and repositories within the repository are no texts. */
function entryOf(line: string): TreeEntry[] {
	const [, object, path] = /^100\d+ blob ([0-9a-f]+)\t(.+)$/s.exec(line) ?? []
	return object !== undefined && path !== undefined ? [{ path, object }] : []
}

function isOurs({ path }: TreeEntry): boolean {
	return path.endsWith(fileEnding) && !path.split('/').some(isSkipped)
}

function git(root: string, words: string[], revision: string): Promise<string> {
	return new Promise((resolve, reject) => {
		execFile('git', words, { cwd: root, maxBuffer: 256 * 1024 * 1024 }, (problem, output, said) => {
			if (!problem) resolve(output)
			else if (problem.code === 'ENOENT') reject(new Refusal('--new-since needs git, and there is no "git" on this machine.'))
			else if (/not a git repository/i.test(said)) reject(new Refusal(`--new-since needs git's history, and "${root}" has none.`))
			else reject(new Refusal(`git knows no revision "${revision}" here.${said.trim() === '' ? '' : ` It says: ${said.trim()}`}`))
		})
	})
}

/** The contents of objects, in the order asked for: one run of git for all of them. */
function readObjects(root: string, objects: readonly string[]): Promise<Uint8Array[]> {
	return new Promise((resolve, reject) => {
		const reader = spawn('git', ['cat-file', '--batch'], { cwd: root, stdio: ['pipe', 'pipe', 'inherit'] })
		const chunks: Buffer[] = []
		reader.on('error', reject)
		reader.stdout.on('data', chunk => chunks.push(chunk))
		reader.on('close', status => {
			if (status === 0) resolve(contentsOf(Buffer.concat(chunks)))
			else reject(new Refusal('git could not read the older texts.'))
		})
		// A git that ends early says so by its status.
		reader.stdin.on('error', () => {})
		reader.stdin.end(objects.map(object => `${object}\n`).join(''))
	})
}

/** What `git cat-file --batch` prints: for each object a line that ends with its length in bytes, the bytes, and a line break. */
function contentsOf(output: Buffer): Uint8Array[] {
	const contents: Uint8Array[] = []
	let at = 0
	while (at < output.length) {
		const lineEnd = output.indexOf('\n', at)
		const length = Number(output.toString('latin1', at, lineEnd).split(' ').at(-1))
		contents.push(output.subarray(lineEnd + 1, lineEnd + 1 + length))
		at = lineEnd + 1 + length + 1
	}
	return contents
}
