/** What can be made around a mass. */
export interface Neighbours<T> {
	/** The heaviest that is less. */
	readonly under: T | undefined
	/** Exactly the mass. */
	readonly at: T | undefined
	/** The lightest that is more. */
	readonly over: T | undefined
}

/** The same, each made into something else. */
export function mapNeighbours<T, U>({ under, at, over }: Neighbours<T>, change: (value: T) => U): Neighbours<U> {
	const changed = (value: T | undefined) => (value === undefined ? undefined : change(value))
	return { under: changed(under), at: changed(at), over: changed(over) }
}
