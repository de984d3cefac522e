import type { CompletionItem } from 'vscode-languageserver'

/** Does a word have all the letters that are typed, in their order, the first one at the beginning of a part of it? */
export function isLike(word: string, typed: string): boolean {
	const [first, ...rest] = typed.toLowerCase()
	if (first === undefined) return true
	const starts = [...word.matchAll(/[a-z0-9]+/g)].map(part => part.index).filter(at => word[at] === first)
	return starts.some(start => {
		let at = start
		return rest.every(letter => {
			at = word.indexOf(letter, at + 1)
			return at >= 0
		})
	})
}

/** In the order in which they are shown, so that a list that is cut keeps the best. */
export function ranked(items: readonly CompletionItem[]): CompletionItem[] {
	const keyOf = (item: CompletionItem) => item.sortText ?? item.label
	return items.toSorted((a, b) => (keyOf(a) < keyOf(b) ? -1 : keyOf(a) > keyOf(b) ? 1 : 0))
}
