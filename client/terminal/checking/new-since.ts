import type { ShownProblem } from './check-result.ts'

/**
 * The problems that were not there before. One that stays the same while lines above it come and go is not new, nor is one whose file got
 * another name; of three alike where there were two, the last is new.
 */
export function newSince(before: readonly ShownProblem[], now: readonly ShownProblem[]): ShownProblem[] {
	const sameFile = new Known(before.map(problem => keyOf(problem, problem.file)))
	const elsewhere = now.filter(problem => !sameFile.take(keyOf(problem, problem.file)))
	const present = new Set(now.map(problem => problem.file))
	// What a renamed file had stands under its old name still.
	const moved = new Known(before.filter(problem => !present.has(problem.file)).map(problem => keyOf(problem)))
	const had = new Set(before.map(problem => problem.file))
	return elsewhere.filter(problem => had.has(problem.file) || !moved.take(keyOf(problem)))
}

/** How often something was there. */
class Known {
	private readonly counts = new Map<string, number>()

	constructor(keys: readonly string[]) {
		for (const key of keys) this.counts.set(key, (this.counts.get(key) ?? 0) + 1)
	}

	/** Takes one away, if there is one. */
	take(key: string): boolean {
		const count = this.counts.get(key) ?? 0
		if (count === 0) return false
		this.counts.set(key, count - 1)
		return true
	}
}

function keyOf({ code, message }: ShownProblem, file = ''): string {
	return JSON.stringify([file, code, message])
}
