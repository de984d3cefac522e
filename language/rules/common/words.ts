/** "a", "a and b", "a, b and c". */
export function inWords(names: readonly string[], last: 'and' | 'or' = 'and'): string {
	const end = names[names.length - 1] ?? ''
	return names.length < 2 ? end : `${names.slice(0, -1).join(', ')} ${last} ${end}`
}

/** "1 set", "2 sets"; the noun takes an s. */
export function counted(count: number | string, noun: string): string {
	return `${count} ${noun}${String(count) === '1' ? '' : 's'}`
}
