import { TextDocument } from 'vscode-languageserver-textdocument'
import { type FileProblem, fileProblems } from '../../../language/workspace/file-problems.ts'
import { safelyCorrected } from '../../../language/workspace/safe-corrections.ts'
import { rewrite } from '../workspace/rewrite.ts'
import type { Workspace, WorkspaceFile } from '../workspace/workspace.ts'

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
	const written: string[] = []
	const failed: { path: string; reason: string }[] = []
	let made = 0
	for (const [where, before] of original) {
		const count = settle(workspace, where)
		const now = workspace.files.get(where)!
		if (now.text === before.text) continue
		const reason = await rewrite(workspace, before, now.text)
		if (reason === undefined) {
			written.push(where)
			made += count
		} else {
			workspace.set(where, before)
			failed.push({ path: where, reason })
		}
	}
	return { made, written, failed }
}

/** Corrects a file until nothing is left to correct; returns how many corrections were made. */
function settle(workspace: Workspace, where: string): number {
	// A correction that would make the text unreadable elsewhere is tried once.
	const refused = new Set<string>()
	let made = 0
	for (let round = 0; round < mostRounds; round++) {
		const count = correctOnce(workspace, where, refused)
		if (count === 0) break
		made += count
	}
	return made
}

function correctOnce(workspace: Workspace, where: string, refused: Set<string>): number {
	const file = workspace.files.get(where)!
	if (file.fault) return 0
	const problems = fileProblems(workspace.folder, file.uri)
	const chosen = apart(safelyCorrected(file.text, problems).filter(problem => !refused.has(keyOf(problem, file.text))))
	if (chosen.length === 0) return 0
	const unreadable = unreadableIn(problems)
	const corrected = (problems: readonly FileProblem[]) => {
		workspace.set(where, { ...file, text: textAfter(file, problems) })
		return unreadableIn(fileProblems(workspace.folder, file.uri)) <= unreadable
	}
	if (corrected(chosen)) return chosen.length
	// One of them does harm: each has to show that it does none.
	const harmless = chosen.filter(problem => corrected([problem]))
	for (const problem of chosen) if (!harmless.includes(problem)) refused.add(keyOf(problem, file.text))
	if (corrected(harmless)) return harmless.length
	workspace.set(where, file)
	return 0
}

/** Problems whose corrections do not touch each other; what is left over has its turn in the next round. */
function apart(problems: readonly FileProblem[]): FileProblem[] {
	const taken: Edit[] = []
	return problems.filter(problem => {
		const { edits } = problem.corrections[0]!
		if (edits.some(edit => taken.some(other => edit.start <= other.end && other.start <= edit.end))) return false
		taken.push(...edits)
		return true
	})
}

type Edit = FileProblem['corrections'][number]['edits'][number]

function textAfter(file: WorkspaceFile, problems: readonly FileProblem[]): string {
	const document = TextDocument.create(file.uri, 'barstave', 0, file.text)
	const edits = problems.flatMap(problem => problem.corrections[0]!.edits)
	const changes = edits.map(({ start, end, text }) => ({
		range: { start: document.positionAt(start), end: document.positionAt(end) },
		newText: text,
	}))
	return TextDocument.applyEdits(document, changes)
}

function unreadableIn(problems: readonly FileProblem[]): number {
	return problems.filter(problem => problem.code === 'syntax').length
}

/** A correction by what it says and does: the offsets of other problems may move. */
function keyOf({ code, start, end, message }: FileProblem, text: string): string {
	return JSON.stringify([code, message, text.slice(start, end)])
}
