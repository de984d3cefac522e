import type { IToken, TokenType } from 'chevrotain'
import type { Span } from '../../model/text.ts'

/** `A1`, `b2`: the second and later ones of a letter are done back to back with the one above. */
const label = /^[a-f]([1-6])$/i
const withAbove = ['with', 'the', 'item', 'above']
const signs = new Set([':', ')', '.', '-', '–'])

/**
 * A block's tokens without the labels and numbers that lines of a list begin with: `A1) main deadlift 3 x 5`, `2. accessory plank`. What
 * `A2` says, that it is done back to back with `A1`, stands at the end of its line.
 */
export function withoutLabels(
	tokens: readonly IToken[],
	types: Readonly<Record<string, TokenType>>,
): { readonly tokens: readonly IToken[]; readonly leftOut: readonly Span[] } {
	if (tokens[0]?.tokenType.name !== 'block') return { tokens, leftOut: [] }
	const kept: IToken[] = []
	const leftOut: Span[] = []
	let isBackToBack = false
	for (let at = 0; at < tokens.length; at++) {
		const token = tokens[at]!
		const length = at > 0 && tokens[at - 1]!.endLine !== token.startLine ? labelLength(tokens, at) : 0
		if (length > 0) {
			const last = tokens[at + length - 1]!
			leftOut.push({ start: token.startOffset, end: last.endOffset! + 1 })
			isBackToBack = Number(label.exec(token.image)?.[1] ?? 1) > 1
			at += length - 1
			continue
		}
		kept.push(token)
		const next = tokens[at + 1]
		if (isBackToBack && next?.startLine !== token.endLine) {
			isBackToBack = false
			for (const word of withAbove) kept.push(inserted(token, types[word]!, word))
		}
	}
	return { tokens: kept, leftOut }
}

/** How many tokens the label takes with which a line begins: none, where a line begins otherwise. */
function labelLength(tokens: readonly IToken[], at: number): number {
	const [first, sign] = [tokens[at]!, tokens[at + 1]]
	const hasSign = sign !== undefined && signs.has(sign.image)
	const length = hasSign ? 2 : 1
	const isBeforeWord = /^[a-z]/i.test(tokens[at + length]?.image ?? '')
	if (!isBeforeWord) return 0
	if (label.test(first.image)) return length
	return hasSign && sign.image !== ':' && sign.image !== '-' && /^\d{1,2}$/.test(first.image) ? length : 0
}

function inserted(base: IToken, tokenType: TokenType, image: string): IToken {
	// On its last letter: a line of no length would be none for the parser.
	const startOffset = base.endOffset!
	return {
		...base,
		image,
		startOffset,
		tokenType,
		tokenTypeIdx: tokenType.tokenTypeIdx!,
		payload: { inserted: 'behind', isOwnLine: true },
	}
}
