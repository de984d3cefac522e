import type { IToken } from 'chevrotain'
import type { Fault, TextEdit } from '../model/reading.ts'
import type { Span } from '../model/text.ts'
import { spanOf } from '../parser/parse.ts'
import { straightQuoted } from '../parser/tokens.ts'

/**
 * What reads in several spellings and is written in one: `4x5` and `4×5` are `4 x 5`, `3 to 5` is `3-5`, `100kg` is `100 kg`. Layout
 * apart, these are the changes that the formatter makes.
 */

/** A change of spelling, with what it is about for a message. */
interface Respelling {
	readonly edit: TextEdit
	/** The words that it is about. */
	readonly span: Span
	readonly was: string
	readonly becomes: string
}

const units = new Set(['kg', 'lb', 's', 'm', 'min', 'rm'])
/** After these a `superset` is a line of its own; elsewhere it may be a name. */
const endsOfALine = new Set([
	...['NUMBER', 'STRING', 'TEMPO', '%', 'side', 'bodyweight', 'failure', 'more', 'skip', 'set', 'sets', 'rep', 'reps'],
	...units,
])
/** The most examples that a message shows. */
const mostExamples = 3

/** One message for all of a definition's spellings; its correction changes all of them. */
export function reportOldSpelling(tokens: readonly IToken[]): Fault[] {
	const found = respellings(tokens)
	const [first] = found
	if (!first) return []
	const examples = new Map(found.map(({ was, becomes }) => [was, becomes]))
	const shown = [...examples].slice(0, mostExamples).map(([was, becomes]) => `${becomes}, not ${was}`)
	const more = examples.size > mostExamples ? '; and more of the kind' : ''
	return [
		{
			code: 'old-spelling',
			span: first.span,
			message: `This reads, but it is written otherwise: ${shown.join('; ')}${more}.`,
			corrections: [{ title: 'Write all of it in the usual form', edits: found.map(({ edit }) => edit) }],
		},
	]
}

function respellings(tokens: readonly IToken[]): Respelling[] {
	return tokens.flatMap((token, index) => {
		const before = tokens[index - 1]
		const after = tokens[index + 1]
		switch (token.tokenType.name) {
			case 'TIMES':
				return before && after ? between(before, token, after, ' x ') : []
			case 'DASH':
			case 'to':
				return before && after ? range(before, token, after, tokens[index - 2], tokens[index - 3], tokens[index + 2]) : []
			case 'TEMPO':
				return whole(token, token.image.replace(/–/g, '-').toLowerCase())
			case 'CURLY_STRING':
				return whole(token, straightQuoted(token.image)).map(one => ({ ...one, was: '“…”', becomes: '"…"' }))
			case 'superset':
				return before && endsOfALine.has(before.tokenType.name) ? whole(token, 'with the item above') : []
			case '%':
				return before && gap(before, token) === 1 ? [spaced(before, token, '')] : []
			default:
				return before && isNumber(before) && units.has(token.tokenType.name) && gap(before, token) === 0
					? [spaced(before, token, ' ')]
					: []
		}
	})
}

function range(
	before: IToken,
	sign: IToken,
	after: IToken,
	secondBefore: IToken | undefined,
	thirdBefore: IToken | undefined,
	secondAfter: IToken | undefined,
): Respelling[] {
	if (!isNumber(after)) return []
	if (before.tokenType.name === 'bodyweight') return sign.tokenType.name === 'DASH' ? between(before, sign, after, ' - ') : []
	const percent = before.tokenType.name === '%' ? before : undefined
	const from = percent ? secondBefore : before
	const wordBefore = percent ? thirdBefore : secondBefore
	// `from 60% to 78%` is a ramp, not a range.
	if (!from || !isNumber(from) || wordBefore?.tokenType.name === 'from') return []
	if (!percent) return between(before, sign, after, '-')
	if (secondAfter?.tokenType.name !== '%' || gap(percent, sign) > 1 || gap(sign, after) > 1) return []
	const edit = { span: { start: percent.startOffset, end: after.startOffset }, text: '-' }
	const was = `${from.image}%${spaces(percent, sign)}${sign.image}${spaces(sign, after)}${after.image}%`
	return [{ edit, span: over(from, after), was, becomes: `${from.image}-${after.image}%` }]
}

/** A sign between two tokens, with what stands around it; further apart than a space, only the sign itself is changed. */
function between(before: IToken, sign: IToken, after: IToken, text: string): Respelling[] {
	const close = gap(before, sign) <= 1 && gap(sign, after) <= 1
	const was = spaces(before, sign) + sign.image + spaces(sign, after)
	if (close ? was === text : sign.image === text.trim()) return []
	const span = close ? { start: spanOf(before).end, end: after.startOffset } : spanOf(sign)
	return [
		{
			edit: { span, text: close ? text : text.trim() },
			span: over(before, after),
			was: `${before.image}${close ? was : ` ${sign.image} `}${after.image}`,
			becomes: `${before.image}${text}${after.image}`,
		},
	]
}

function spaced(before: IToken, token: IToken, space: string): Respelling {
	return {
		edit: { span: { start: spanOf(before).end, end: token.startOffset }, text: space },
		span: over(before, token),
		was: before.image + spaces(before, token) + token.image,
		becomes: before.image + space + token.image,
	}
}

function whole(token: IToken, text: string): Respelling[] {
	return text === token.image
		? []
		: [{ edit: { span: spanOf(token), text }, span: spanOf(token), was: token.image, becomes: text }]
}

function over(first: IToken, last: IToken): Span {
	return { start: first.startOffset, end: spanOf(last).end }
}

function isNumber(token: IToken): boolean {
	return token.tokenType.name === 'NUMBER'
}

/** Characters between two tokens: 0 or 1 is no comment. */
function gap(before: IToken, after: IToken): number {
	return after.startOffset - spanOf(before).end
}

function spaces(before: IToken, after: IToken): string {
	return ' '.repeat(Math.min(gap(before, after), 1))
}
