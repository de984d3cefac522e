import type { IToken } from 'chevrotain'
import { ourNumber } from '../tokens.ts'
import { unitOf } from './units.ts'

/** What stands instead of some tokens: the number of one of them, a word of ours, or a token of a kind whose image varies. */
export type Put = number | string | PutToken

export interface PutToken {
	readonly type: string
	readonly image: string
	/** It is a guess, which the coach settles. */
	readonly unsettled?: boolean
	/** Other readings of a guess. */
	readonly others?: readonly string[]
	/** It stands for no word of the text, and on that side of its neighbour. */
	readonly inserted?: 'before' | 'behind'
}

export interface Rewrite {
	/** How many tokens it is about. */
	readonly take: number
	readonly put: readonly Put[]
}

/** One way in which coaches write what we write otherwise. */
export interface ShorthandRule {
	/** In small letters, the words or signs that it begins with; `0` is any number, `a-name` any name. */
	readonly begins: readonly string[]
	readonly read: (view: View) => Rewrite | undefined
}

/** Kinds of token after which a clause, or another group of sets, may follow. */
const endings = new Set([
	...[
		'NUMBER',
		'DECIMAL_COMMA',
		'OTHER_NUMBER',
		's',
		'm',
		'min',
		'reps',
		'rep',
		'failure',
		'more',
		'side',
		'TEMPO',
		'%',
		'kg',
		'lb',
	],
	...['rm', 'bodyweight', 'set', 'base', 'best', 'most'],
])
/** After these a movement's name stands. */
export const beforeMovements: ReadonlySet<string> = new Set([
	...['main', 'accessory', 'warm-up', 'conditioning', 'test', 'did', 'best', 'base', 'fails', 'keep', 'drop', 'swap'],
])
const workUnits = new Set(['s', 'm', 'min', 'reps', 'rep'])

/** The tokens from one place on, as they were given, and those before it, as they are meant. */
export class View {
	constructor(
		/** The word that begins the definition. */
		readonly kind: string,
		private readonly given: readonly IToken[],
		private readonly at: number,
		private readonly done: readonly IToken[],
	) {}

	/** Do sets stand in a definition of this kind? */
	get isTraining(): boolean {
		return this.kind === 'block' || this.kind === 'plan' || this.kind === 'log'
	}

	/** The image of a token in small letters; empty past the end. */
	word(by = 0): string {
		return this.given[this.at + by]?.image.toLowerCase() ?? ''
	}

	type(by = 0): string {
		return this.given[this.at + by]?.tokenType.name ?? ''
	}

	isNumber(by = 0): boolean {
		return isNumber(this.given[this.at + by])
	}

	value(by = 0): number {
		return Number(ourNumber(this.given[this.at + by]?.image ?? ''))
	}

	isTimes(by = 0): boolean {
		return this.type(by) === 'TIMES'
	}

	isName(by = 0): boolean {
		return this.type(by) === 'ID' || this.type(by) === 'OTHER_NAME'
	}

	/** Does a token stand right behind the one before it? */
	isTight(by = 0): boolean {
		const token = this.given[this.at + by]
		const before = this.given[this.at + by - 1]
		return token !== undefined && before !== undefined && token.startOffset === before.endOffset! + 1
	}

	startsLine(by = 0): boolean {
		const token = this.given[this.at + by]
		const before = this.given[this.at + by - 1]
		return token !== undefined && (before === undefined || token.startLine! > before.endLine!)
	}

	/** Where the number or the range that begins at a place ends; the place itself if none does. */
	afterRange(by = 0): number {
		if (!this.isNumber(by)) return by
		return (this.type(by + 1) === 'DASH' || this.word(by + 1) === 'to') && this.isNumber(by + 2) ? by + 3 : by + 1
	}

	unit(by = 0): string | undefined {
		return unitOf(this.word(by))
	}

	/** The kind of a token before this place, as it is meant. */
	before(by = 1): string {
		return this.done[this.done.length - by]?.tokenType.name ?? ''
	}

	/** The image of a token before this place, as it is meant. */
	wordBefore(by = 1): string {
		return this.done[this.done.length - by]?.image ?? ''
	}

	isNumberBefore(by = 1): boolean {
		return isNumber(this.done[this.done.length - by])
	}

	/** May a clause begin here, or the next group of sets? */
	get followsAnEnding(): boolean {
		return endings.has(this.before())
	}

	/** Does `4 x 5`, `3 x 30 s` or the like stand right before? */
	get followsWork(): boolean {
		let by = 1
		if (this.before(by) === 'more' || this.before(by) === 'failure') by += 2
		if (workUnits.has(this.before(by))) by++
		if (!this.isNumberBefore(by)) return false
		by++
		if ((this.before(by) === 'DASH' || this.before(by) === 'to') && this.isNumberBefore(by + 1)) by += 2
		return this.before(by) === 'TIMES'
	}

	/** The last date before this place that is written in our way, else the first one behind it. */
	get nearestDate(): string | undefined {
		const isDate = (token: IToken) => token.tokenType.name === 'DATE'
		return (this.done.findLast(isDate) ?? this.given.find(isDate))?.image
	}

	/** Does a token of a kind stand before this place, after the last one of another kind? */
	hasSince(kinds: readonly string[], since: string): boolean {
		const from = this.done.findLastIndex(token => token.tokenType.name === since)
		return this.done.slice(from + 1).some(token => kinds.includes(token.tokenType.name))
	}

	/** Has a token of a kind been read? */
	has(kind: string): boolean {
		return this.done.some(token => token.tokenType.name === kind)
	}

	/** Does another group of sets stand before this one, on the same line of the language? */
	get hasEarlierSets(): boolean {
		let isEarlier = false
		for (let by = 1; by <= this.done.length; by++) {
			const type = this.before(by)
			if (type === ':' || beforeMovements.has(type)) return false
			if (type === ',') isEarlier = true
			if (type === 'TIMES' && isEarlier) return true
		}
		return false
	}

	/** Does `week 2`, `week 2-4` or `week 1, 4` stand right before? */
	get followsWeeks(): boolean {
		let by = 1
		while (this.isNumberBefore(by)) {
			by++
			if (this.before(by) === 'DASH' || this.before(by) === ',' || this.before(by) === 'to') by++
			else return this.before(by) === 'week'
		}
		return false
	}
}

export function isNumber(token: IToken | undefined): boolean {
	const name = token?.tokenType.name
	return name === 'NUMBER' || name === 'DECIMAL_COMMA' || name === 'OTHER_NUMBER'
}
