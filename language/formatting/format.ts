import type { TextEdit } from '../model/reading.ts'
import type { Span } from '../model/text.ts'
import type { TextReader } from '../workspace/text-file.ts'
import type { Element } from './element.ts'
import { layOut } from './layout.ts'
import { substanceOf } from './meaning.ts'
import { readSections, type Sections } from './sections.ts'
import { lineBreakOf } from './source.ts'

/**
 * The text in the one layout and spelling that the language has. It means what it meant, keeps every comment, its line breaks and its
 * byte-order mark; definitions that do not read stay as they are. Formatting twice gives what formatting once gives.
 */
export function formatText(text: string, reader: TextReader): string {
	return applyEdits(text, formatEdits(text, reader))
}

/**
 * The changes that lay a text out, in its order; none touch each other. Spans are offsets in the text.
 * @param within Only what stands on the lines of this stretch is changed, with the white space before it.
 */
export function formatEdits(text: string, reader: TextReader, within?: Span): TextEdit[] {
	const sections = readSections(text, reader)
	const edits = layoutEdits(text, sections, within && wholeLines(text, within))
	if (edits.length === 0) return []
	// What would change the meaning is a fault of ours: the coach's text stays as it is.
	const after = applyEdits(text, edits)
	return substanceOf(text, sections) === substanceOf(after, readSections(after, reader)) ? edits : []
}

/** The changes, before they are looked at again. */
export function layoutEdits(text: string, sections: Sections, within: Span = { start: 0, end: text.length }): TextEdit[] {
	const elements = layOut(text, sections)
	const gaps = gapsOf(text, elements)
	const lineBreak = lineBreakOf(
		text,
		gaps.map(({ start, end }) => text.slice(start, end)),
	)
	const edits: TextEdit[] = []
	const replace = (start: number, end: number, by: string) => {
		if (text.slice(start, end) === by) return
		const last = edits[edits.length - 1]
		if (last?.span.end === start) edits.splice(-1, 1, { span: { start: last.span.start, end }, text: last.text + by })
		else edits.push({ span: { start, end }, text: by })
	}
	for (const [index, gap] of gaps.entries()) {
		const next = elements[index]
		if ((next?.start ?? text.length) > within.end || (next?.end ?? text.length) < within.start) continue
		if (next) {
			replace(gap.start, gap.end, lineBreak.repeat(next.breaks) + ' '.repeat(next.spaces))
			replace(next.start, next.end, next.text)
		} else replace(gap.start, gap.end, elements.length > 0 ? lineBreak : '')
	}
	return edits
}

/** A stretch with all of its lines; one that ends where a line begins has nothing of that line. */
function wholeLines(text: string, { start, end }: Span): Span {
	const last = end > start && /[\r\n]/.test(text[end - 1]!) ? end - 1 : end
	const rest = /[\r\n]/.exec(text.slice(last))
	return {
		start: Math.max(text.lastIndexOf('\n', start - 1), text.lastIndexOf('\r', start - 1)) + 1,
		end: last + (rest?.index ?? text.length - last),
	}
}

/** What stands before each element, and after the last: nothing but white space and words that are left out. */
function gapsOf(text: string, elements: readonly Element[]): Span[] {
	const textStart = text.startsWith('\uFEFF') ? 1 : 0
	const starts = [textStart, ...elements.map(({ end }) => end)]
	return starts.map((start, index) => ({ start, end: elements[index]?.start ?? text.length }))
}

/** @param edits In the order of the text. */
function applyEdits(text: string, edits: readonly TextEdit[]): string {
	let result = ''
	let at = 0
	for (const { span, text: by } of edits) {
		result += text.slice(at, span.start) + by
		at = span.end
	}
	return result + text.slice(at)
}
