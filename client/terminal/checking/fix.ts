import { readFile } from 'node:fs/promises'
import path from 'node:path'
import { TextDocument } from 'vscode-languageserver-textdocument'
import { type FileProblem, fileProblems } from '../../../language/workspace/file-problems.ts'
import { byteOrderMark, decode } from '../workspace/file-text.ts'
import { reasonOf } from '../workspace/find-files.ts'
import type { Workspace, WorkspaceFile } from '../workspace/workspace.ts'
import { writeWhole } from '../workspace/write-file.ts'
import { hasSafeCorrection } from './judge.ts'

/** Corrections that bring up others settle in a few rounds; two that undo each other never do. */
const mostRounds = 10

/** What correcting came to. */
export interface Corrections {
	/** How many corrections were made, in the files that were written. */
	readonly made: number
	readonly written: readonly string[]
	/** Files that could not be written, with the reason; they are as they were. */
	readonly failed: readonly { readonly path: string; readonly reason: string }[]
}

/**
 * Makes every safe correction in the files at the given paths, round by round until nothing is left to correct, and writes what has
 * changed. A safe correction changes nothing about the training.
 */
export async function fix(workspace: Workspace, paths: readonly string[]): Promise<Corrections> {
	const original = new Map(paths.map(where => [where, workspace.files.get(where)!]))
	const counts = new Map<string, number>()
	for (let round = 0; round < mostRounds; round++) {
		if (!correctOnce(workspace, paths, counts)) break
	}
	const written: string[] = []
	const failed: { path: string; reason: string }[] = []
	let made = 0
	for (const [where, before] of original) {
		const now = workspace.files.get(where)!
		if (now.text === before.text) continue
		try {
			await write(workspace, before, now)
			written.push(where)
			made += counts.get(where) ?? 0
		} catch (problem) {
			workspace.set(where, before)
			failed.push({ path: where, reason: problem instanceof ChangedMeanwhile ? problem.message : reasonOf(problem) })
		}
	}
	return { made, written, failed }
}

/** One round over all files; `false` where there was nothing to correct. */
function correctOnce(workspace: Workspace, paths: readonly string[], counts: Map<string, number>): boolean {
	let corrected = false
	for (const where of paths) {
		const file = workspace.files.get(where)!
		if (file.fault) continue
		const edits = editsOf(fileProblems(workspace.folder, file.uri))
		if (edits.length === 0) continue
		const document = TextDocument.create(file.uri, 'barstave', 0, file.text)
		const changes = edits.flat().map(({ start, end, text }) => ({
			range: { start: document.positionAt(start), end: document.positionAt(end) },
			newText: text,
		}))
		const text = TextDocument.applyEdits(document, changes)
		if (text === file.text) continue
		workspace.set(where, { ...file, text })
		counts.set(where, (counts.get(where) ?? 0) + edits.length)
		corrected = true
	}
	return corrected
}

type Edit = FileProblem['corrections'][number]['edits'][number]

/** The safe corrections of a file that do not touch each other; what is left over has its turn in the next round. */
function editsOf(problems: readonly FileProblem[]): (readonly Edit[])[] {
	const taken: Edit[] = []
	const corrections: (readonly Edit[])[] = []
	for (const problem of problems) {
		const edits = hasSafeCorrection(problem) ? problem.corrections[0]!.edits : []
		if (edits.length === 0 || edits.some(edit => taken.some(other => touch(edit, other)))) continue
		taken.push(...edits)
		corrections.push(edits)
	}
	return corrections
}

function touch(a: Edit, b: Edit): boolean {
	return a.start <= b.end && b.start <= a.end
}

/** Someone else has written the file since it was read: their text stays. */
class ChangedMeanwhile extends Error {
	override message = 'it was changed by someone else meanwhile'
}

async function write(workspace: Workspace, before: WorkspaceFile, now: WorkspaceFile): Promise<void> {
	const where = path.join(workspace.root, before.path)
	if (decode(await readFile(where)).text !== before.text) throw new ChangedMeanwhile()
	await writeWhole(where, (now.byteOrderMark ? byteOrderMark : '') + now.text)
}
