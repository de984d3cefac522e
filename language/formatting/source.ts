/** Looks at a text as it was written. */

/** How many line breaks stand between two places. */
export function breaksBetween(text: string, start: number, end: number): number {
	return text.slice(start, end).match(/\r\n|\r|\n/g)?.length ?? 0
}

/** How many characters stand before a place on its line, if all of them are spaces; else `undefined`. */
export function columnOf(text: string, place: number): number | undefined {
	let at = place
	while (at > 0 && /[^\S\r\n\uFEFF]/.test(text[at - 1]!)) at--
	return at === 0 || /[\r\n\uFEFF]/.test(text[at - 1]!) ? place - at : undefined
}

/** The line break that the text has most often in the given places, or, where they have none, all over. */
export function lineBreakOf(text: string, places: readonly string[]): '\n' | '\r\n' {
	const inPlaces = places.join(' ')
	const breaks = (/[\r\n]/.test(inPlaces) ? inPlaces : text).match(/\r\n|\r|\n/g) ?? []
	return breaks.filter(one => one === '\r\n').length * 2 > breaks.length ? '\r\n' : '\n'
}
