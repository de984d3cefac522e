import type { Problem } from '../model/problem.ts'
import type { Folder, Place } from './folder.ts'
import { problemsOf, problemsOfFaults } from './problems.ts'

/** A replacement of a stretch of a file, in UTF-16 units from its beginning. */
export interface FileEdit {
	readonly start: number
	readonly end: number
	readonly text: string
}

/** A problem with absolute places: offsets in UTF-16 units from the beginning of the file. */
export interface FileProblem extends Omit<Problem, 'span' | 'related' | 'corrections'> {
	readonly start: number
	readonly end: number
	readonly related: readonly (Place & { readonly message: string })[]
	readonly corrections: readonly {
		readonly title: string
		readonly edits: readonly { start: number; end: number; text: string }[]
	}[]
}

/** All problems of one file, in the order of its text. */
export function fileProblems(folder: Folder, uri: string): readonly FileProblem[] {
	const file = folder.file(uri)
	if (!file) return []
	return file.parts.flatMap(part => {
		const problems = part.definition ? problemsOf(part.definition, folder) : problemsOfFaults(part.faults, folder)
		return problems.map(problem => placed(problem, part.start, file.text, folder))
	})
}

function placed(problem: Problem, offset: number, text: string, folder: Folder): FileProblem {
	const { code, level, span, message, source } = problem
	return {
		code,
		level,
		message,
		source,
		start: offset + span.start,
		end: offset + span.end,
		related: problem.related.flatMap(({ definition, span: where, message: said }) => {
			const place = folder.placeOf(definition, where)
			return place ? [{ ...place, message: said }] : []
		}),
		// Looked for only when somebody asks.
		get corrections() {
			return problem.corrections.map(({ title, edits }) => ({
				title,
				edits: edits.map(edit =>
					withItsLine({ start: offset + edit.span.start, end: offset + edit.span.end, text: edit.text }, text),
				),
			}))
		},
	}
}

/** What takes all words of a line away takes the line away too, so that no blank one stays behind. */
function withItsLine(edit: FileEdit, text: string): FileEdit {
	if (edit.text !== '' || edit.start === edit.end) return edit
	const lineStart = text.lastIndexOf('\n', edit.start - 1) + 1
	const lineEnd = text.indexOf('\n', edit.end)
	const isWhole =
		text.slice(lineStart, edit.start).trim() === '' && text.slice(edit.end, lineEnd < 0 ? undefined : lineEnd).trim() === ''
	return isWhole && lineEnd >= 0 ? { start: lineStart, end: lineEnd + 1, text: '' } : edit
}
