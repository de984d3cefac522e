import type { Definition } from '../../language/model/definitions.ts'
import type { PreviewProblem } from '../../language/reports/preview.ts'
import { fileProblems } from '../../language/workspace/file-problems.ts'
import type { Folder } from '../../language/workspace/folder.ts'
import { clientUri, rangeOf } from '../positions.ts'
import { relativePath } from '../uri.ts'
import type { Workspace } from '../workspace.ts'

/** The problems that are shown beside what they are about; hints are for the editor alone. */
export class OpenProblems {
	/** What was last given, by file. */
	private readonly given = new Map<string, readonly PreviewProblem[]>()

	constructor(private readonly workspace: Workspace) {}

	/**
	 * Of the files in which some definitions stand.
	 * @param mayBeOld What was last given is good enough, where there is anything: it costs nothing.
	 */
	of(definitions: readonly (Definition | undefined)[], folder: Folder, mayBeOld: boolean): readonly PreviewProblem[] {
		const files = new Set(definitions.flatMap(one => (one && folder.placeOf(one, one.span)?.uri) ?? []))
		return [...files].sort().flatMap(uri => {
			const known = mayBeOld ? this.given.get(uri) : undefined
			const problems = known ?? problemsOfFile(uri, folder, this.workspace)
			this.given.set(uri, problems)
			return problems
		})
	}
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
