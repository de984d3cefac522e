import type { IToken } from 'chevrotain'
import type { Fault } from '../model/reading.ts'
import { beginOfTextLine, contextOf, endOfTextLine } from './text-lines.ts'

/** Words with which a part of a line begins. */
const beginnings = new Set([
	'from',
	'until',
	'on',
	'to',
	'with',
	'above',
	'because',
	'in',
	'for',
	'at',
	'rpe',
	'rir',
	'tempo',
	'rest',
	'held',
	'each',
])
/** What a part ends with, where a number or a name begins the next one. */
const endings = new Set([
	'DATE',
	'OTHER_DATE',
	'NUMBER',
	'%',
	'kg',
	'lb',
	's',
	'm',
	'min',
	'reps',
	'times',
	'time',
	'STRING',
	'ID',
	'bodyweight',
])
/** More parts than these, in any order, are too many to try. */
const mostParts = 4

/** A line whose parts stand in another order than ours. */
export interface Reordered {
	readonly tokens: IToken[]
	readonly fault: Fault
}

/**
 * Where a line does not read, and reads with its parts in another order, that order: `run base from 2026-10-05 2 times`.
 * @param reads Does a definition of these tokens read?
 */
export function reorder(
	tokens: readonly IToken[],
	at: number,
	text: string,
	isTooShort: boolean,
	reads: (tokens: IToken[]) => boolean,
): Reordered | undefined {
	const last = isTooShort ? at - 1 : at
	const begin = beginOfTextLine(tokens, last)
	const end = endOfTextLine(tokens, last)
	const head = tokens.slice(begin, begin + 1)
	const parts = partsOf(tokens.slice(begin + 1, end))
	if (parts.length < 2 || parts.length > mostParts) return undefined
	const context = contextOf(tokens, begin)
	for (const order of ordersOf(parts.length)) {
		const line = [...head, ...order.flatMap(index => parts[index]!)]
		if (!reads([...context, ...line])) continue
		const image = (part: readonly IToken[]) => text.slice(part[0]!.startOffset, part[part.length - 1]!.endOffset! + 1)
		const start = parts[0]![0]!.startOffset
		const span = { start, end: tokens[end - 1]!.endOffset! + 1 }
		const ours = order
			.map(index => image(parts[index]!))
			.join(' ')
			.replace(/,? each time/, ', each time')
		const message = `All of it is there, in another order: ${head[0]!.image} ${ours}.`
		const corrections = [{ title: 'Put it in this order', edits: [{ span, text: ours }] }]
		const whole = [...tokens.slice(0, begin), ...line, ...tokens.slice(end)]
		return { tokens: whole, fault: { code: 'syntax', span, message, corrections } }
	}
	return undefined
}

function partsOf(tokens: readonly IToken[]): IToken[][] {
	const parts: IToken[][] = []
	for (const [index, token] of tokens.entries()) {
		const before = tokens[index - 1]
		if (!before || beginsPart(token, before)) parts.push([token])
		else parts[parts.length - 1]!.push(token)
	}
	return parts
}

function beginsPart(token: IToken, before: IToken): boolean {
	if (beginnings.has(token.image)) return true
	const { name } = token.tokenType
	return ['NUMBER', 'ID', 'OTHER_NAME', 'STRING', 'DATE', 'OTHER_DATE'].includes(name) && endings.has(before.tokenType.name)
}

/** The orders in which one part has another place. */
function ordersOf(count: number): number[][] {
	const orders: number[][] = []
	for (let from = 0; from < count; from++) {
		for (let to = 0; to < count; to++) {
			if (to === from || to === from - 1) continue
			const order = Array.from({ length: count }, (_, index) => index).filter(index => index !== from)
			orders.push([...order.slice(0, to), from, ...order.slice(to)])
		}
	}
	return orders
}
