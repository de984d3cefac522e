import type { IToken } from 'chevrotain'
import { reservedWords, wordsBeforeADefinedName } from './words.ts'

/** A stretch of tokens that is read by itself: it begins with a word that begins a definition, except the first of a text. */
export interface Stretch {
	readonly tokens: readonly IToken[]
	readonly start: number
	/** Where the next one starts, or the text ends. */
	readonly end: number
}

/**
 * Words after which a name must stand. A reserved word there, on the same line, is a mistaken name and begins nothing; on a line of its
 * own it begins a definition, so that a half-typed `run` does not swallow what follows.
 */
const wordsBeforeAName = new Set([
	...wordsBeforeADefinedName,
	...['for', 'with', 'by', 'of', 'at', 'to', 'after', 'as', 'before', 'over', 'on', 'available', 'days', ','],
	...['bar', 'stack', 'fixed', 'equipment', 'uses', 'trains', 'muscles', 'role', 'link', 'needs', 'deviation'],
])

/** Splits a text's tokens at the words that begin a definition. */
export function splitDefinitions(tokens: readonly IToken[], length: number): Stretch[] {
	const cuts = tokens.flatMap((_, index) => (index > 0 && beginsDefinition(tokens, index) ? [index] : []))
	const starts = tokens.length > 0 ? [0, ...cuts] : []
	return starts.map((from, index) => {
		const to = starts[index + 1]
		return {
			tokens: tokens.slice(from, to),
			start: tokens[from]!.startOffset,
			end: to === undefined ? length : tokens[to]!.startOffset,
		}
	})
}

export function isReserved(token: IToken): boolean {
	return reservedWords.has(token.tokenType.name)
}

/** `Block`, `PLAN`: a word that begins a definition, as a telephone writes it. */
export function isReservedInCapitals(token: IToken): boolean {
	return token.tokenType.name === 'OTHER_NAME' && reservedWords.has(token.image.toLowerCase())
}

function beginsDefinition(tokens: readonly IToken[], index: number): boolean {
	const token = tokens[index]!
	const before = tokens[index - 1]!
	if (isReservedInCapitals(token)) return before.endLine !== token.startLine && /^[a-z]/i.test(tokens[index + 1]?.image ?? '')
	if (!isReserved(token)) return false
	return before.endLine !== token.startLine || !wordsBeforeAName.has(before.image)
}
