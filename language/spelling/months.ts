const months = [
	...['january', 'february', 'march', 'april', 'may', 'june', 'july', 'august', 'september', 'october', 'november', 'december'],
]
/** The shortest form that is read. */
const shortest = 3

/** The number of the month that a word stands for, from 1 on: `Oct`, `sept`, `October`. */
export function monthOf(word: string): number | undefined {
	const written = word.toLowerCase()
	if (written.length < shortest) return undefined
	const found = months.findIndex(one => one.startsWith(written) || written === `${one.slice(0, 3)}t`)
	return found < 0 ? undefined : found + 1
}
