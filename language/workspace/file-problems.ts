import type { Problem } from '../model/problem.ts'
import type { Folder, Place } from './folder.ts'
import { problemsOf, problemsOfFaults } from './problems.ts'
import { type FileEdit, tidyEdits } from './tidy-edits.ts'

/** A problem with absolute places: offsets in UTF-16 units from the beginning of the file. */
export interface FileProblem extends Omit<Problem, 'span' | 'related' | 'corrections'> {
	readonly start: number
	readonly end: number
	readonly related: readonly (Place & { readonly message: string })[]
	readonly corrections: readonly {
		readonly title: string
		readonly edits: readonly FileEdit[]
		readonly isChoice?: boolean
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
			return problem.corrections.map(({ title, edits, isChoice = false }) => ({
				title,
				isChoice,
				edits: edits.flatMap(edit =>
					tidyEdits({ start: offset + edit.span.start, end: offset + edit.span.end, text: edit.text }, text),
				),
			}))
		},
	}
}
