import type { Diagnostic } from 'vscode-languageserver'
import { fileProblems } from '../../language/workspace/file-problems.ts'
import type { Feature } from '../feature.ts'
import { clientUri } from '../positions.ts'
import { toDiagnostics } from '../problems/to-diagnostics.ts'
import { watchProblems } from '../problems/watch.ts'
import { asksForProblems } from './pull-diagnostics.ts'

/** Publishes the problems of every file that is open or has some, each when it changes, to an editor that does not ask for them. */
export const diagnostics: Feature = {
	capabilities: {},
	register(context) {
		if (asksForProblems(context)) return
		const { connection, workspace } = context
		const published = new Map<string, string>()
		const publish = (uri: string, list: Diagnostic[] | undefined) => {
			const text = list && list.length > 0 ? JSON.stringify(list) : ''
			const open = workspace.openText(uri)
			if ((published.get(uri) ?? (open ? undefined : '')) === text) return
			if (list === undefined) published.delete(uri)
			else published.set(uri, text)
			const settled = workspace.settledVersion(uri)
			const version = settled === undefined ? {} : { version: settled }
			workspace.counters.filesPublished++
			void connection.sendDiagnostics({ uri: clientUri(workspace, uri), diagnostics: list ?? [], ...version })
		}
		watchProblems(workspace, publish)
		workspace.onEarlyText((file, folder) => {
			// While the folder is still read, names would be missing that are only not there yet.
			const early = fileProblems(folder, file.uri).filter(problem => problem.code === 'syntax')
			publish(file.uri, toDiagnostics(file, early, workspace))
		})
	},
}
