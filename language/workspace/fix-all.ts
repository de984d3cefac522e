import { type FileProblem, fileProblems } from './file-problems.ts'
import type { Folder } from './folder.ts'
import { safelyCorrected } from './safe-corrections.ts'
import type { FileEdit } from './tidy-edits.ts'

/** Corrections that bring up others settle in a few rounds; two that undo each other never do. */
const mostRounds = 10

/** What correcting a file came to. */
interface FixedFile {
	readonly text: string
	/** How many corrections were made. */
	readonly made: number
	/** The edits of each round, in the order of the text; those of a later round are places in what the one before has made. */
	readonly rounds: readonly (readonly FileEdit[])[]
}

/**
 * Makes every safe correction in a file, round by round until nothing is left to correct; the folder has the corrected text after. A safe
 * correction changes nothing about the training.
 */
export function fixAll(folder: Folder, uri: string): FixedFile {
	// A correction that would make the text unreadable elsewhere is tried once.
	const refused = new Set<string>()
	const rounds: FileEdit[][] = []
	let made = 0
	while (rounds.length < mostRounds) {
		const chosen = fixOnce(folder, uri, refused)
		if (chosen.length === 0) break
		rounds.push(editsOf(chosen))
		made += chosen.length
	}
	return { text: folder.file(uri)?.text ?? '', made, rounds }
}

function fixOnce(folder: Folder, uri: string, refused: Set<string>): readonly FileProblem[] {
	const text = folder.file(uri)?.text ?? ''
	const problems = fileProblems(folder, uri)
	const chosen = apart(safelyCorrected(text, problems).filter(problem => !refused.has(keyOf(problem, text))))
	if (chosen.length === 0) return []
	const unreadable = unreadableIn(problems)
	const corrected = (some: readonly FileProblem[]) => {
		folder.setFile(uri, textAfter(text, editsOf(some)))
		return unreadableIn(fileProblems(folder, uri)) <= unreadable
	}
	if (corrected(chosen)) return chosen
	// One of them does harm: each has to show that it does none.
	const harmless = chosen.filter(problem => corrected([problem]))
	for (const problem of chosen) if (!harmless.includes(problem)) refused.add(keyOf(problem, text))
	if (harmless.length > 0 && corrected(harmless)) return harmless
	folder.setFile(uri, text)
	return []
}

/** Problems whose corrections do not touch each other; what is left over has its turn in the next round. */
function apart(problems: readonly FileProblem[]): FileProblem[] {
	const taken: FileEdit[] = []
	return problems.filter(problem => {
		const { edits } = problem.corrections[0]!
		if (edits.some(edit => taken.some(other => edit.start <= other.end && other.start <= edit.end))) return false
		taken.push(...edits)
		return true
	})
}

function editsOf(problems: readonly FileProblem[]): FileEdit[] {
	return problems.flatMap(problem => problem.corrections[0]!.edits).sort((a, b) => a.start - b.start)
}

function textAfter(text: string, edits: readonly FileEdit[]): string {
	let result = ''
	let at = 0
	for (const { start, end, text: by } of edits) {
		result += text.slice(at, start) + by
		at = end
	}
	return result + text.slice(at)
}

function unreadableIn(problems: readonly FileProblem[]): number {
	return problems.filter(problem => problem.code === 'syntax').length
}

/** A correction by what it says and does: the offsets of other problems may move. */
function keyOf({ code, start, end, message }: FileProblem, text: string): string {
	return JSON.stringify([code, message, text.slice(start, end)])
}
