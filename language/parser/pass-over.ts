import type { IToken } from 'chevrotain'
import type { Correction, Fault } from '../model/reading.ts'
import type { Span } from '../model/text.ts'
import { adviceOn } from './advice.ts'
import { quote } from './messages.ts'
import { beginOfTextLine, contextOf, endOfTextLine } from './text-lines.ts'

/** Words that begin a clause: behind words that mean nothing, the line may go on at one of them. */
const goesOnAt = new Set(['at', 'rpe', 'rir', 'tempo', 'rest', 'each', 'until', 'because', ',', 'from', 'on', 'in', 'to'])
/** A sign or a word that only joins what comes next; it goes with it. */
const joints = new Set([',', 'at', 'with', 'to', '+', '-', '–', '—', 'in', 'for', 'and', 'each'])
/** The most tokens before a fault that may belong to what means nothing. */
const mostBefore = 3
/** So many places at which the line may go on are tried, and its end. */
const mostEnds = 3
/** What stands on a line of its own is a line of sets where it begins so. */
const setLines = new Set(['main', 'accessory', 'warm-up', 'conditioning', 'test', 'week', 'did'])
const namesOfNotes = /^(note|source|caution)$/

/** A stretch of a line's tokens that can be read over: with it gone, the line reads. */
export interface PassedOver {
	readonly from: number
	readonly to: number
	readonly fault: Fault
}

/**
 * Finds, around the token at which a line does not read, the fewest tokens without which it does. The line's text is what counts: what a
 * coach means for people stands behind what is meant for us, on the same line.
 * @param isTooShort The token is the next line's: something is missing before it.
 * @param reads Does a definition of these tokens read?
 */
export function passOver(
	tokens: readonly IToken[],
	at: number,
	text: string,
	isTooShort: boolean,
	reads: (tokens: IToken[]) => boolean,
): PassedOver | undefined {
	// A line that ends too early is reported at its end.
	const last = isTooShort ? at - 1 : at
	const begin = beginOfTextLine(tokens, last)
	const end = endOfTextLine(tokens, last)
	if (begin === 0 || namesOfNotes.test(tokens[begin]!.image)) return undefined
	const context = contextOf(tokens, begin)
	const readsWithout = (from: number, to: number) => reads([...context, ...tokens.slice(begin, from), ...tokens.slice(to, end)])
	const places = Array.from({ length: end - last - 1 }, (_, index) => last + index + 1).filter(to => goesOn(tokens, to))
	const ends = [...places.slice(0, mostEnds), end]
	for (const to of ends) {
		for (let from = last; from > begin && from >= last - mostBefore; from--) {
			if (beginsSets(tokens.slice(from, to)) || !readsWithout(from, to)) continue
			const first = withJoints(tokens, from, begin)
			const isWhole = first === from || readsWithout(first, to)
			return explain(tokens, isWhole ? first : from, to, text)
		}
	}
	return undefined
}

/** `4 x at 70%`: sets that lack a number are no words for people. */
function beginsSets(tokens: readonly IToken[]): boolean {
	const at = tokens.findIndex(
		(token, index) => token.tokenType.name === 'TIMES' && tokens[index - 1]?.tokenType.name === 'NUMBER',
	)
	return at >= 0 && at < tokens.length - 1 && tokens[at + 1]!.tokenType.name !== 'NUMBER'
}

function goesOn(tokens: readonly IToken[], at: number): boolean {
	const token = tokens[at]!
	return goesOnAt.has(token.image) || tokens[at + 1]?.tokenType.name === 'TIMES'
}

/** `, easy` and `at heavy`: what joins them goes too. */
function withJoints(tokens: readonly IToken[], from: number, begin: number): number {
	let first = from
	while (first - 1 > begin && joints.has(tokens[first - 1]!.image)) first--
	return first
}

function explain(tokens: readonly IToken[], from: number, to: number, text: string): PassedOver {
	const begin = beginOfTextLine(tokens, from)
	const behind = endOf(tokens[from - 1]!)
	const until =
		tokens[to]?.startLine === tokens[from]!.startLine ? tokens[to]!.startOffset : lineEnd(text, endOf(tokens[to - 1]!))
	const written = text.slice(behind, until)
	const bare = written.replace(/^[\s,;:|/(–—-]+|[\s,;|)]+$/g, '')
	const start = behind + written.length - written.trimStart().length
	const span = { start, end: behind + written.trimEnd().length }
	const lineStart = text.lastIndexOf('\n', tokens[begin]!.startOffset) + 1
	const stranger = {
		before: text.slice(lineStart, behind),
		lineStart,
		words: written.trim().replace(/^[,;:|/()–—-]\s*|[,;|)]$/g, ''),
		span: { start: behind, end: span.end },
	}
	const advice = adviceOn(stranger)
	const isForPeople = advice === undefined || advice.isForPeople
	const note = !isForPeople ? [] : noteOf(bare, { start: behind, end: span.end }, text, tokens[begin]!.startOffset - lineStart)
	const message = advice?.message ?? generalMessage(bare, setLines.has(tokens[begin]!.image))
	return { from, to, fault: { code: 'syntax', span, message, corrections: [...(advice?.corrections ?? []), ...note] } }
}

function generalMessage(words: string, isSetLine: boolean): string {
	const begin = `${quote(words)} means nothing on this line.`
	return isSetLine
		? `${begin} Behind sets and reps stand the load, the effort, the tempo, the rest and "each side", as in 4 x 5 at 70% rest 2 min; what is for people stands in a note.`
		: `${begin} What is for people stands in a note, or after //.`
}

/** The words in a note of their own, below the line. */
function noteOf(words: string, span: Span, text: string, indentation: number): Correction[] {
	if (!/[a-z]/i.test(words)) return []
	const end = lineEnd(text, span.end)
	const note = `\n${' '.repeat(indentation + 2)}note "${words.replace(/[“”„"]/g, "'").replaceAll('\\', '\\\\')}"`
	const edits = [
		{ span, text: '' },
		{ span: { start: end, end }, text: note },
	]
	return [{ title: 'Keep it as a note', edits, isChoice: true }]
}

/** Where the words of a line end: before a comment, and before white space. */
function lineEnd(text: string, from: number): number {
	const rest = /^(?:"[^"\r\n]*"|(?!\/\/|\/\*)[^\r\n])*/.exec(text.slice(from))![0]
	return from + rest.trimEnd().length
}

/** What a log keeps as pain, and not as a note. */
const painWords = /\b(hurts?|hurting|pain|painful|ached?|aches|pinch(ed|es)?|tweaked|strained)\b/i

/** A whole line that begins with no word of ours, as a note. */
export function lineAsNote(tokens: readonly IToken[], at: number, text: string): Correction[] {
	const token = tokens[at]
	if (!token || at === 0 || beginOfTextLine(tokens, at) !== at) return []
	const start = token.startOffset
	const end = lineEnd(text, start)
	const words = text.slice(start, end)
	if (!/[a-z]/i.test(words) || words.includes('"')) return []
	if (tokens[0]!.tokenType.name === 'log' && painWords.test(words)) {
		return [{ title: 'Write it as what hurt', edits: [{ span: { start, end }, text: `hurt "${words}"` }], isChoice: true }]
	}
	const note = `note "${words.replaceAll('\\', '\\\\')}"`
	return [{ title: 'Keep the line as a note', edits: [{ span: { start, end }, text: note }], isChoice: true }]
}

function endOf(token: IToken): number {
	return token.endOffset! + 1
}
