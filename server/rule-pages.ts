import { rules } from '../language/rules/registry.ts'
import { libraryScheme } from '../language/workspace/library.ts'

const folder = `${libraryScheme}:/rules/`

/** Where the page of a rule is read: inside the editor, without a network. */
export function pageUri(code: string): string {
	return `${folder}${code}.md`
}

/** The page that a URI names, or `undefined`. */
export function pageAt(uri: string): string | undefined {
	return rules.find(rule => pageUri(rule.code) === uri)?.page
}
