import type { SymbolInformation } from 'vscode-languageserver'
import type { Feature } from '../feature.ts'
import { titleOf } from '../lookup.ts'
import { locationOf } from '../positions.ts'
import { symbolKinds } from './document-symbols.ts'

/** A list longer than this nobody reads. */
const mostSymbols = 200

/** Finds definitions by a part of their name or title, in all folders. */
export const workspaceSymbols: Feature = {
	capabilities: { workspaceSymbolProvider: true },
	register({ connection, workspace }) {
		connection.onWorkspaceSymbol(({ query }) => {
			workspace.settle()
			const wanted = query.toLowerCase()
			const found: SymbolInformation[] = []
			for (const { folder } of workspace.readyFolders()) {
				for (const uri of folder.fileUris()) {
					for (const { definition, start } of folder.file(uri)?.parts ?? []) {
						if (!definition || !isWanted(`${definition.name.text} ${titleOf(definition).toLowerCase()}`, wanted)) continue
						const { name } = definition
						const location = locationOf(workspace, { uri, start: start + name.span.start, end: start + name.span.end })
						if (location)
							found.push({
								name: titleOf(definition),
								kind: symbolKinds[definition.kind],
								containerName: definition.kind,
								location,
							})
						if (found.length >= mostSymbols) return found
					}
				}
			}
			return found
		})
	},
}

/** All letters of the query in their order: editors filter and rank what they get. */
function isWanted(text: string, query: string): boolean {
	let from = 0
	for (const letter of query) {
		from = text.indexOf(letter, from) + 1
		if (from === 0) return false
	}
	return true
}
