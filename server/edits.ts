import type { ClientCapabilities, TextEdit, WorkspaceEdit } from 'vscode-languageserver'
import { clientUri } from './positions.ts'
import type { Workspace } from './workspace.ts'

/**
 * Changes of several files as an editor takes them: where it can, with the version of each open text that they were made for, so that it
 * refuses them if the text has changed meanwhile.
 */
export function workspaceEdit(
	changes: ReadonlyMap<string, readonly TextEdit[]>,
	workspace: Workspace,
	client: ClientCapabilities,
): WorkspaceEdit {
	const byFile = [...changes].map(([uri, edits]) => ({
		uri: clientUri(workspace, uri),
		edits: [...edits],
		version: workspace.settledVersion(uri) ?? null,
	}))
	if (!client.workspace?.workspaceEdit?.documentChanges)
		return { changes: Object.fromEntries(byFile.map(({ uri, edits }) => [uri, edits])) }
	return { documentChanges: byFile.map(({ uri, edits, version }) => ({ textDocument: { uri, version }, edits })) }
}
