import { type CodeAction, CodeActionKind } from 'vscode-languageserver'
import { fileProblems } from '../../language/workspace/file-problems.ts'
import { workspaceEdit } from '../edits.ts'
import type { Feature } from '../feature.ts'
import { offsetOf, rangeOf } from '../positions.ts'
import { toDiagnostics } from '../problems/to-diagnostics.ts'

/** Offers the corrections of the problems at a place. */
export const codeActions: Feature = {
	capabilities: { codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix] } },
	register({ connection, workspace, client }) {
		connection.onCodeAction(({ textDocument, range, context }) => {
			if (context.only && !context.only.some(kind => CodeActionKind.QuickFix.startsWith(kind))) return []
			workspace.settle()
			const file = workspace.fileOf(textDocument.uri)
			if (!file) return null
			const from = offsetOf(file, range.start)
			const to = offsetOf(file, range.end)
			const near = fileProblems(workspace.folderOf(textDocument.uri), file.uri).filter(one => one.start <= to && from <= one.end)
			return near.flatMap(problem =>
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
		})
	},
}
