import type { ShownLevel } from '../../../language/model/problem.ts'

/** What `check` found. The shape is the JSON that `check --format json` prints, version 1: it is stable. */
export interface CheckResult {
	readonly version: 1
	/** How many files were checked. */
	readonly files: number
	/** Only where one part of the work was done: `2/4`. */
	readonly shard?: string
	readonly counts: Readonly<Record<ShownLevel, number>>
	/** By path, line, column and code. */
	readonly problems: readonly ShownProblem[]
}

/** Lines and columns count from 1, columns in UTF-16 units; the end is the place after the last character. */
export interface ShownProblem {
	/** Relative to the workspace, with `/`. */
	readonly file: string
	readonly line: number
	readonly column: number
	readonly endLine: number
	readonly endColumn: number
	readonly code: string
	readonly level: ShownLevel
	readonly message: string
	/** Where the limit comes from. */
	readonly source: string | null
	readonly related: readonly RelatedPlace[]
}

export interface RelatedPlace {
	/** As above; the built-in library's files are `barstave-library:/…`. */
	readonly file: string
	readonly line: number
	readonly column: number
	readonly message: string
}

/** From the loudest. */
export const shownLevels = ['error', 'warning', 'info', 'hint'] as const satisfies readonly ShownLevel[]

/** Puts problems into their fixed order and counts them. */
export function resultOf(files: number, problems: readonly ShownProblem[], shard?: string): CheckResult {
	const counts = { error: 0, warning: 0, info: 0, hint: 0 }
	for (const { level } of problems) counts[level]++
	return { version: 1, files, ...(shard === undefined ? {} : { shard }), counts, problems: [...problems].sort(inOrder) }
}

/** Is there a problem at the level, or a louder one? */
export function reaches(result: CheckResult, level: ShownLevel): boolean {
	return shownLevels.slice(0, shownLevels.indexOf(level) + 1).some(one => result.counts[one] > 0)
}

function inOrder(a: ShownProblem, b: ShownProblem): number {
	return (
		byText(a.file, b.file) ||
		a.line - b.line ||
		a.column - b.column ||
		byText(a.code, b.code) ||
		a.endLine - b.endLine ||
		a.endColumn - b.endColumn ||
		byText(a.message, b.message)
	)
}

/** Character by character, the same on every machine: no language's own order. */
function byText(a: string, b: string): number {
	return a < b ? -1 : a > b ? 1 : 0
}
