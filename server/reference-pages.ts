import numbers from '../language/compute/NUMBERS.md'
import { entryAbout, referencePages } from '../language/reference/index.ts'
import { libraryScheme } from '../language/workspace/library.ts'
import { indexUri } from './rule-pages.ts'

const folder = `${libraryScheme}:/reference/`

/** How loads and totals are worked out. */
const numbersUri = `${folder}numbers.md`

/** The page of the reference that a URI names, or `undefined`. Its links lead to pages in the editor. */
export function referenceAt(uri: string): string | undefined {
	const [path] = uri.split('#')
	if (path === numbersUri) return numbers
	const text = path?.startsWith(folder) ? referencePages[path.slice(folder.length)] : undefined
	return text && withLinks(text.replace(/^<!--.*-->\n/gm, ''))
}

/** What the reference says of a form of the grammar, with the way to its entry. */
export function formText(form: string): string | undefined {
	const entry = entryAbout(form)
	return entry && withLinks(`${entry.lead}\n\n[Read more](${entry.page}#${entry.anchor})`)
}

function withLinks(text: string): string {
	return text
		.replaceAll('](../rules)', `](${indexUri})`)
		.replaceAll('](../compute/NUMBERS.md)', `](${numbersUri})`)
		.replaceAll('](../library/', `](${libraryScheme}:/`)
		.replace(/\]\(([a-zA-Z]+\.md)/g, `](${folder}$1`)
}
