import { CodeActionKind } from 'vscode-languageserver'
import { fileProblems } from '../../language/workspace/file-problems.ts'
import { libraryScheme } from '../../language/workspace/library.ts'
import { missingDefinitions, newPlans } from '../code-actions/beginnings.ts'
import { allFixes, fixAllKind } from '../code-actions/fix-all.ts'
import { quickFixes } from '../code-actions/quick-fixes.ts'
import type { Request } from '../code-actions/request.ts'
import type { Feature } from '../feature.ts'
import { offsetOf } from '../positions.ts'

/** Offers the corrections of the problems at a place, all safe ones of the text at once, and beginnings of what is not written yet. */
export const codeActions: Feature = {
	capabilities: {
		codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, CodeActionKind.Refactor, fixAllKind] },
	},
	register(context) {
		const { connection, workspace, client } = context
		connection.onCodeAction(({ textDocument, range, context: { only } }) => {
			workspace.settle()
			const file = workspace.fileOf(textDocument.uri)
			// An editor that knows commands alone gets none; the built-in texts are there to be read.
			if (!file || file.uri.startsWith(libraryScheme) || !client.textDocument?.codeAction?.codeActionLiteralSupport) return null
			const folder = workspace.folderOf(textDocument.uri)
			const [from, to] = [offsetOf(file, range.start), offsetOf(file, range.end)]
			const problems = fileProblems(folder, file.uri).filter(one => one.start <= to && from <= one.end)
			const request: Request = { context, folder, file, from, to, problems }
			const wants = (kind: string) => !only || only.some(asked => kind === asked || kind.startsWith(`${asked}.`))
			return [
				...(wants(CodeActionKind.QuickFix) ? [...quickFixes(request), ...missingDefinitions(request)] : []),
				...(wants(CodeActionKind.Refactor) ? newPlans(request) : []),
				// All of a text is corrected when that is asked for, on saving for instance, and offered nowhere else.
				...(only && wants(fixAllKind) ? allFixes(request) : []),
			]
		})
	},
}
