import type { Exact } from '../model/quantities.ts'
import { exact } from './exact.ts'
import type { Neighbours } from './neighbours.ts'

/** Discs of one mass. */
export interface DiscSupply {
	readonly mass: Exact
	/** How many may be used; `undefined`: as many as needed. */
	readonly limit: number | undefined
}

/** Discs that make up one total. */
export interface DiscSum {
	readonly total: Exact
	/** Heaviest first; the fewest that make the total, among equals the ones with the heavier disc where they first differ. */
	readonly discs: readonly Exact[]
}

interface Kind {
	readonly mass: Exact
	/** In units of the common denominator. */
	readonly weight: bigint
	readonly limit: number | undefined
}

/** Discs that make a sum. */
interface Pile {
	/** In units of the common denominator, so that it is a whole number. */
	readonly sum: bigint
	/** Of all discs. */
	readonly count: number
	/** The heaviest kind in it, and how many of it; the lighter ones are the rest. */
	readonly kind: Kind | undefined
	readonly times: number
	readonly rest: Pile | undefined
}

/**
 * Every total that a supply of discs can make, up to a reach. Heaviest disc first, until it fits no more, would miss some: with one 25
 * and two 20, 40 is 20 + 20. So all totals are worked out, kind by kind from the lightest, and only the best pile of each total is kept.
 * They are worked out when they are first asked for, and kept.
 */
export class DiscSums {
	/** Lightest first. */
	private readonly kinds: readonly Kind[]
	private readonly scale: bigint
	private readonly reach: bigint
	private limit = -1n
	private piles: readonly Pile[] = []

	/** `discs` all weigh something; `reach` is the heaviest total that is looked for. */
	constructor(discs: readonly DiscSupply[], reach: Exact) {
		const scale = discs.reduce((common, disc) => leastCommonMultiple(common, disc.mass.d), 1n)
		this.scale = scale
		this.reach = floor(reach, scale)
		this.kinds = discs
			.map(disc => ({ mass: disc.mass, weight: floor(disc.mass, scale), limit: disc.limit }))
			.sort((a, b) => a.mass.compare(b.mass))
	}

	/** The totals around a mass; nothing at all is the total 0. */
	around(mass: Exact): Neighbours<DiscSum> {
		const target = floor(mass, this.scale)
		this.prepare(target)
		// The first pile that is heavier than the mass, by halving.
		let from = 0
		let to = this.piles.length
		while (from < to) {
			const middle = (from + to) >> 1
			if ((this.piles[middle]?.sum ?? 0n) <= target) from = middle + 1
			else to = middle
		}
		const last = this.sumOf(this.piles[from - 1])
		const hit = last?.total.equals(mass) === true
		return {
			under: hit ? this.sumOf(this.piles[from - 2]) : last,
			at: hit ? last : undefined,
			over: this.sumOf(this.piles[from]),
		}
	}

	private sumOf(pile: Pile | undefined): DiscSum | undefined {
		if (pile === undefined) return undefined
		const discs: Exact[] = []
		for (let each: Pile | undefined = pile; each !== undefined; each = each.rest) {
			for (let time = 0; time < each.times; time++) if (each.kind) discs.push(each.kind.mass)
		}
		return { total: exact(pile.sum).div(exact(this.scale)), discs }
	}

	/**
	 * Works out all totals that a target needs. The lightest total above it is at most the heaviest disc away: of any heavier pile a disc
	 * could be taken off and it would still be heavier.
	 */
	private prepare(target: bigint): void {
		const needed = least((target > 0n ? target : 0n) + (this.kinds.at(-1)?.weight ?? 0n), this.reach)
		if (needed <= this.limit) return
		this.limit = least(needed * 2n, this.reach)
		let kinds = this.kinds
		let piles = bestPiles(kinds, this.limit)
		while (piles === undefined) {
			kinds = kinds.slice(Math.ceil(kinds.length / 2))
			piles = bestPiles(kinds, this.limit)
		}
		this.piles = piles
	}
}

/**
 * How many piles are looked at before the lighter half of the kinds is left out. No gym comes near (twelve kinds from 0.25 kg, without
 * limits, to a tonne a side: 48,000); a text that lists discs of a millionth of a kilogram must not keep an editor waiting.
 */
const mostPiles = 250_000

/** The best pile of every sum up to `limit`, lightest sum first; `undefined` where there are too many to look at. */
function bestPiles(kinds: readonly Kind[], limit: bigint): readonly Pile[] | undefined {
	let piles: readonly Pile[] = [{ sum: 0n, count: 0, kind: undefined, times: 0, rest: undefined }]
	const budget = { left: mostPiles }
	for (const kind of kinds) {
		const free = kind.limit === undefined || kind.limit >= Number(limit / kind.weight)
		piles = free ? withAnyNumber(piles, kind, limit, budget) : withUpTo(kind.limit, piles, kind, limit, budget)
		if (budget.left < 0) return undefined
	}
	return piles
}

/** Two rows in order become one: the piles as they were, and each new pile with one more disc on it. */
function withAnyNumber(piles: readonly Pile[], kind: Kind, limit: bigint, budget: { left: number }): readonly Pile[] {
	const made: Pile[] = []
	let [old, below] = [0, 0]
	while (budget.left-- >= 0) {
		const without = piles[old]
		const more = withOneMore(made[below], kind, limit)
		if (without === undefined && more === undefined) break
		const difference = without === undefined ? 1n : more === undefined ? -1n : without.sum - more.sum
		// Of as many discs, the pile with one more of this kind: it is the heaviest so far.
		const best = difference > 0n || (difference === 0n && more && without && more.count <= without.count) ? more : without
		if (best) made.push(best)
		if (difference <= 0n) old++
		if (difference >= 0n) below++
	}
	return made
}

function withOneMore(pile: Pile | undefined, kind: Kind, limit: bigint): Pile | undefined {
	if (pile === undefined || pile.sum + kind.weight > limit) return undefined
	const again = pile.kind === kind
	return {
		sum: pile.sum + kind.weight,
		count: pile.count + 1,
		kind,
		times: again ? pile.times + 1 : 1,
		rest: again ? pile.rest : pile,
	}
}

function withUpTo(most: number, piles: readonly Pile[], kind: Kind, limit: bigint, budget: { left: number }): readonly Pile[] {
	const best = new Map<bigint, Pile>()
	for (const rest of piles) {
		for (let times = 0; times <= most && budget.left-- >= 0; times++) {
			const sum = rest.sum + kind.weight * BigInt(times)
			if (sum > limit) break
			const count = rest.count + times
			const known = best.get(sum)
			// A sum that is met again has a heavier rest, so fewer discs of this kind: it is better only with fewer discs in all.
			if (known === undefined || count < known.count) best.set(sum, times === 0 ? rest : { sum, count, kind, times, rest })
		}
	}
	return [...best.values()].sort((a, b) => (a.sum < b.sum ? -1 : 1))
}

/** The whole number of units, each 1/scale, that a mass holds. */
function floor(mass: Exact, scale: bigint): bigint {
	const units = mass.s * mass.n * scale
	const whole = units / mass.d
	return units < 0n && whole * mass.d !== units ? whole - 1n : whole
}

function least(a: bigint, b: bigint): bigint {
	return a < b ? a : b
}

function leastCommonMultiple(a: bigint, b: bigint): bigint {
	let [divisor, rest] = [a, b]
	while (rest !== 0n) [divisor, rest] = [rest, divisor % rest]
	return (a / divisor) * b
}
