import { TextDocument } from 'vscode-languageserver-textdocument'
import { type FileProblem, fileProblems } from '../../../language/workspace/file-problems.ts'
import { library, libraryScheme } from '../../../language/workspace/library.ts'
import { safelyCorrected } from '../../../language/workspace/safe-corrections.ts'
import { Progress } from '../output.ts'
import type { Workspace, WorkspaceFile } from '../workspace/workspace.ts'
import type { RelatedPlace, ShownProblem } from './check-result.ts'

/** What was found in some files of a workspace. */
export interface Judgement {
	readonly problems: readonly ShownProblem[]
	/** Those of them that `--fix` can take away. */
	readonly correctable: ReadonlySet<ShownProblem>
}

/** Judges the files at the given paths. */
export function judge(workspace: Workspace, paths: readonly string[]): Judgement {
	const progress = new Progress('Checking')
	const places = new Places(workspace)
	const problems: ShownProblem[] = []
	const correctable = new Set<ShownProblem>()
	for (const [index, where] of paths.entries()) {
		progress.at(index, paths.length)
		const file = workspace.files.get(where)
		if (!file) continue
		// What stands between bytes that are no text is not worth a message each.
		if (file.fault) {
			problems.push(notText(file, file.fault, places))
			continue
		}
		const found = fileProblems(workspace.folder, file.uri)
		const safe = new Set(safelyCorrected(file.text, found))
		for (const problem of found) {
			const shown = asShown(workspace, file, problem, places)
			problems.push(shown)
			if (safe.has(problem)) correctable.add(shown)
		}
	}
	progress.done()
	return { problems, correctable }
}

function notText(file: WorkspaceFile, { offset, message }: NonNullable<WorkspaceFile['fault']>, places: Places): ShownProblem {
	const { line, column } = places.at(file.uri, offset)
	return {
		file: file.path,
		line,
		column,
		endLine: line,
		endColumn: column,
		code: 'syntax',
		level: 'error',
		message,
		source: null,
		related: [],
	}
}

function asShown(workspace: Workspace, file: WorkspaceFile, problem: FileProblem, places: Places): ShownProblem {
	const start = places.at(file.uri, problem.start)
	const end = places.at(file.uri, problem.end)
	return {
		file: file.path,
		line: start.line,
		column: start.column,
		endLine: end.line,
		endColumn: end.column,
		code: problem.code,
		level: problem.level,
		message: problem.message,
		source: problem.source ?? null,
		related: problem.related.map(
			(place): RelatedPlace => ({
				file: workspace.pathOf(place.uri),
				...places.at(place.uri, place.start),
				message: place.message,
			}),
		),
	}
}

/** Turns offsets into lines and columns from 1. */
class Places {
	private readonly documents = new Map<string, TextDocument>()

	constructor(private readonly workspace: Workspace) {}

	at(uri: string, offset: number): { line: number; column: number } {
		const { line, character } = this.documentOf(uri).positionAt(offset)
		return { line: line + 1, column: character + 1 }
	}

	private documentOf(uri: string): TextDocument {
		let document = this.documents.get(uri)
		if (!document) {
			const file = uri.startsWith(`${libraryScheme}:`) ? library().files.get(uri) : this.workspace.folder.file(uri)
			document = TextDocument.create(uri, 'barstave', 0, file?.text ?? '')
			this.documents.set(uri, document)
		}
		return document
	}
}
