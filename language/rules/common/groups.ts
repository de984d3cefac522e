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
