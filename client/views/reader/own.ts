/** A record's own entry: a name comes from a text that anyone may have written, and `constructor` is a name like another. */
export function own<T>(record: Readonly<Record<string, T>>, name: string): T | undefined {
	return Object.hasOwn(record, name) ? record[name] : undefined
}
