import { ErrorCodes, ResponseError, type TextEdit } from 'vscode-languageserver'
import type { DefinitionKind } from '../../language/model/definitions.ts'
import { reservedWords } from '../../language/parser/words.ts'
import type { Folder } from '../../language/workspace/folder.ts'
import { workspaceEdit } from '../edits.ts'
import type { Feature } from '../feature.ts'
import { definitionAt, namedAt, ownName, placesNaming, type Target } from '../lookup.ts'
import { locationIn, rangeOf } from '../positions.ts'
import type { Workspace } from '../workspace.ts'

const ourName = /^[a-z][a-z0-9]*(-[a-z0-9]+)*$/

/** Changes a name everywhere at once, after a look at whether the new one can be. */
export const rename: Feature = {
	capabilities: { renameProvider: { prepareProvider: true } },
	register({ connection, workspace, client }) {
		connection.onPrepareRename(({ textDocument, position }) => {
			const found = definitionAt(workspace, textDocument.uri, position)
			const named = found && namedAt(found)
			if (!found || !named || found.folder.isBuiltIn(named.target.definition)) return null
			const range = rangeOf(found.file, found.start + named.name.start, found.start + named.name.end)
			return { range, placeholder: ownName(named.target).text }
		})
		connection.onRenameRequest(({ textDocument, position, newName }) => {
			const found = definitionAt(workspace, textDocument.uri, position)
			const named = found && namedAt(found)
			if (!found || !named) return null
			const hindrance = hindranceOf(newName, named.target, found.folder)
			if (hindrance) throw new ResponseError(ErrorCodes.InvalidParams, hindrance)
			return workspaceEdit(editsOf(workspace, found.folder, named.target, newName), workspace, client)
		})
	},
}

function hindranceOf(newName: string, target: Target, folder: Folder): string | undefined {
	const { definition } = target
	const { text } = ownName(target)
	if (folder.isBuiltIn(definition)) return `"${text}" is built in; its name cannot be changed.`
	if (!ourName.test(newName)) return 'A name is made of lower-case letters a to z, digits and hyphens, as in front-squat.'
	if (newName === 'x' || reservedWords.has(newName)) return `"${newName}" is a word of the language and cannot be a name.`
	// In `requires sign-off` the words win over a movement of that name.
	if (newName === 'sign-off' && definition.kind === 'movement')
		return '"sign-off" is what a coach gives in a gate, and cannot be a movement.'
	if (newName === text) return undefined
	if (target.kind === 'session') {
		const isTaken = target.definition.sessions.some(session => session.name.text === newName)
		return isTaken ? `Another session of this block is already called "${newName}".` : undefined
	}
	// A plan is for a lifter or for a team: one name for both would lead it astray.
	const kinds: DefinitionKind[] =
		definition.kind === 'lifter' || definition.kind === 'team' ? ['lifter', 'team'] : [definition.kind]
	const taken = kinds.find(kind => folder.find(kind, newName))
	return taken && `${taken === definition.kind ? 'Another' : 'A'} ${taken} is already called "${newName}".`
}

function editsOf(workspace: Workspace, folder: Folder, target: Target, newName: string): Map<string, TextEdit[]> {
	const byFile = new Map<string, TextEdit[]>()
	for (const { definition, name } of placesNaming(folder, target)) {
		const location = locationIn(workspace, folder, definition, name.span)
		if (!location) continue
		byFile.set(location.uri, [...(byFile.get(location.uri) ?? []), { range: location.range, newText: newName }])
	}
	return byFile
}
