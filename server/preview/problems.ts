import type { Definition } from '../../language/model/definitions.ts'
import type { PreviewProblem } from '../../language/reports/preview.ts'
import { fileProblems } from '../../language/workspace/file-problems.ts'
import type { Folder } from '../../language/workspace/folder.ts'
import { clientUri, rangeOf } from '../positions.ts'
import { relativePath } from '../uri.ts'
import type { Workspace } from '../workspace.ts'

/** The problems of the files in which some definitions stand; hints are for the editor alone. */
export function openProblems(
	definitions: readonly (Definition | undefined)[],
	folder: Folder,
	workspace: Workspace,
): readonly PreviewProblem[] {
	const files = new Set(definitions.flatMap(one => (one && folder.placeOf(one, one.span)?.uri) ?? []))
	return [...files].sort().flatMap(uri => problemsOfFile(uri, folder, workspace))
}

function problemsOfFile(uri: string, folder: Folder, workspace: Workspace): PreviewProblem[] {
	const file = folder.file(uri)
	if (!file) return []
	return fileProblems(folder, uri)
		.filter(problem => problem.level !== 'hint')
		.map(problem => {
			const range = rangeOf(file, problem.start, problem.end)
			return {
				file: relativePath(uri, workspace.rootUriOf(uri)),
				line: range.start.line + 1,
				column: range.start.character + 1,
				code: problem.code,
				level: problem.level,
				message: problem.message,
				source: problem.source ?? null,
				place: { uri: clientUri(workspace, uri), range },
			}
		})
}
