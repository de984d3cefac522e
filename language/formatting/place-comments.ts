import type { Line } from '../parser/lines.ts'
import { type Element, indentOf, indentOfRest } from './element.ts'
import { breaksBetween, columnOf } from './source.ts'

/**
 * Says where the comments between two words go, and on which line the second word stands. A comment stays where its author put it: behind
 * the words of a line, before them, among them, or on a line of its own.
 * @param previous The word, or the kept stretch, before the comments; none at the beginning of the text.
 * @param next The word, or the kept stretch, after them; none at the end of the text.
 */
export function placeComments(
	text: string,
	previous: Element | undefined,
	comments: readonly Element[],
	next: Element | undefined,
): void {
	if (next?.kind === 'word') placeWithinLine(text, previous!, comments, next)
	else placeBetweenLines(text, previous, comments, next)
}

function placeWithinLine(text: string, previous: Element, comments: readonly Element[], next: Element): void {
	const indent = indentOfRest(next.line!)
	let before = previous
	for (const element of comments.length > 0 ? [...comments, next] : []) {
		const ownLine = breaksBetween(text, before.end, element.start) > 0
		const broken = before.kind === 'comment-to-end' || ownLine
		element.breaks = broken ? 1 : 0
		element.spaces = broken ? indent : 1
		before = element
	}
}

function placeBetweenLines(
	text: string,
	previous: Element | undefined,
	comments: readonly Element[],
	next: Element | undefined,
): void {
	const joined = (before: Element | undefined, after: Element | undefined) =>
		before !== undefined &&
		after !== undefined &&
		before.kind !== 'comment-to-end' &&
		breaksBetween(text, before.end, after.start) === 0
	let behind = 0
	while (behind < comments.length && joined(comments[behind - 1] ?? previous, comments[behind])) behind++
	let leading = comments.length
	while (leading > behind && joined(comments[leading - 1], comments[leading] ?? next)) leading--

	// What begins a line of its own: comments, and last the next line itself, which may begin with comments.
	const nextIndent = next?.line ? indentOf(next.line) : 0
	const starts: LineStart[] = []
	for (const [index, element] of [...comments, ...(next ? [next] : [])].entries()) {
		const before = comments[index - 1] ?? previous
		element.breaks = 0
		element.spaces = 1
		if (index < behind || index > leading || (index > behind && index < leading && joined(before, element))) continue
		const indent = index < leading ? indentOfComment(text, element, previous, next) : nextIndent
		starts.push({ element, indent, blank: before !== undefined && breaksBetween(text, before.end, element.start) > 1 })
	}
	if (previous?.line && next?.line?.above === previous.line && starts[0]) starts[0].blank = false
	if (next && needsBlank(next)) headOf(starts).blank = true
	for (const { element, indent, blank } of starts) {
		element.breaks = element === starts[0]?.element && !previous ? 0 : blank ? 2 : 1
		element.spaces = indent
	}
}

interface LineStart {
	readonly element: Element
	readonly indent: number
	blank: boolean
}

/** The first of the comments that stand right above the last line, or that line itself. */
function headOf(starts: readonly LineStart[]): LineStart {
	let head = starts.length - 1
	while (head > 0 && !starts[head]!.blank && starts[head - 1]!.indent === starts[head]!.indent) head--
	return starts[head]!
}

/** A blank line stands before every definition and every session. */
function needsBlank(next: Element): boolean {
	return next.kind === 'kept' || next.line?.depth === 0 || next.line?.kind === 'Session'
}

/**
 * A comment on its own line is set in like the line below it; unless its author has set it in deeper, like a line above it: then it belongs
 * to that one, as a line that was taken out for now does.
 */
function indentOfComment(text: string, comment: Element, previous: Element | undefined, next: Element | undefined): number {
	const column = columnOf(text, comment.start) ?? 0
	const least = next?.line ? indentOf(next.line) : 0
	const below = next ? columnOf(text, next.start) : 0
	if (below === undefined) return least
	for (let line: Line | undefined = previous?.line; line && indentOf(line) > least; line = line.above) {
		const above = columnOf(text, line.tokens[0]!.start)
		if (above !== undefined && above > below && above <= column) return indentOf(line)
	}
	return least
}
