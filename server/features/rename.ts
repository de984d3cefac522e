import { ErrorCodes, ResponseError, type TextDocumentEdit } from 'vscode-languageserver'
import type { Definition } from '../../language/model/definitions.ts'
import { reservedWords } from '../../language/parser/tokens.ts'
import type { Folder } from '../../language/workspace/folder.ts'
import type { Feature, ServerContext } from '../feature.ts'
import { definitionAt, namedAt, placesNaming } from '../lookup.ts'
import { locationIn, rangeOf } from '../positions.ts'

const ourName = /^[a-z][a-z0-9]*(-[a-z0-9]+)*$/

/** Changes a name everywhere at once, after a look at whether the new one can be. */
export const rename: Feature = {
	capabilities: { renameProvider: { prepareProvider: true } },
	register({ connection, workspace }) {
		connection.onPrepareRename(({ textDocument, position }) => {
			const found = definitionAt(workspace, textDocument.uri, position)
			const named = found && namedAt(found)
			if (!found || !named || found.folder.isBuiltIn(named.target)) return null
			const range = rangeOf(found.file, found.start + named.name.start, found.start + named.name.end)
			return { range, placeholder: named.target.name.text }
		})
		connection.onRenameRequest(({ textDocument, position, newName }) => {
			const found = definitionAt(workspace, textDocument.uri, position)
			const named = found && namedAt(found)
			if (!found || !named) return null
			const hindrance = hindranceOf(newName, named.target, found.folder)
			if (hindrance) throw new ResponseError(ErrorCodes.InvalidParams, hindrance)
			return { documentChanges: editsOf(workspace, found.folder, named.target, newName) }
		})
	},
}

function hindranceOf(newName: string, target: Definition, folder: Folder): string | undefined {
	if (folder.isBuiltIn(target)) return `"${target.name.text}" is built in; its name cannot be changed.`
	if (!ourName.test(newName)) return 'A name is made of lower-case letters a to z, digits and hyphens, as in front-squat.'
	if (newName === 'x' || reservedWords.has(newName)) return `"${newName}" is a word of the language and cannot be a name.`
	if (newName !== target.name.text && folder.find(target.kind, newName))
		return `Another ${target.kind} is already called "${newName}".`
	return undefined
}

function editsOf(workspace: ServerContext['workspace'], folder: Folder, target: Definition, newName: string): TextDocumentEdit[] {
	const byFile = new Map<string, TextDocumentEdit>()
	for (const { definition, name } of placesNaming(folder, target)) {
		const location = locationIn(workspace, folder, definition, name.span)
		if (!location) continue
		const version = workspace.settledVersion(location.uri) ?? null
		const edit = byFile.get(location.uri) ?? { textDocument: { uri: location.uri, version }, edits: [] }
		edit.edits.push({ range: location.range, newText: newName })
		byFile.set(location.uri, edit)
	}
	return [...byFile.values()]
}
