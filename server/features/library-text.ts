import { library } from '../../language/workspace/library.ts'
import type { Feature } from '../feature.ts'
import { referenceAt } from '../reference-pages.ts'
import { pageAt } from '../rule-pages.ts'

/** Gives the texts of the built-in library, the pages of the rules and the reference of the language, for the editor to open read-only. */
export const libraryText: Feature = {
	capabilities: {},
	register({ connection }) {
		connection.onRequest('barstave/libraryText', ({ uri }: { uri: string }): string => {
			return library().files.get(uri)?.text ?? pageAt(uri) ?? referenceAt(uri) ?? `// Nothing built in is called ${uri}.`
		})
	},
}
