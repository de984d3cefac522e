import { library } from '../../language/workspace/library.ts'
import type { Feature } from '../feature.ts'
import { pageAt } from '../rule-pages.ts'

/** Gives the texts of the built-in library and the pages of the rules, for the editor to open read-only. */
export const libraryText: Feature = {
	capabilities: {},
	register({ connection }) {
		connection.onRequest('barstave/libraryText', ({ uri }: { uri: string }): string => {
			return library().files.get(uri)?.text ?? pageAt(uri) ?? `// Nothing built in is called ${uri}.`
		})
	},
}
