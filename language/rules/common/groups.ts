/** Things by key, in the order in which the keys first come. */
export function groupedBy<T>(things: Iterable<T>, keyOf: (thing: T) => string): readonly (readonly [T, ...T[]])[] {
	const groups = new Map<string, [T, ...T[]]>()
	for (const thing of things) {
		const key = keyOf(thing)
		const group = groups.get(key)
		if (group === undefined) groups.set(key, [thing])
		else group.push(thing)
	}
	return [...groups.values()]
}

/** First the first of each list, then the second of each, and so on. */
export function inTurn<T>(...lists: readonly (readonly T[])[]): readonly T[] {
	const longest = Math.max(0, ...lists.map(list => list.length))
	return Array.from({ length: longest }, (_, index) => lists.flatMap(list => list.slice(index, index + 1))).flat()
}
