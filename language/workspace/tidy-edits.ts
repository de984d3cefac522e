import { lineBreakOf } from '../formatting/source.ts'

/** A replacement of a stretch of a file, in UTF-16 units from its beginning. */
export interface FileEdit {
	readonly start: number
	readonly end: number
	readonly text: string
}

/** What is a text in quotes, where two slashes are no comment, or a comment. */
const quotedOrComment = /["“”„](?:\\.|[^"“”„\\\n\r])*["“”]?|\/\/[^\n\r]*|\/\*[\s\S]*?\*\//g
const onlyComments = /^(?:[^\S\r\n]*\/\*(?:[^*\r\n]|\*(?!\/))*\*\/)*[^\S\r\n]*(?:\/\/[^\r\n]*)?$/

/**
 * An edit as a coach would have made it: every comment stays, with the words that it stands beside; no blank line is left behind; new lines
 * break as those of the file do.
 */
export function tidyEdits(edit: FileEdit, text: string): readonly FileEdit[] {
	const { start, end } = edit
	if (start === end) return [withBreaks(behindComment(edit, text), text)]
	const comments = commentsIn(text, start, end)
	if (comments.length === 0) return [withItsLine(withBreaks(edit, text), text)]
	// Words go line by line from between the comments; what comes in their place stands where the first of them was.
	const words = wordsBeside(comments, text, start, end)
	return words.map((part, index) =>
		withItsLine({ ...part, text: index === 0 ? withBreaks(edit, text).text.trimEnd() : '' }, text),
	)
}

/** New lines come below the line that they follow, and below its comment. */
function behindComment(edit: FileEdit, text: string): FileEdit {
	if (!edit.text.startsWith('\n')) return edit
	const lineEnd = endOfLine(text, edit.end)
	return onlyComments.test(text.slice(edit.end, lineEnd)) ? { ...edit, start: lineEnd, end: lineEnd } : edit
}

function withBreaks(edit: FileEdit, text: string): FileEdit {
	return edit.text.includes('\n') ? { ...edit, text: edit.text.replaceAll('\n', lineBreakOf(text, [])) } : edit
}

/** What takes all words of a line away takes the line away too, so that no blank one stays behind. */
function withItsLine(edit: FileEdit, text: string): FileEdit {
	if (edit.text !== '') return edit
	const lineStart = text.lastIndexOf('\n', edit.start - 1) + 1
	const lineEnd = text.indexOf('\n', edit.end)
	const isWhole =
		text.slice(lineStart, edit.start).trim() === '' && text.slice(edit.end, lineEnd < 0 ? undefined : lineEnd).trim() === ''
	return isWhole && lineEnd >= 0 ? { start: lineStart, end: lineEnd + 1, text: '' } : edit
}

interface Stretch {
	readonly start: number
	readonly end: number
}

function commentsIn(text: string, start: number, end: number): readonly Stretch[] {
	return [...text.slice(start, end).matchAll(quotedOrComment)]
		.filter(([found]) => found.startsWith('/'))
		.map(({ 0: found, index }) => ({ start: start + index, end: start + index + found.length }))
}

/** The words between comments, of each line by themselves. */
function wordsBeside(comments: readonly Stretch[], text: string, start: number, end: number): readonly Stretch[] {
	const between = [...comments, { start: end, end }].map((comment, index) => ({
		start: comments[index - 1]?.end ?? start,
		end: comment.start,
	}))
	return between.flatMap(part =>
		[...text.slice(part.start, part.end).matchAll(/\S(?:[^\r\n]*\S)?/g)].map(({ 0: found, index }) => ({
			start: part.start + index,
			end: part.start + index + found.length,
		})),
	)
}

function endOfLine(text: string, from: number): number {
	const found = /[\r\n]/.exec(text.slice(from))
	return found ? from + found.index : text.length
}
