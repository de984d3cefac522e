/**
 * Where things stand in the text. A definition's data never holds absolute positions: an edit above it moves it without changing it,
 * so that everything computed from it stays valid.
 */

/** A stretch of a definition's own text: UTF-16 offsets, counted from the first character of the definition. */
export interface Span {
	readonly start: number
	readonly end: number
}

/** A name as it stands at one place. */
export interface Name {
	readonly text: string
	readonly span: Span
}

/** A quoted text, without its quotes and escapes. */
export interface QuotedText {
	readonly text: string
	readonly span: Span
}

/** A value and the line of text that states it. */
export interface Fact<T> {
	readonly value: T
	readonly span: Span
}
