import { type Diagnostic, DiagnosticSeverity, DiagnosticTag } from 'vscode-languageserver'
import type { ShownLevel } from '../../language/model/problem.ts'
import type { FileProblem } from '../../language/workspace/file-problems.ts'
import type { TextFile } from '../../language/workspace/text-file.ts'
import { locationOf, rangeOf } from '../positions.ts'
import { pageUri } from '../rule-pages.ts'
import type { Workspace } from '../workspace.ts'

const severities: Readonly<Record<ShownLevel, DiagnosticSeverity>> = {
	error: DiagnosticSeverity.Error,
	warning: DiagnosticSeverity.Warning,
	info: DiagnosticSeverity.Information,
	hint: DiagnosticSeverity.Hint,
}

/** Words that nothing needs are shown faint, a spelling that is not ours struck through. */
const tags: ReadonlyMap<string, DiagnosticTag> = new Map([
	['unused-definition', DiagnosticTag.Unnecessary],
	['unused-allow', DiagnosticTag.Unnecessary],
	['old-spelling', DiagnosticTag.Deprecated],
])

/** More problems than this in one file are counted, not listed. */
const mostInAFile = 100

/** A file's problems as the protocol has them, in the order of the text. */
export function toDiagnostics(file: TextFile, problems: readonly FileProblem[], workspace: Workspace): Diagnostic[] {
	const listed = problems.slice(0, mostInAFile).map(problem => toDiagnostic(file, problem, workspace))
	const more = problems.length - listed.length
	if (more <= 0) return listed
	const rest = problems.slice(mostInAFile)
	const message = `And ${more} more problems in this file. They show when those above are mended.`
	return [...listed, { ...toDiagnostic(file, rest[0]!, workspace), message }]
}

function toDiagnostic(file: TextFile, problem: FileProblem, workspace: Workspace): Diagnostic {
	const related = problem.related.flatMap(place => {
		const location = locationOf(workspace, place)
		return location ? [{ location, message: place.message }] : []
	})
	const tag = tags.get(problem.code)
	return {
		range: rangeOf(file, problem.start, problem.end),
		severity: severities[problem.level],
		code: problem.code,
		codeDescription: { href: pageUri(problem.code) },
		source: 'Barstave',
		message: problem.message,
		...(related.length > 0 ? { relatedInformation: related } : {}),
		...(tag === undefined ? {} : { tags: [tag] }),
	}
}
