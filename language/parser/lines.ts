import type { IToken } from 'chevrotain'
import type { AstNode } from 'langium'
import { type Parsed, spanOf } from './parse.ts'
import type { Origin } from './shorthand/read.ts'

/** A word of the text, with its place in the whole text; one that is only meant has no length. */
export interface LineToken {
	/** The lexer's name for words of its kind. */
	readonly type: string
	/** The word that it is read as; where that is a guess, the word that is written. */
	readonly image: string
	readonly start: number
	readonly end: number
}

/** A line of a definition as it is meant, however the text is broken: a header, a fact, an item of a session. */
export interface Line {
	/** The grammar's rule: `Session`, `WeekLine`, … */
	readonly kind: string
	/** The line that it belongs to; the definition's header belongs to none. */
	readonly above: Line | undefined
	/** How many lines it is nested in. */
	readonly depth: number
	readonly tokens: readonly LineToken[]
}

/**
 * The lines of a definition that was read without a fault, in the order of the text; together they have all its tokens.
 * @param offset Where the positions of `parsed` count from.
 */
export function linesOf({ tree, tokens, text }: Parsed, offset: number): Line[] {
	if (!tree) return []
	const nodes = [...nodesOf(tree)]
	const lines = new Map<AstNode, Line>()
	let at = 0
	return nodes.map((node, index) => {
		const next = nodes[index + 1]?.$cstNode?.offset ?? Number.POSITIVE_INFINITY
		const own: LineToken[] = []
		for (let token = tokens[at]; token && isBefore(token, tokens[at + 1], next); token = tokens[++at]) {
			const { start, end } = spanOf(token)
			const isGuess = (token.payload as Origin | undefined)?.unsettled
			if (isGuess && end === start) continue
			const image = isGuess ? text.slice(start, end) : token.image
			own.push({ type: token.tokenType.name, image, start: offset + start, end: offset + end })
		}
		const above = node.$container && lines.get(node.$container)
		const line: Line = { kind: node.$type, above, depth: above ? above.depth + 1 : 0, tokens: own }
		lines.set(node, line)
		return line
	})
}

/** Does a token stand before a place? A line that is only meant begins on the last letter of the one before. */
function isBefore(token: IToken, after: IToken | undefined, place: number): boolean {
	if (token.startOffset !== place) return token.startOffset < place
	const isOwnLine = (one: IToken | undefined) => (one?.payload as Origin | undefined)?.isOwnLine === true
	return isOwnLine(after) && !isOwnLine(token)
}

/** A node that is a line, with all that belong to it. */
function* nodesOf(node: AstNode): Generator<AstNode> {
	yield node
	for (const line of (node as AstNode & { lines?: readonly AstNode[] }).lines ?? []) yield* nodesOf(line)
}
