import type { IToken } from 'chevrotain'

/** Looks at the lines of the text, which a coach sees, where the language's own lines do not read. */

const roles = ['main', 'accessory', 'warm-up', 'conditioning', 'test']
/** What lines of a definition may stand in, by the word that begins the definition; the outer one first. */
const containers: Readonly<Record<string, readonly (readonly string[])[]>> = {
	block: [['session'], roles],
	plan: [['run'], ['for']],
	log: [['on']],
}
/** A word and the name after it; of a plan's header, also whom it is for. */
const wordAndName = 2
const planHeader = 4

export function beginOfTextLine(tokens: readonly IToken[], at: number): number {
	let begin = at
	while (begin > 0 && tokens[begin - 1]!.endLine === tokens[at]!.startLine) begin--
	return begin
}

/** The place behind the last token of a line of the text. */
export function endOfTextLine(tokens: readonly IToken[], at: number): number {
	let end = at + 1
	while (end < tokens.length && tokens[end]!.startLine === tokens[at]!.startLine) end++
	return end
}

/** The least that a line must stand in to be read: its definition's header, and the beginning of what it belongs to. */
export function contextOf(tokens: readonly IToken[], begin: number): IToken[] {
	const kind = tokens[0]!.tokenType.name
	const context = tokens.slice(0, Math.min(kind === 'plan' ? planHeader : wordAndName, begin))
	let from = context.length
	for (const words of containers[kind] ?? []) {
		const found = lastLineWith(tokens, words, from, begin)
		if (found === undefined) continue
		context.push(...tokens.slice(found, Math.min(found + wordAndName, begin)))
		from = found + 1
	}
	return context
}

function lastLineWith(tokens: readonly IToken[], words: readonly string[], from: number, to: number): number | undefined {
	for (let at = to - 1; at >= from; at--)
		if (words.includes(tokens[at]!.tokenType.name) && tokens[at - 1]!.endLine !== tokens[at]!.startLine) return at
	return undefined
}
