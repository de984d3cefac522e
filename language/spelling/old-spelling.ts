import type { Fault, TextEdit } from '../model/reading.ts'
import type { Span } from '../model/text.ts'
import type { Line } from '../parser/lines.ts'
import { spacesBetween } from './spacing.ts'
import { spell, type Word } from './spell.ts'

/**
 * What reads in several spellings and is written in one: `4x5` and `4×5` are `4 x 5`, `@8` is `rpe 8`, `100kg` is `100 kg`. Whatever the
 * formatter writes otherwise, layout apart, is found here: both ask for the spelling of a line in the same place.
 */

/** What is written otherwise at one place of a line. */
export interface Respelling {
	readonly edits: readonly TextEdit[]
	/** The words that it is about. */
	readonly span: Span
	readonly was: string
	readonly becomes: string
}

/** The most examples that a message shows. */
const mostExamples = 3
/** A longer stretch in a message helps nobody to find it. */
const longestExample = 40

/** One message for all of a definition's spellings; its correction changes all of them. */
export function reportOldSpelling(found: readonly Respelling[]): Fault[] {
	const [first] = found
	if (!first) return []
	// What is only put in shows where it stands, which is beside what is shown.
	const examples = new Map(found.filter(({ was }, index) => was !== '' || index === 0).map(({ was, becomes }) => [was, becomes]))
	const shown = [...examples].slice(0, mostExamples).map(([was, becomes]) => `${becomes}, not ${was}`)
	const more = examples.size > mostExamples ? '; and more of the kind' : ''
	return [
		{
			code: 'old-spelling',
			span: first.span,
			message: `This reads, but it is written otherwise: ${shown.join('; ')}${more}.`,
			corrections: [{ title: 'Write all of it in the usual form', edits: found.flatMap(({ edits }) => edits) }],
		},
	]
}

/** Changes that so many words and gaps at most lie between are shown as one: `4x5 @8`. */
const farthest = 6

/** A word or what stands before it, as it is and as it should be. */
interface Piece {
	readonly start: number
	readonly end: number
	readonly text: string
	readonly becomes: string
	readonly isWord: boolean
}

/**
 * What a line of a definition writes otherwise.
 * @param text The definition's own text.
 * @param leftOut Stretches of the text that are read as if they were not there: those of this line, before it and behind it.
 */
export function respellingsOf(line: Line, text: string, leftOut: readonly Span[]): Respelling[] {
	const words = spell(line)
	const spelled = new Set(words.flatMap(({ start, end }) => (end > start ? [start] : [])))
	const unspelled = line.tokens.filter(({ start, end }) => end > start && !spelled.has(start))
	const signs = unspelled.length === 0 ? leftOut : [...leftOut, ...unspelled].sort((a, b) => a.start - b.start)
	const pieces = piecesOf(words, text, signs)
	const found: Respelling[] = []
	for (let at = 0; at < pieces.length; at++) {
		if (!isChanged(pieces[at]!)) continue
		let last = at
		for (let next = at; next < pieces.length && next - last <= farthest; next++) if (isChanged(pieces[next])) last = next
		found.push(respelling(pieces, at, last))
		at = last
	}
	return found
}

function respelling(pieces: readonly Piece[], from: number, to: number): Respelling {
	const edits: TextEdit[] = []
	for (let at = from; at <= to; at++) {
		const piece = pieces[at]!
		if (!isChanged(piece)) continue
		const before = edits[edits.length - 1]
		const span = { start: piece.start, end: piece.end }
		// A list's sign before the line goes by itself, so that a word can be put in behind it.
		const isSign = at - 1 === 0 && !pieces[0]!.isWord
		if (before?.span.end === piece.start && at > from && isChanged(pieces[at - 1]!) && !isSign)
			edits.splice(-1, 1, { span: { start: before.span.start, end: piece.end }, text: before.text + piece.becomes })
		else edits.push({ span, text: piece.becomes })
	}
	const shown = pieces.slice(beginOfShown(pieces, from), endOfShown(pieces, to) + 1)
	const textOf = (texts: (piece: Piece) => string) =>
		short(
			shown
				.map(texts)
				.join('')
				.replace(/\s+/g, ' ')
				.replace(/[,;\s]+$/, '')
				.trim(),
		)
	return {
		edits,
		span: { start: shown[0]!.start + /^\s*/.exec(shown[0]!.text)![0].length, end: shown[shown.length - 1]!.end },
		was: textOf(piece => piece.text),
		becomes: textOf(piece => piece.becomes),
	}
}

/** Words are shown whole, with what stands right beside them; a sign that is left out or put in, with the word beside it. */
function beginOfShown(pieces: readonly Piece[], from: number): number {
	const piece = pieces[from]!
	// A number that is put in, or words that go, begin a stretch of their own: `1 x 5` for `5 reps`.
	if (piece.isWord ? piece.text === '' && /^\d/.test(piece.becomes) : /[a-z]/i.test(piece.text)) return from
	let first = piece.isWord && /\w/.test(piece.becomes) && piece.text !== '' ? from : Math.max(from - (piece.isWord ? 2 : 1), 0)
	while (first > 1 && pieces[first - 1]!.text === '' && pieces[first - 2]!.isWord) first -= 2
	return first
}

function endOfShown(pieces: readonly Piece[], to: number): number {
	const most = pieces.length - 1
	const piece = pieces[to]!
	let last = piece.isWord && /\w/.test(piece.text) ? to : Math.min(to + (piece.isWord ? 2 : 1), most)
	while (last + 2 <= most && pieces[last + 1]!.text === '' && pieces[last + 2]!.isWord) last += 2
	return last
}

function piecesOf(words: readonly Word[], text: string, leftOut: readonly Span[]): Piece[] {
	const pieces: Piece[] = []
	for (const [index, word] of words.entries()) {
		const before = words[index - 1]
		const gap = before ? gapBetween(before, word, text, leftOut) : beginOf(word, text, leftOut)
		if (gap) pieces.push(gap)
		const { start, end } = word
		const written = text.slice(start, end)
		// What begins a line of its own may have been tight behind the one before.
		const space = index === 0 && word.text !== written && /\S/.test(text[start - 1] ?? ' ') && !gap ? ' ' : ''
		pieces.push({ start, end, text: written, becomes: space + word.text, isWord: true })
	}
	const last = words[words.length - 1]
	const behind =
		last && leftOut.find(({ start, end }) => start >= last.end && isBlank(text.slice(last.end, start)) && !joins(text, end))
	if (behind)
		pieces.push({ start: last.end, end: behind.end, text: text.slice(last.end, behind.end), becomes: '', isWord: false })
	return pieces
}

/** What is left out right before a line: the dash of a list. */
function beginOf(word: Word, text: string, leftOut: readonly Span[]): Piece | undefined {
	const sign = leftOut.findLast(({ end }) => end <= word.start && isBlank(text.slice(end, word.start)))
	return sign && joins(text, sign.end)
		? { start: sign.start, end: word.start, text: text.slice(sign.start, word.start), becomes: '', isWord: false }
		: undefined
}

/** Does a word follow on the same line? */
function joins(text: string, from: number): boolean {
	return /^[^\S\r\n]*[^\s/)]/.test(text.slice(from, from + 40))
}

function gapBetween(before: Word, after: Word, text: string, leftOut: readonly Span[]): Piece {
	const { end: start } = before
	const { start: end } = after
	const written = text.slice(start, end)
	const keep: Piece = { start, end, text: written, becomes: written, isWord: false }
	const usual = ' '.repeat(spacesBetween(before, after))
	const signs = leftOut.filter(sign => sign.start >= start && sign.end <= end)
	if (signs.length > 0) {
		const rest = signs.reduceRight((left, sign) => left.slice(0, sign.start - start) + left.slice(sign.end - start), written)
		return { ...keep, becomes: isBlank(rest) ? usual : rest }
	}
	// Line breaks and wide gaps are layout, and so is what stands around a comma that was written.
	if (isBlank(written) && written.length === usual.length) return keep
	if (written.length > 1 || /[\r\n]/.test(written)) return keep
	const isRespelled = [before, after].some(word => word.text !== text.slice(word.start, word.end))
	if (!isRespelled && isLayout(before, after)) return keep
	return { ...keep, becomes: usual }
}

function isLayout(before: Word, after: Word): boolean {
	if (after.type === ',' || after.type === ':' || before.type === ',' || before.type === ':') return true
	const matters = (word: Word) => isNumber(word) || ['TIMES', 'RANGE', 'DASH', '+', '%'].includes(word.type)
	return !matters(before) && !matters(after)
}

function isNumber({ type }: Word): boolean {
	return type === 'NUMBER' || type === 'DECIMAL_COMMA' || type === 'OTHER_NUMBER'
}

function isChanged(piece: Piece | undefined): boolean {
	return piece !== undefined && piece.text !== piece.becomes
}

function isBlank(text: string): boolean {
	return /^[\s\u200B\u2060\uFEFF]*$/.test(text)
}

function short(text: string): string {
	return text.length > longestExample ? `${text.slice(0, longestExample - 1)}…` : text
}
