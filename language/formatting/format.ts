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
 * @param within Only changes that touch this stretch are made.
 */
export function formatEdits(text: string, reader: TextReader, within?: Span): TextEdit[] {
	const sections = readSections(text, reader)
	const all = layoutEdits(text, sections)
	const edits = within ? all.filter(({ span }) => span.start <= within.end && within.start <= span.end) : all
	if (edits.length === 0) return []
	// What would change the meaning is a fault of ours: the coach's text stays as it is.
	const after = applyEdits(text, edits)
	return substanceOf(text, sections) === substanceOf(after, readSections(after, reader)) ? edits : []
}

/** The changes, before they are looked at again. */
export function layoutEdits(text: string, sections: Sections): TextEdit[] {
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
		if (next) {
			replace(gap.start, gap.end, lineBreak.repeat(next.breaks) + ' '.repeat(next.spaces))
			replace(next.start, next.end, next.text)
		} else replace(gap.start, gap.end, elements.length > 0 ? lineBreak : '')
	}
	return edits
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
