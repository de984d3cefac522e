import numbers from '../language/compute/NUMBERS.md'
import { type Entry, referencePages, type Way } from '../language/reference/index.ts'
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

/** An entry of the reference as an editor shows it: what is said of one way of writing first, then of all, then the way to the whole. */
export function entryText({ page, anchor, lead }: Entry, ways: readonly Way[]): string {
	const text = [...ways.map(way => way.text), lead, `[Read more](#${anchor})`].join('\n\n')
	return withLinks(text.replaceAll('](#', `](${page}#`))
}

function withLinks(text: string): string {
	return text
		.replaceAll('](../rules)', `](${indexUri})`)
		.replaceAll('](../compute/NUMBERS.md)', `](${numbersUri})`)
		.replaceAll('](../library/', `](${libraryScheme}:/`)
		.replace(/\]\(([a-zA-Z]+\.md)/g, `](${folder}$1`)
}
