import { EOF, type IRecognitionException, type IToken, type TokenType } from 'chevrotain'
import { type AstNode, CstUtils, type LangiumCoreServices } from 'langium'
import type { Document, Definition as Tree } from '../grammar/generated/ast.ts'
import type { Correction, Fault } from '../model/reading.ts'
import type { Span } from '../model/text.ts'
import { nearest } from '../names/nearest.ts'
import { explainFault, quote } from './messages.ts'
import type { HandedLexer } from './services.ts'
import { isReserved, type Stretch } from './split.ts'
import { reservedWords } from './tokens.ts'

/** A definition's tree, or a stretch of text that none could be made of; all positions count from `start`. */
export interface Parsed {
	/** Offset in the stretch's own text. */
	readonly start: number
	readonly end: number
	readonly tree: Tree | undefined
	readonly tokens: readonly IToken[]
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
		if (isReserved(first)) {
			const { tree, errors } = this.attempt(tokens, text)
			if (errors.length === 0) return [{ start, end, tree, tokens, faults: [] }]
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
		if (!isReserved(first)) return [{ start, end, tree: undefined, tokens, faults: [stray(first)] }]
		return [{ start, end, tokens, ...this.repair(tokens, text) }]
	}

	/** Reads on after faults: misspelt words as the nearest that let more be read, else from the next line's first word. */
	private repair(given: IToken[], text: string): Pick<Parsed, 'tree' | 'faults'> {
		const faults: Fault[] = []
		let tokens = given.map((token, index) => {
			if (index === 0 || !isReserved(token)) return token
			faults.push(reservedAsName(token))
			return retyped(token, this.lexer.definition.ID!)
		})
		let attempt = this.attempt(tokens, text)
		let lastCut = -1
		for (let round = 0; attempt.errors.length > 0; round++) {
			const at = this.errorIndex(attempt.errors, tokens)
			const spelled = round < mostRepairs ? this.respell(tokens, attempt.errors, text) : undefined
			if (spelled) {
				faults.push(spelled.fault)
				tokens = spelled.tokens
				attempt = spelled.attempt
				if (spelled.at === at) lastCut = at
				continue
			}
			// A fault right where the last cut was made is its consequence, not a second fault.
			if (at !== lastCut) faults.push(faultOf(attempt.errors[0]!, tokens, at))
			const lost = attempt.errors.reduce((count, error) => count + error.resyncedTokens.length, 0)
			if (round === 0 && lost <= littleLost && attempt.errors.length <= 2 && attempt.tree) {
				if (attempt.errors[1]) faults.push(faultOf(attempt.errors[1], tokens, this.errorIndex([attempt.errors[1]], tokens)))
				break
			}
			if (at >= tokens.length || at === 0 || round >= 2 * mostRepairs) break
			tokens = [...tokens.slice(0, at), ...tokens.slice(nextLineStart(tokens, at))]
			lastCut = at
			attempt = this.attempt(tokens, text)
		}
		return { tree: attempt.tree, faults: faults.slice(0, mostFaults) }
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
				const repaired = [...tokens.slice(0, index), retyped(token, this.keywords.get(word)!), ...tokens.slice(index + 1)]
				const attempt = this.attempt(repaired, text)
				const isBetter =
					attempt.errors.length < errors.length || (at === first && this.errorIndex(attempt.errors, repaired) > first)
				if (!isBetter) continue
				const fault = misspelt(token, word, `${quote(token.image)} is no word that can stand here.`)
				return { tokens: repaired, attempt, fault, at }
			}
		}
		return undefined
	}

	private attempt(tokens: IToken[], text: string): { tree: Tree | undefined; errors: IRecognitionException[] } {
		this.lexer.hand({ tokens, hidden: [], errors: [] })
		const { value, parserErrors } = this.services.parser.LangiumParser.parse<Document & AstNode>(text)
		const tree = value.definitions?.[0]
		if (tree) for (const token of tokens) if (token.payload) putWordIn(tree, token)
		return { tree, errors: [...parserErrors] }
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
			if (!name || !title || !isPlainName(token) || !isPlainName(name) || !isString(title)) return false
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

/** Read as another word; its image stays, since places are counted by it, and the word itself is put in after. */
function retyped(token: IToken, type: TokenType): IToken {
	const word = isWord(type) ? type.PATTERN : undefined
	return { ...token, tokenType: type, tokenTypeIdx: type.tokenTypeIdx!, payload: word === token.image ? undefined : word }
}

/** Where the tree holds a misspelt word, the word that it was read as stands in its place: `acessory` is the role `accessory`. */
function putWordIn(tree: Tree, { startOffset, image, payload }: IToken): void {
	const leaf = tree.$cstNode && CstUtils.findLeafNodeAtOffset(tree.$cstNode, startOffset)
	const node = leaf?.astNode as Record<string, unknown> | undefined
	// `Block` is also the tree's own name for what a block is; those names begin with a dollar sign.
	for (const [property, value] of Object.entries(node ?? {}))
		if (value === image && !property.startsWith('$')) node![property] = payload
}

function moved(token: IToken, by: number): IToken {
	return { ...token, startOffset: token.startOffset + by, endOffset: token.endOffset! + by }
}

export function spanOf(token: IToken): Span {
	return { start: token.startOffset, end: token.endOffset! + 1 }
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

function faultOf(error: IRecognitionException, tokens: readonly IToken[], at: number): Fault {
	const token = error.token.tokenType === EOF || at >= tokens.length ? tokens[tokens.length - 1]! : error.token
	return { code: 'syntax', span: spanOf(token), message: explainFault(error, tokens), corrections: [] }
}
