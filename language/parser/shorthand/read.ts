import type { IToken, TokenType } from 'chevrotain'
import type { Span } from '../../model/text.ts'
import { wordsBeforeADefinedName } from '../words.ts'
import { clauseRules } from './clauses.ts'
import { dateRules } from './dates.ts'
import { dayRules } from './days.ts'
import { effortRules } from './efforts.ts'
import { gymRules } from './gyms.ts'
import { withoutLabels } from './labels.ts'
import { lineRules } from './lines.ts'
import { loadRules } from './loads.ts'
import { peopleRules } from './people.ts'
import { planRules } from './plans.ts'
import { setRules } from './sets.ts'
import { isNumber, type Put, type PutToken, type ShorthandRule, View } from './view.ts'

/** Tokens as they are meant, and those of the text that mean nothing. */
export interface Meant {
	readonly tokens: IToken[]
	readonly leftOut: readonly Span[]
}

/** How a token came to be that the lexer has not given so. */
export interface Origin {
	/** No word of its own stands for it in the text: it is only meant, on that side of the words whose place it has. */
	readonly inserted?: 'before' | 'behind'
	/** It begins or goes on with a line of its own, on the last letter of the one before. */
	readonly isOwnLine?: boolean
	/** What it is read as is a guess: the formatter leaves what is written. */
	readonly unsettled?: boolean
	/** What else it may be. */
	readonly others?: readonly string[]
}

const rules = new Map<string, ShorthandRule[]>()
for (const rule of [
	...dayRules,
	...dateRules,
	...gymRules,
	...peopleRules,
	...planRules,
	...effortRules,
	...clauseRules,
	...lineRules,
	...loadRules,
	...setRules,
])
	for (const word of rule.begins) rules.set(word, [...(rules.get(word) ?? []), rule])

/**
 * What coaches write elsewhere, as the words of ours that it means: `4x5 @8` is `4 x 5 rpe 8`. Only asked where a definition does not read
 * as it stands, so that no sound text is ever read otherwise. Titles, notes and comments are single tokens, and never looked into.
 * @param types The lexer's kinds of token, by name.
 */
export function readShorthand(written: readonly IToken[], types: Readonly<Record<string, TokenType>>): Meant {
	const kind = written[0]?.tokenType.name ?? ''
	const done: IToken[] = []
	const { tokens: given, leftOut: labels } = withoutLabels(written, types)
	const leftOut: Span[] = []
	for (let at = 0; at < given.length; ) {
		const view = new View(kind, given, at, done)
		const rewrite = rulesAt(given[at]!)
			.map(rule => rule.read(view))
			.find(one => one !== undefined)
		if (!rewrite) {
			done.push(inSmallLetters(given[at]!, [done[done.length - 2], done[done.length - 1]], types))
			at++
			continue
		}
		place(given.slice(at, at + rewrite.take), rewrite.put, given[at + rewrite.take], types, done, leftOut)
		at += rewrite.take
	}
	return { tokens: done, leftOut: [...leftOut, ...labels].sort((one, other) => one.start - other.start) }
}

function rulesAt(token: IToken): readonly ShorthandRule[] {
	if (isNumber(token)) return rules.get('0') ?? []
	const { name } = token.tokenType
	if (name === 'SHORT_TEMPO') return rules.get('a-tempo') ?? []
	if (name === 'DAYS_TOGETHER') return rules.get('days-together') ?? []
	if (name === 'TEMPO') return rules.get('a-whole-tempo') ?? []
	if (name === 'OTHER_DATE' || name === 'DATE') return rules.get('a-date') ?? []
	const own = rules.get(token.image.toLowerCase()) ?? []
	return name === 'ID' || name === 'OTHER_NAME' ? [...own, ...(rules.get('a-name') ?? [])] : own
}

/** `Main`, `WEEK`: a word of ours, where no name is expected. */
function inSmallLetters(
	token: IToken,
	[beforeThat, before]: readonly (IToken | undefined)[],
	types: Readonly<Record<string, TokenType>>,
): IToken {
	const { name } = token.tokenType
	const isName = name === 'OTHER_NAME' || name === 'GLUED_WORD'
	// A percent "of best" is followed by no name.
	const isOfBest = before?.image === 'best' && before.tokenType.name === 'best' && beforeThat?.image === 'of'
	if (!isName || (before && wordsBeforeADefinedName.has(before.image) && !isOfBest)) return token
	const word = token.image.toLowerCase()
	const type = /^[a-z-]+$/.test(word) ? types[word] : undefined
	return type ? asToken(token, { type: word, image: word }, types, token.startOffset, token.endOffset!) : token
}

/** Puts words in the place of what was taken; each stands for what it took the place of, else for nothing. */
function place(
	taken: readonly IToken[],
	put: readonly Put[],
	next: IToken | undefined,
	types: Readonly<Record<string, TokenType>>,
	done: IToken[],
	leftOut: Span[],
): void {
	const kept = put.filter(one => typeof one === 'number')
	if (kept.some((one, index) => index > 0 && one < kept[index - 1]!)) {
		placeTogether(taken, put, types, done)
		return
	}
	let free = 0
	for (let at = 0; at < put.length; ) {
		const found = put.findIndex((one, index) => index >= at && typeof one === 'number')
		const until = found < 0 ? put.length : found
		const keptAt = found < 0 ? taken.length : (put[found] as number)
		const all = put.slice(at, until) as Exclude<Put, number>[]
		const stretch = taken.slice(free, keptAt)
		const isInserted = (word: Put) => typeof word === 'object' && word.inserted !== undefined
		const words = all.filter(word => !isInserted(word))
		for (const word of all.filter(isInserted) as PutToken[]) {
			const base = (word.inserted === 'before' ? (stretch[0] ?? taken[keptAt]) : undefined) ?? done[done.length - 1] ?? next!
			done.push(asToken(base, word, types, base.startOffset, base.endOffset!, { inserted: word.inserted! }))
		}
		if (words.length === 0) leaveOut(stretch, leftOut)
		const behind = stretch[stretch.length - 1]
		for (const [index, word] of words.entries()) {
			const token = stretch[index]
			const isLast = index === words.length - 1
			if (token) done.push(asToken(token, word, types, token.startOffset, (isLast ? behind! : token).endOffset!))
			else {
				const base = behind ?? taken[keptAt] ?? done[done.length - 1] ?? next!
				const inserted = behind || base !== taken[keptAt] ? 'behind' : 'before'
				done.push(asToken(base, word, types, base.startOffset, base.endOffset!, { inserted }))
			}
		}
		if (found >= 0) done.push(taken[keptAt]!)
		free = keptAt + 1
		at = until + 1
	}
	if (put.length === 0 || typeof put[put.length - 1] === 'number') leaveOut(taken.slice(free), leftOut)
}

/** What follows right behind another stretch that is left out is one with it. */
function leaveOut([first, ...rest]: readonly IToken[], leftOut: Span[]): void {
	if (!first) return
	const end = (rest[rest.length - 1] ?? first).endOffset! + 1
	const before = leftOut[leftOut.length - 1]
	if (before?.end === first.startOffset) leftOut.splice(-1, 1, { start: before.start, end })
	else leftOut.push({ start: first.startOffset, end })
}

/** Words in another order than what they stand for: the first stands for all of it. */
function placeTogether(
	taken: readonly IToken[],
	put: readonly Put[],
	types: Readonly<Record<string, TokenType>>,
	done: IToken[],
): void {
	const first = taken[0]!
	const end = taken[taken.length - 1]!.endOffset!
	for (const [index, one] of put.entries()) {
		const token = typeof one === 'number' ? taken[one]! : undefined
		const word = token ? { type: token.tokenType.name, image: token.image } : (one as Exclude<Put, number>)
		done.push(asToken(first, word, types, first.startOffset, end, index === 0 ? {} : { inserted: 'behind' }))
	}
}

const kindsOfWords: Readonly<Record<string, string>> = { '1': 'NUMBER', x: 'TIMES' }

function asToken(
	base: IToken,
	word: Exclude<Put, number>,
	types: Readonly<Record<string, TokenType>>,
	startOffset: number,
	endOffset: number,
	origin: Origin = {},
): IToken {
	const { type, image, unsettled, others }: PutToken =
		typeof word === 'string' ? { type: kindsOfWords[word] ?? word, image: word } : word
	const tokenType = types[type]!
	const payload: Origin | undefined =
		origin.inserted || unsettled ? { ...origin, ...(unsettled ? { unsettled } : {}), ...(others ? { others } : {}) } : undefined
	return { ...base, image, startOffset, endOffset, tokenType, tokenTypeIdx: tokenType.tokenTypeIdx!, payload }
}
