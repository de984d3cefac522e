import type { IToken, TokenType } from 'chevrotain'
import { DefaultTokenBuilder, DefaultValueConverter, type GrammarAST, type TokenBuilderOptions } from 'langium'
import { numberWords } from './shorthand/number-words.ts'
import { reservedWords, wordsBeforeADefinedName } from './words.ts'

/** Letters of any script, as single UTF-16 units; what a name may not have is reported at the name, not at each letter. */
const letter = 'A-Za-z_\\u00AA-\\u00D6\\u00D8-\\u00F6\\u00F8-\\u02FF\\u0370-\\u1FFF\\u2C00-\\u2DFF\\u3040-\\uFAFF\\uFE20-\\uFEFE'
const letterOrDigit = `${letter}0-9\\u0300-\\u036F`

/** The name of a month or its short form, as the lexer sees it; what is none is no date of the calendar. */
const month = '(?:jan|feb|mar|apr|may|june?|july?|aug|sept?|oct|nov|dec)[a-z]*\\.?'
const otherDates = [
	'\\d{4}[-./]\\d{1,2}[-./]\\d{1,2}(?![\\d-])',
	'\\d{1,2}[./]\\d{1,2}[./]\\d{2,4}(?!\\d)',
	`\\d{1,2}(?:st|nd|rd|th)?[ .\\u00A0-]{0,2}${month}[ ,.\\u00A0-]{1,2}\\d{4}(?!\\d)`,
	`${month}[ \\u00A0]\\d{1,2}(?:st|nd|rd|th)?,?[ \\u00A0]\\d{4}(?!\\d)`,
]

/**
 * Forms that are read although they are not ours, because their meaning is plain: name of the token, what it stands for, its pattern.
 * `language/reading/spellings.ts` reports each with its correction.
 */
const readableForms: readonly { name: string; category?: string; pattern: RegExp }[] = [
	{ name: 'OTHER_DATE', category: 'DATE', pattern: new RegExp(otherDates.join('|'), 'i') },
	{
		name: 'OTHER_NUMBER',
		category: 'NUMBER',
		pattern: /[\uFF10-\uFF19]+([.,\uFF0E\uFF0C][\uFF10-\uFF19]+)?|\d*[¼½¾]/,
	},
	/** `2.2.2` means nothing by itself; read as numbers it would be three faults. */
	{ name: 'DOTTED', pattern: /\d+(?:\.\d+){2,}/ },
	{ name: 'CURLY_STRING', category: 'STRING', pattern: /[“”„](\\.|[^“”„"\\\n\r])*[“”"]/ },
	/** It ends with its line, or with the comment there. */
	{
		name: 'UNCLOSED_STRING',
		category: 'STRING',
		pattern: /["“”„](\\.|(?![^\S\r\n]+\/\/)[^"“”„\\\n\r])*\\?/,
	},
	/** Signs that only mean something in what is pasted from elsewhere: `language/parser/shorthand` reads them. */
	{
		name: 'SIGN',
		pattern:
			/@(?=[^\S\r\n]*[\dA-Za-z<≤~≈\uFF10-\uFF19])|<=|<(?=\s*\d)|[~≈](?=\s*\d)|\((?=[\w@])|\/(?![/*])|\*(?=[^\S\r\n])|[＠（）：，％＋≤);=•·▪|&→>]|\.(?=\s)/,
	},
	{ name: 'OTHER_NAME', category: 'ID', pattern: new RegExp(`[${letter}][${letterOrDigit}]*(-[${letterOrDigit}]+)*`) },
]

/** Words after which `0,5` is a number; elsewhere digits around a comma are a number only before a unit, else a list. */
const wordsBeforeANumber = new Set([
	'@',
	'＠',
	'rpe',
	'rir',
	'felt',
	'bodyweight',
	'base',
	'at',
	'above',
	'most',
	'from',
	'add',
	'take',
	'scale',
])
/** What a times sign follows: `4 x 5`, `25 kg x 4`, `5+ x 3`, `held 45 s x 3`, `5 reps x 2`. */
const timesFollows = new Set([
	'NUMBER',
	'DECIMAL_COMMA',
	'OTHER_NUMBER',
	'kg',
	'lb',
	's',
	'min',
	'rep',
	'reps',
	'bodyweight',
	'+',
	'GLUED_WORD',
])
/** After these, four digits are a tempo: `tempo 4110`, `@31X0`, `T: 3010`. */
const wordsBeforeATempo = new Set(['tempo', '@', 't'])
const wordsBeforeDays = new Set(['on', 'available', 'days', 'over', ',', ':'])
/** Right behind these no group of sets begins: `4 x 5 30X1` and `4 x 5 at 70% (30X1)` have a tempo. */
const beforeAnotherClause = new Set([
	...[
		'NUMBER',
		'DECIMAL_COMMA',
		'OTHER_NUMBER',
		'SIGN_BEHIND',
		'%',
		'kg',
		'lb',
		's',
		'min',
		'm',
		'rm',
		'rep',
		'reps',
		'bodyweight',
	],
])
const wordsBeforeAnotherClause = new Set([
	...numberWords,
	...[
		'+',
		')',
		'more',
		'failure',
		'amrap',
		'amap',
		'max',
		'each',
		'ea',
		'side',
		'sides',
		'leg',
		'legs',
		'arm',
		'arms',
		'bw',
		'ps',
		'es',
	],
	...[
		'sec',
		'secs',
		'second',
		'seconds',
		'mins',
		'minutes',
		'metres',
		'meters',
		'kgs',
		'kilos',
		'lbs',
		'pounds',
		'way',
		'off',
		'r',
		'l',
	],
])
const unitAhead = /\s*(?:%|(?:kg|lb|s|min|m)(?![A-Za-z-]))/y

/**
 * The tokens of the grammar, completed: every keyword that is not reserved may also be a name, `x` is the times sign only after a number
 * or a unit, and forms that are wrong but plain are tokens of their own.
 *
 * Each custom pattern names its first characters: without that the lexer would try every pattern at every place.
 */
export class BarstaveTokenBuilder extends DefaultTokenBuilder {
	override buildTokens(grammar: GrammarAST.Grammar, options?: TokenBuilderOptions): TokenType[] {
		const tokens = super.buildTokens(grammar, options) as TokenType[]
		const byName = new Map(tokens.map(token => [token.name, token]))
		const token = (name: string) => byName.get(name) as TokenType
		const extra = readableForms.map(({ name, category, pattern }) => {
			const categories = category === undefined ? {} : { CATEGORIES: [token(category)] }
			const type: TokenType = { name, PATTERN: pattern, LINE_BREAKS: false, ...categories }
			byName.set(name, type)
			return type
		})
		const decimalComma = this.decimalComma(token('NUMBER'))
		const pasted = [this.shortTempo(), this.gluedWord(), this.signBehind(), this.daysTogether()]
		const times = token('TIMES')
		this.makeTimesFollowNumbers(times)

		const words = [token('ID'), token('OTHER_NAME')]
		for (const type of tokens) {
			if (typeof type.PATTERN !== 'string' || !/^[a-z]/.test(type.PATTERN)) continue
			if (!reservedWords.has(type.PATTERN)) type.CATEGORIES = [token('ID')]
			type.LONGER_ALT = words
		}
		for (const name of ['AT_MOST', 'EACH_SIDE']) token(name).CATEGORIES = [token('ID')]
		token('ID').LONGER_ALT = [token('OTHER_NAME')]

		const first = [
			times,
			token('AT_MOST'),
			token('EACH_SIDE'),
			...pasted,
			token('DATE'),
			token('OTHER_DATE'),
			token('DOTTED'),
			token('TEMPO'),
			decimalComma,
			token('OTHER_NUMBER'),
			token('NUMBER'),
			token('STRING'),
			token('CURLY_STRING'),
			token('UNCLOSED_STRING'),
			token('SIGN'),
		]
		const last = [token('ID'), token('OTHER_NAME')]
		const placed = new Set([...first, ...last, ...extra])
		return [...first, ...tokens.filter(type => !placed.has(type)), ...last]
	}

	private makeTimesFollowNumbers(times: TokenType) {
		// The last is the Cyrillic letter that looks the same.
		const sign = /x(?![a-z-])|x(?=(?:amrap|amap|max|failure|bw)\b)|[×ｘ]|\*(?!\/)|х(?=\s*\d)/iy
		times.PATTERN = (text: string, offset: number, matched: IToken[]) => {
			const before = matched[matched.length - 1]
			if (text[offset] !== '×' && !(before && timesFollows.has(before.tokenType.name))) return null
			sign.lastIndex = offset
			return sign.exec(text)
		}
		times.START_CHARS_HINT = ['x', 'X', '×', '*', 'х', 'Х', 'ｘ', 'Ｘ']
		times.LINE_BREAKS = false
	}

	/** `tempo 4110`, `@ 31X0`, `tempo 3/1/1/0`, `4 x 5 30X1`, `4 x 5 3010` */
	private shortTempo(): TokenType {
		const pattern = /\d\d[\dx]\d(?![\da-z.,/-])|\d([/.:])\d\1[\dx](?:\1\d)?(?![\da-z])/iy
		return custom('SHORT_TEMPO', pattern, digits, (text, offset, matched) => {
			const last = matched[matched.length - 1]
			const before = last?.image === ':' ? matched[matched.length - 2] : last
			if (before !== undefined && wordsBeforeATempo.has(before.image.toLowerCase())) return true
			const clauseEnd = last?.image === '(' ? matched[matched.length - 2] : last
			const isBehindClause =
				clauseEnd !== undefined &&
				(beforeAnotherClause.has(clauseEnd.tokenType.name) || wordsBeforeAnotherClause.has(clauseEnd.image.toLowerCase()))
			return isBehindClause && /^\d\d[\dxX]\d/.test(text.slice(offset, offset + 4)) && isSameLine(text, last!, offset)
		})
	}

	/** `RPE8`, `w2:`, `BW-10`, `w/`, `100kgx5`: a word of its own, though it stands right before what belongs to it. */
	private gluedWord(): TokenType {
		const effort = '(?:rpe|rir)(?=\\d+(?:[.,]\\d+)?(?:[-–]\\d+(?:[.,]\\d+)?)?(?![\\w-]))'
		const week = '(?:weeks?|wks?|w)(?=\\d+(?:\\s*[-–,]\\s*\\d+)*(?:\\s*[:–-]|\\s+\\d+\\s*[x×]))'
		const pattern = new RegExp(`${effort}|${week}|bw(?=[-–]?\\d)|w\\/(?![/*]|f(?:ri)?\\b)|(?:kg|lb)s?(?=[x–-]\\d)`, 'iy')
		return custom('GLUED_WORD', pattern, ['r', 'R', 'w', 'W', 'b', 'B', 'k', 'K', 'l', 'L'], (_, __, matched) => {
			const before = matched[matched.length - 1]
			return !before || !wordsBeforeADefinedName.has(before.image)
		})
	}

	/** `MWF`, `Mon-Fri`: more than one day in a word. */
	private daysTogether(): TokenType {
		const day = '(?:mon|tue|wed|thu|fri|sat|sun)[a-z]*'
		const pattern = new RegExp(`(?:mwf|tth|tuth|${day}[-–]${day})(?![\\w-])`, 'iy')
		return custom('DAYS_TOGETHER', pattern, [...'mtwfsMTWFS'], (_, __, matched) => {
			const before = matched[matched.length - 1]?.image ?? ''
			return wordsBeforeDays.has(before.toLowerCase())
		})
	}

	/** Signs that stand right behind something: `30"`, `2'`, `225#`, `kg.` */
	private signBehind(): TokenType {
		const pattern = /(?:''|’’|["'″′’”#])(?![\w"#$@])|\.(?=\s|[,)@]|$)/y
		return custom('SIGN_BEHIND', pattern, ['"', "'", '″', '′', '’', '”', '#', '.'], (text, offset, matched) => {
			const before = matched[matched.length - 1]
			if (!before || before.endOffset !== offset - 1) return false
			return text[offset] === '.' ? /[A-Za-z]$/.test(before.image) : timesFollows.has(before.tokenType.name)
		})
	}

	private decimalComma(number: TokenType): TokenType {
		const pattern = /\d+,\d+(?![\d,.])/y
		return {
			name: 'DECIMAL_COMMA',
			CATEGORIES: [number],
			PATTERN: (text: string, offset: number, matched: IToken[]) => {
				pattern.lastIndex = offset
				const match = pattern.exec(text)
				if (!match) return null
				const before = matched[matched.length - 1]
				// `25 kg x 4,20 kg x 2` and `45,45,40 s` are lists; `1 x 3,3 x 3` too. In `5 kg x 2, 2,5 kg x 2` the space tells.
				const inList = before?.tokenType.name === ',' && !/\s/.test(text[offset - 1] ?? '')
				const isThird = before?.tokenType.name === 'TIMES' && matched[matched.length - 3]?.tokenType.name === 'TIMES'
				if ((before?.tokenType.name === 'TIMES' && !isThird) || inList) return null
				unitAhead.lastIndex = offset + match[0].length
				if (unitAhead.test(text) || isThird) return match
				// `4 x 5 71,5`: right behind the reps stands no list, but the load.
				const isBehindReps = before?.tokenType.name === 'NUMBER' && matched[matched.length - 2]?.tokenType.name === 'TIMES'
				if (isBehindReps && isSameLine(text, before, offset)) return match
				if (matched[matched.length - 2]?.image === 'best') return match
				const follows = before && (wordsBeforeANumber.has(before.image.toLowerCase()) || match[0].startsWith('0,'))
				return follows ? match : null
			},
			START_CHARS_HINT: [...digits],
			LINE_BREAKS: false,
		}
	}
}

const digits = ['0', '1', '2', '3', '4', '5', '6', '7', '8', '9']

/** Does a token stand on the line of the text that `offset` is on? */
function isSameLine(text: string, token: IToken, offset: number): boolean {
	return !/[\r\n]/.test(text.slice(token.endOffset! + 1, offset))
}

/** A kind of token that is one only where `fits` says so. */
function custom(
	name: string,
	pattern: RegExp,
	first: readonly string[],
	fits: (text: string, offset: number, matched: readonly IToken[]) => boolean,
): TokenType {
	return {
		name,
		PATTERN: (text: string, offset: number, matched: IToken[]) => {
			pattern.lastIndex = offset
			const match = pattern.exec(text)
			return match && fits(text, offset, matched) ? match : null
		},
		START_CHARS_HINT: [...first],
		LINE_BREAKS: false,
	}
}

/** Token text → value: names are brought to our spelling, texts lose their quotes, numbers are read whatever their comma. */
export class BarstaveValueConverter extends DefaultValueConverter {
	protected override runConverter(rule: GrammarAST.AbstractRule, input: string): string {
		switch (rule.name) {
			case 'STRING':
				return unquote(input)
			case 'ID':
				return ourName(input)
			case 'NUMBER':
				return ourNumber(input)
			default:
				return input
		}
	}
}

/** A quoted text without its quotes and escapes; it may lack the closing quote, or have curly ones. */
function unquote(input: string): string {
	const body = input.replace(/^["“”„]/, '').replace(/(?<!\\)["“”]$/, '')
	return body.replace(/\\(.)/g, '$1')
}

/** A quoted text in straight quotes, whatever its own are. */
export function straightQuoted(image: string): string {
	return `"${unquote(image).replace(/["\\]/g, '\\$&')}"`
}

/** The nearest name that our spelling allows: `Deadlift` → `deadlift`, `Kniebeuge_tief` → `kniebeuge-tief`, `Åse` → `ase`. */
export function ourName(input: string): string {
	const plain = input
		.normalize('NFD')
		.replace(/[\u0300-\u036F]/g, '')
		.replace(/[øØ]/g, 'o')
		.replace(/[æÆ]/g, 'ae')
		.replace(/ß/g, 'ss')
		.toLowerCase()
	return plain.replace(/[^a-z0-9]+/g, '-').replace(/^[-\d]+|-+$/g, '')
}

/** What people see of a name that has no title: `Heavy_Pull` → `Heavy Pull`. */
export function titleOfName(input: string): string {
	return input.replace(/[_-]+/g, ' ')
}

const fractions: Readonly<Record<string, string>> = { '¼': '.25', '½': '.5', '¾': '.75' }

/** `72,5` → `72.5`, `2½` → `2.5`; full-width digits are plain ones. */
export function ourNumber(input: string): string {
	return input
		.replace(/^[¼½¾]/, '0$&')
		.replace(/[¼½¾]/, sign => fractions[sign]!)
		.replace(/[\uFF10-\uFF19]/g, digit => String.fromCharCode(digit.charCodeAt(0) - 0xff10 + 48))
		.replace(/[,\uFF0E\uFF0C]/g, '.')
}
