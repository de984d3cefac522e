import { type CodeAction, CodeActionKind } from 'vscode-languageserver'
import { workspaceEdit } from '../edits.ts'
import { rangeOf } from '../positions.ts'
import { toDiagnostics } from '../problems/to-diagnostics.ts'
import type { Request } from './request.ts'

/** The corrections of the problems at a place. */
export function quickFixes({ context: { workspace, client }, file, problems }: Request): CodeAction[] {
	return problems.flatMap(problem =>
		problem.corrections.map(({ title, edits }, index): CodeAction => {
			const changes = edits.map(edit => ({ range: rangeOf(file, edit.start, edit.end), newText: edit.text }))
			return {
				title,
				kind: CodeActionKind.QuickFix,
				diagnostics: toDiagnostics(file, [problem], workspace),
				isPreferred: index === 0 && problem.corrections.length === 1,
				edit: workspaceEdit(new Map([[file.uri, changes]]), workspace, client),
			}
		}),
	)
}
