import { type DocumentHighlight, DocumentHighlightKind } from 'vscode-languageserver'
import type { Feature } from '../feature.ts'
import { definitionAt, namedAt, ownName, placesNaming } from '../lookup.ts'
import { rangeOf } from '../positions.ts'

/** Marks every place of the text that has the name under the cursor: where it is given as written, where it is used as read. */
export const documentHighlights: Feature = {
	capabilities: { documentHighlightProvider: true },
	register({ connection, workspace }) {
		connection.onDocumentHighlight(({ textDocument, position }): DocumentHighlight[] | null => {
			const found = definitionAt(workspace, textDocument.uri, position)
			const named = found && namedAt(found)
			if (!found || !named) return null
			const { file, folder } = found
			const starts = new Map(file.parts.map(part => [part.definition, part.start]))
			return placesNaming(folder, named.target).flatMap(({ definition, name }) => {
				const start = starts.get(definition)
				if (start === undefined) return []
				const kind = name === ownName(named.target) ? DocumentHighlightKind.Write : DocumentHighlightKind.Read
				return [{ range: rangeOf(file, start + name.span.start, start + name.span.end), kind }]
			})
		})
	},
}
