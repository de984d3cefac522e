import { createHash } from 'node:crypto'
import type { ShownProblem } from './check-result.ts'

/**
 * What makes a problem the same one after lines above it were added or taken away: its file, its code and its message; of several alike,
 * its number among them. A text of hexadecimal digits, one for each problem in the order given.
 */
export function identities(problems: readonly ShownProblem[]): string[] {
	const seen = new Map<string, number>()
	return problems.map(({ file, code, message }) => {
		const key = JSON.stringify([file, code, message])
		const number = (seen.get(key) ?? 0) + 1
		seen.set(key, number)
		return createHash('sha256').update(`${key} ${number}`).digest('hex')
	})
}
