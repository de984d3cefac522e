import type { Feature } from '../feature.ts'
import { definitionAt, namedAt, ownName, placesNaming } from '../lookup.ts'
import { locationIn } from '../positions.ts'

/** Lists every place that uses a name. */
export const references: Feature = {
	capabilities: { referencesProvider: true },
	register({ connection, workspace }) {
		connection.onReferences(({ textDocument, position, context }) => {
			const found = definitionAt(workspace, textDocument.uri, position)
			const named = found && namedAt(found)
			if (!found || !named) return null
			return placesNaming(found.folder, named.target)
				.filter(({ name }) => context.includeDeclaration || name !== ownName(named.target))
				.flatMap(({ definition, name }) => locationIn(workspace, found.folder, definition, name.span) ?? [])
		})
	},
}
