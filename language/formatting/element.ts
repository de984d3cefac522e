import type { Line } from '../parser/lines.ts'

/** A word, a comment, or a stretch that is kept, and where it is put. */
export interface Element {
	/** The first word of a line, another one, a comment, a comment that nothing can follow on its line, what does not read. */
	readonly kind: 'first' | 'word' | 'comment' | 'comment-to-end' | 'kept'
	readonly text: string
	/** Where it stands in the text as it was written. */
	readonly start: number
	readonly end: number
	/** Of a word. */
	readonly line: Line | undefined
	/** Of a word: the lexer's name. */
	readonly type?: string
	/** Line breaks before it: two leave a line blank. */
	breaks: number
	/** Spaces before it, after the line breaks. */
	spaces: number
}

export function isComment({ kind }: Element): boolean {
	return kind === 'comment' || kind === 'comment-to-end'
}

/** Columns by which a line is set in for each line that it belongs to. */
const indent = 2

export function indentOf(line: Line): number {
	return line.depth * indent
}

/** What a comment has pushed to the next line is set in deeper than any line that could follow. */
export function indentOfRest(line: Line): number {
	return indentOf(line) + 2 * indent
}
