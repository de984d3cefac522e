import type { Feature } from '../feature.ts'
import { definitionAt, namedAt } from '../lookup.ts'
import { locationIn, rangeOf } from '../positions.ts'

/** Goes from a name to where it is defined, into the built-in library too. */
export const definition: Feature = {
	capabilities: { definitionProvider: true },
	register({ connection, workspace }) {
		connection.onDefinition(({ textDocument, position }) => {
			const found = definitionAt(workspace, textDocument.uri, position)
			const named = found && namedAt(found)
			if (!found || !named) return null
			const target = locationIn(workspace, found.folder, named.target, named.target.name.span)
			const whole = locationIn(workspace, found.folder, named.target, named.target.span)
			if (!target || !whole) return null
			return [
				{
					originSelectionRange: rangeOf(found.file, found.start + named.name.start, found.start + named.name.end),
					targetUri: target.uri,
					targetRange: whole.range,
					targetSelectionRange: target.range,
				},
			]
		})
	},
}
