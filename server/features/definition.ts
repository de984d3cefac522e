import type { Feature } from '../feature.ts'
import { definitionAt, namedAt, ownName } from '../lookup.ts'
import { locationIn, rangeOf } from '../positions.ts'

/** Goes from a name to where it is defined, into the built-in library too. */
export const definition: Feature = {
	capabilities: { definitionProvider: true },
	register({ connection, workspace, client }) {
		connection.onDefinition(({ textDocument, position }) => {
			const found = definitionAt(workspace, textDocument.uri, position)
			const named = found && namedAt(found)
			if (!found || !named) return null
			const { definition, ...target } = named.target
			const name = locationIn(workspace, found.folder, definition, ownName(named.target).span)
			const whole = locationIn(workspace, found.folder, definition, 'session' in target ? target.session.span : definition.span)
			if (!name || !whole) return null
			if (!client.textDocument?.definition?.linkSupport) return [name]
			return [
				{
					originSelectionRange: rangeOf(found.file, found.start + named.name.start, found.start + named.name.end),
					targetUri: name.uri,
					targetRange: whole.range,
					targetSelectionRange: name.range,
				},
			]
		})
	},
}
