/**
 * The word of a list that another is most likely a slip of, or `undefined` where none is near enough: one change in three letters, two in
 * six or more. A swap of two neighbouring letters is one change (Damerau–Levenshtein, optimal string alignment).
 */
export function nearest<Word extends string>(word: string, candidates: Iterable<Word>): Word | undefined {
	const wanted = word.toLowerCase()
	let best: Word | undefined
	let allowed = changesAllowed(wanted)
	if (allowed === 0) return undefined
	for (const candidate of candidates) {
		const changes = distance(wanted, candidate, allowed)
		if (changes <= allowed) {
			best = candidate
			if (changes === 0) return best
			allowed = changes - 1
		}
		if (allowed < 0) break
	}
	return best
}

/**
 * Up to three names that another most likely stands for, the likeliest first: slips of the pen, then longer names that have all of its
 * words (`squat`: `back-squat`), then shorter ones all of whose words it has.
 */
export function nearestNames(name: string, candidates: Iterable<string>): string[] {
	const words = name.split('-')
	const allowed = changesAllowed(name)
	const ranked: { candidate: string; rank: number }[] = []
	for (const candidate of new Set(candidates)) {
		const changes = allowed === 0 ? 1 : distance(name, candidate, allowed)
		const others = candidate.split('-')
		if (allowed > 0 && changes <= allowed) ranked.push({ candidate, rank: changes })
		else if (words.every(word => others.includes(word))) ranked.push({ candidate, rank: 10 + others.length })
		else if (others.every(word => words.includes(word))) ranked.push({ candidate, rank: 100 - others.length })
	}
	return ranked
		.sort((a, b) => a.rank - b.rank || (a.candidate < b.candidate ? -1 : 1))
		.slice(0, 3)
		.map(({ candidate }) => candidate)
}

function changesAllowed(word: string): number {
	return word.length > 5 ? 2 : word.length > 2 ? 1 : 0
}

function distance(a: string, b: string, limit: number): number {
	if (Math.abs(a.length - b.length) > limit) return limit + 1
	let beforeLast: number[] = []
	let last = Array.from({ length: b.length + 1 }, (_, column) => column)
	for (let row = 1; row <= a.length; row++) {
		const current = [row]
		for (let column = 1; column <= b.length; column++) {
			const same = a[row - 1] === b[column - 1]
			let cost = Math.min(last[column]! + 1, current[column - 1]! + 1, last[column - 1]! + (same ? 0 : 1))
			const swapped = row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1]
			if (swapped) cost = Math.min(cost, beforeLast[column - 2]! + 1)
			current.push(cost)
		}
		beforeLast = last
		last = current
	}
	return last[b.length]!
}
