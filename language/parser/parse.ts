import type { IRecognitionException, IToken, TokenType } from 'chevrotain'
import type { AstNode, LangiumCoreServices } from 'langium'
import type { Document, Definition as Tree } from '../grammar/generated/ast.ts'
import type { Correction, Fault } from '../model/reading.ts'
import type { Span } from '../model/text.ts'
import { nearest } from '../names/nearest.ts'
import { explainFault, isInLine, meansNothing, quote } from './messages.ts'
import { lineAsNote, passOver } from './pass-over.ts'
import { reorder } from './reorder.ts'
import type { HandedLexer } from './services.ts'
import { type Origin, readShorthand } from './shorthand/read.ts'
import { isReserved, isReservedInCapitals, type Stretch } from './split.ts'
import { beginOfTextLine } from './text-lines.ts'
import { reservedWords } from './words.ts'

/** A definition's tree, or a stretch of text that none could be made of; all positions count from `start`. */
export interface Parsed {
	/** Offset in the stretch's own text. */
	readonly start: number
	readonly end: number
	/** From its start to its end. */
	readonly text: string
	readonly tree: Tree | undefined
	/** Where the last of its words or signs ends, whatever it is read as. */
	readonly lastEnd: number
	/** As they are meant: what is pasted from elsewhere stands in the words of ours that it means. */
	readonly tokens: readonly IToken[]
	/** Stretches of the text that are read as if they were not there: a list's dash, brackets. */
	readonly leftOut: readonly Span[]
	/** Stretches of sound lines that mean nothing there, each with its fault. */
	readonly passedOver: readonly Span[]
	readonly faults: readonly Fault[]
}

/** More than this many faults in one definition tell a reader nothing new. */
const mostFaults = 3
const mostRepairs = 6
/** Where the parser's own repair passed over no more than this, nothing worth reading was lost. */
const littleLost = 3

/** Words that begin a line: reading goes on at one of them after a fault. */
const lineStarts = new Set([
	...[
		'session',
		'main',
		'accessory',
		'warm-up',
		'conditioning',
		'test',
		'week',
		'each',
		'once',
		'superset',
		'note',
		'allow',
		'weeks',
	],
	...[
		'deload',
		'targets',
		'answers',
		'percents',
		'pattern',
		'trains',
		'muscles',
		'role',
		'equipment',
		'sets',
		'reps',
		'hold',
		'carry',
	],
	...[
		'intensity',
		'apart',
		'percent',
		'requires',
		'turn',
		'not',
		'load',
		'source',
		'weak',
		'needs',
		'answered',
		'caution',
		'step',
		'volume',
	],
	...[
		'heavy',
		'bests',
		'gates',
		'no',
		'muscle',
		'estimate',
		'deviation',
		'bar',
		'plates',
		'collars',
		'dumbbells',
		'stack',
		'fixed',
	],
	...[
		'round',
		'bodyweight',
		'best',
		'base',
		'fails',
		'keep',
		'passed',
		'available',
		'avoid',
		'members',
		'start',
		'days',
		'run',
		'swap',
	],
	...['add', 'drop', 'scale', 'move', 'pause', 'for', 'meet', 'on', 'did', 'felt', 'hurt', 'cleared'],
])

/** Parses one definition at a time; it never throws, and what it cannot read it reports. */
export class DefinitionParser {
	private readonly lexer: HandedLexer
	private readonly keywords: ReadonlyMap<string, TokenType>

	constructor(private readonly services: LangiumCoreServices) {
		this.lexer = services.parser.Lexer as HandedLexer
		const types = Object.values(this.lexer.definition)
		this.keywords = new Map(types.flatMap(type => (isWord(type) ? [[type.PATTERN as string, type] as const] : [])))
	}

	/** The definitions of one stretch: one, or more where a misspelt definition word stands in it. */
	parse(stretch: Stretch, text: string): Parsed[] {
		const tokens = stretch.tokens.map(token => moved(token, -stretch.start))
		return this.parseFrom(tokens, text.slice(stretch.start, stretch.end), 0)
	}

	/** `tokens` count from the beginning of `text`, which stands at `start` of the stretch. */
	private parseFrom(tokens: IToken[], text: string, start: number): Parsed[] {
		const first = tokens[0]!
		const end = start + text.length
		const lastEnd = tokens[tokens.length - 1]!.endOffset! + 1
		if (isReservedInCapitals(first)) {
			const word = first.image.toLowerCase()
			return this.parseFrom([readAs(first, this.keywords.get(word)!, word), ...tokens.slice(1)], text, start)
		}
		if (isReserved(first)) {
			const { tree, errors } = this.attempt(tokens, text)
			if (errors.length === 0) return [{ start, end, text, lastEnd, tree, tokens, leftOut: [], passedOver: [], faults: [] }]
		}
		const header = this.misspeltHeader(tokens)
		if (header === 0) {
			const word = nearest(first.image, reservedWords)!
			const [definition, ...rest] = this.parseFrom([retyped(first, this.keywords.get(word)!), ...tokens.slice(1)], text, start)
			const fault = misspelt(first, word, `${quote(first.image)} does not begin a definition.`)
			return [{ ...definition!, faults: [fault, ...definition!.faults].slice(0, mostFaults) }, ...rest]
		}
		if (header !== undefined) {
			const cut = tokens[header]!.startOffset
			const later = tokens.slice(header).map(token => moved(token, -cut))
			return [
				...this.parseFrom(tokens.slice(0, header), text.slice(0, cut), start),
				...this.parseFrom(later, text.slice(cut), start + cut),
			]
		}
		if (!isReserved(first))
			return [{ start, end, text, lastEnd, tree: undefined, tokens, leftOut: [], passedOver: [], faults: [stray(first)] }]
		return [{ start, end, text, lastEnd, ...this.repair(tokens, text) }]
	}

	/** Reads what is pasted from elsewhere as what it means, and on after faults: misspelt words as the nearest that let more be read, else from the next line's first word. */
	private repair(given: IToken[], text: string): Pick<Parsed, 'tree' | 'tokens' | 'leftOut' | 'passedOver' | 'faults'> {
		const faults: Fault[] = []
		const meant = readShorthand(given, this.lexer.definition)
		const signs = meant.tokens.filter(isSign)
		faults.push(...signs.map(token => meansNothing(token.image, spanOf(token))))
		let tokens = meant.tokens.flatMap((token, index) => {
			if (isSign(token)) return []
			if (index === 0 || !isReserved(token)) return [token]
			faults.push(reservedAsName(token))
			return [readAs(token, this.lexer.definition.ID!, token.image)]
		})
		// What is cut out below is still there for what works on layout.
		let all = tokens
		const passedOver: Span[] = []
		let attempt = this.attempt(tokens, text)
		let lastCut = -1
		for (let round = 0; attempt.errors.length > 0; round++) {
			const at = this.errorIndex(attempt.errors, tokens)
			const spelled = round < mostRepairs ? this.respell(tokens, attempt.errors, text) : undefined
			if (spelled) {
				faults.push(spelled.fault)
				tokens = spelled.tokens
				all = all.map(token => (token === spelled.from ? spelled.to : token))
				attempt = spelled.attempt
				if (spelled.at === at) lastCut = at
				continue
			}
			const reads = (those: IToken[]) => this.attempt(those, text).errors.length === 0
			const isTooShort = at >= tokens.length || endsTooEarly(attempt.errors[0]!, tokens, at)
			const isNew = round < mostRepairs && at !== lastCut && at > 0
			const reordered = isNew ? reorder(tokens, at, text, isTooShort, reads) : undefined
			if (reordered) {
				faults.push(reordered.fault)
				tokens = reordered.tokens
				attempt = this.attempt(tokens, text)
				continue
			}
			const stranger = isNew ? passOver(tokens, at, text, isTooShort, reads) : undefined
			if (stranger) {
				faults.push(stranger.fault)
				passedOver.push(stranger.fault.span)
				tokens = [...tokens.slice(0, stranger.from), ...tokens.slice(stranger.to)]
				attempt = this.attempt(tokens, text)
				continue
			}
			// A fault right where the last cut was made is its consequence, not a second fault.
			if (at !== lastCut) faults.push(faultOf(attempt.errors[0]!, tokens, at, text))
			const lost = attempt.errors.reduce((count, error) => count + error.resyncedTokens.length, 0)
			if (round === 0 && lost <= littleLost && attempt.errors.length <= 2 && attempt.tree) {
				const second = attempt.errors[1] && this.errorIndex([attempt.errors[1]], tokens)
				// On one line of the text a second fault follows from the first.
				const isOther =
					second !== undefined && beginOfTextLine(tokens, Math.min(second, tokens.length - 1)) !== beginOfTextLine(tokens, at)
				if (isOther) faults.push(faultOf(attempt.errors[1]!, tokens, second, text))
				break
			}
			if (at >= tokens.length || at === 0 || round >= 2 * mostRepairs) break
			// A line that is not whole goes before the next line does.
			const begin = at === lastCut || isTooShort ? beginOfTextLine(tokens, at - 1) : at
			const isRest = begin < at && begin > 0
			tokens = [...tokens.slice(0, isRest ? begin : at), ...tokens.slice(isRest ? at : nextLineStart(tokens, at))]
			lastCut = isRest ? begin : at
			attempt = this.attempt(tokens, text)
		}
		const worth = faults.filter(fault => passedOver.includes(fault.span) || !passedOver.some(span => holds(span, fault.span)))
		return { tree: attempt.tree, tokens: all, leftOut: meant.leftOut, passedOver, faults: worth.slice(0, mostFaults) }
	}

	/** Reads the first misspelt word at a fault as the word that it is nearest to, where more can be read then. */
	private respell(tokens: IToken[], errors: readonly IRecognitionException[], text: string) {
		const first = this.errorIndex(errors, tokens)
		for (const error of errors) {
			const at = this.errorIndex([error], tokens)
			for (const index of [at, at - 1]) {
				const token = tokens[index]
				if (!token || index < 1 || !isPlainName(token)) continue
				const word = nearest(token.image, this.keywords.keys())
				if (word === undefined || reservedWords.has(word)) continue
				const to = retyped(token, this.keywords.get(word)!)
				const repaired = [...tokens.slice(0, index), to, ...tokens.slice(index + 1)]
				const attempt = this.attempt(repaired, text)
				const isBetter =
					attempt.errors.length < errors.length || (at === first && this.errorIndex(attempt.errors, repaired) > first)
				if (!isBetter) continue
				const fault = misspelt(token, word, `${quote(token.image)} is no word that can stand here.`)
				return { from: token, to, tokens: repaired, attempt, fault, at }
			}
		}
		return undefined
	}

	private attempt(tokens: IToken[], text: string): { tree: Tree | undefined; errors: IRecognitionException[] } {
		this.lexer.hand({ tokens, hidden: [], errors: [] })
		const { value, parserErrors } = this.services.parser.LangiumParser.parse<Document & AstNode>(text)
		return { tree: value.definitions?.[0], errors: [...parserErrors] }
	}

	private errorIndex(errors: readonly IRecognitionException[], tokens: readonly IToken[]): number {
		if (errors.length === 0) return tokens.length
		const found = tokens.indexOf(errors[0]!.token)
		return found < 0 ? tokens.length : found
	}

	/** Where a name with a title follows a word that is nearly one that begins a definition. */
	private misspeltHeader(tokens: readonly IToken[]): number | undefined {
		const found = tokens.findIndex((token, index) => {
			const name = tokens[index + 1]
			const title = tokens[index + 2]
			if (!name || !title || !isPlainName(token) || !isString(title)) return false
			// A word of the language may be a name too; then the line must begin there, since a note stands after a word and a quote as well.
			const isOwnLine = index === 0 || tokens[index - 1]!.endLine !== token.startLine
			if (!isPlainName(name) && !(isOwnLine && isWord(name.tokenType) && !isReserved(name))) return false
			return nearest(token.image, reservedWords) !== undefined
		})
		return found < 0 ? undefined : found
	}
}

function isWord(type: TokenType): boolean {
	return typeof type.PATTERN === 'string' && /^[a-z]{2}/.test(type.PATTERN)
}

function isPlainName(token: IToken): boolean {
	return token.tokenType.name === 'ID' || token.tokenType.name === 'OTHER_NAME'
}

function isString(token: IToken): boolean {
	return token.tokenType.name.endsWith('STRING')
}

function nextLineStart(tokens: readonly IToken[], from: number): number {
	const starts = (index: number) => lineStarts.has(tokens[index]!.image)
	const later = tokens.map((_, index) => index).filter(index => index > from && starts(index))
	const onNewLine = later.find(index => tokens[index]!.startLine !== tokens[index - 1]!.endLine)
	return onNewLine ?? later[0] ?? tokens.length
}

/** Read as another word, which is a guess. */
function retyped(token: IToken, type: TokenType): IToken {
	const origin: Origin = { unsettled: true }
	return { ...readAs(token, type, isWord(type) ? (type.PATTERN as string) : token.image), payload: origin }
}

function readAs(token: IToken, type: TokenType, image: string): IToken {
	return { ...token, image, tokenType: type, tokenTypeIdx: type.tokenTypeIdx! }
}

function moved(token: IToken, by: number): IToken {
	return { ...token, startOffset: token.startOffset + by, endOffset: token.endOffset! + by }
}

/** The stretch of text that is replaced where a token is written otherwise: none of its own for a word that is only meant. */
export function spanOf(token: IToken): Span {
	const { inserted } = (token.payload ?? {}) as Origin
	const end = token.endOffset! + 1
	if (inserted) return inserted === 'before' ? { start: token.startOffset, end: token.startOffset } : { start: end, end }
	return { start: token.startOffset, end }
}

function isSign(token: IToken): boolean {
	return token.tokenType.name === 'SIGN' || token.tokenType.name === 'SIGN_BEHIND'
}

function misspelt(token: IToken, word: string, begin: string): Fault {
	const span = spanOf(token)
	const correction: Correction = { title: `Write "${word}"`, edits: [{ span, text: word }] }
	return { code: 'syntax', span, message: `${begin} Did you mean "${word}"?`, corrections: [correction] }
}

function stray(token: IToken): Fault {
	const message = `${quote(token.image)} does not begin a definition. Definitions begin with: ${[...reservedWords].join(', ')}.`
	return { code: 'syntax', span: spanOf(token), message, corrections: [] }
}

function reservedAsName(token: IToken): Fault {
	const message = `"${token.image}" begins a definition, so it cannot be a name. Put the name itself here.`
	return { code: 'syntax', span: spanOf(token), message, corrections: [] }
}

function faultOf(error: IRecognitionException, tokens: readonly IToken[], at: number, text: string): Fault {
	const isAtEnd = at >= tokens.length || endsTooEarly(error, tokens, at)
	const token = isAtEnd ? tokens[Math.min(at, tokens.length) - 1]! : error.token
	const message = explainFault(error, tokens, isAtEnd)
	return { code: 'syntax', span: spanOf(token), message, corrections: isAtEnd ? [] : asNote(tokens, at, text) }
}

/** A line of the text that begins with no word of ours, whatever of it could be read. */
function asNote(tokens: readonly IToken[], at: number, text: string): readonly Correction[] {
	const begin = beginOfTextLine(tokens, at)
	return !lineStarts.has(tokens[begin]!.image) ? lineAsNote(tokens, begin, text) : []
}

/** Is a line not finished where the next one begins? */
function endsTooEarly(error: IRecognitionException, tokens: readonly IToken[], at: number): boolean {
	const token = tokens[at]!
	return at > 0 && lineStarts.has(token.image) && tokens[at - 1]!.endLine !== token.startLine && isInLine(error)
}

function holds(outer: Span, inner: Span): boolean {
	return outer.start <= inner.start && inner.end <= outer.end
}
