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

/** A total made of discs up to one kind: so many of that kind on top of the total that lighter kinds make. */
interface Pile {
	/** In units of the common denominator, so that it is a whole number. */
	readonly sum: bigint
	readonly count: number
	readonly disc: Exact
	readonly times: number
	readonly rest: Pile | undefined
}

/**
 * Every total that a supply of discs can make, up to a reach. Heaviest disc first, until it fits no more, would miss some: with one 25
 * and two 20, 40 is 20 + 20. So all totals are worked out, kind by kind from the lightest, and only the best pile of each total is kept.
 * They are worked out when they are first asked for, and kept.
 */
export class DiscSums {
	private readonly kinds: readonly { readonly mass: Exact; readonly weight: bigint; readonly limit: number | undefined }[]
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
			for (let time = 0; time < each.times; time++) discs.push(each.disc)
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
		let piles = allPiles(kinds, this.limit)
		while (piles === undefined) {
			kinds = kinds.slice(Math.ceil(kinds.length / 2))
			piles = allPiles(kinds, this.limit)
		}
		this.piles = piles
	}
}

/**
 * How many piles are looked at before the lighter half of the kinds is left out. No gym comes near (the usual discs to a tonne take
 * a few thousand); a text that lists discs of a millionth of a kilogram must not keep an editor waiting.
 */
const mostPiles = 400_000

function allPiles(kinds: DiscSums['kinds'], limit: bigint): readonly Pile[] | undefined {
	let piles: Pile[] = [{ sum: 0n, count: 0, disc: exact(0), times: 0, rest: undefined }]
	let looked = 0
	for (const { mass, weight, limit: most } of kinds) {
		const best = new Map<bigint, Pile>()
		const keep = (pile: Pile): void => {
			const known = best.get(pile.sum)
			// Of as many discs, more of this kind: it is the heaviest so far.
			if (known === undefined || pile.count < known.count || (pile.count === known.count && pile.times > known.times)) {
				best.set(pile.sum, pile)
			}
		}
		for (const rest of piles) {
			for (let times = 0; most === undefined || times <= most; times++) {
				const sum = rest.sum + weight * BigInt(times)
				if (sum > limit) break
				if (++looked > mostPiles) return undefined
				keep({ sum, count: rest.count + times, disc: mass, times, rest })
			}
		}
		piles = [...best.values()].sort((a, b) => (a.sum < b.sum ? -1 : 1))
	}
	return piles
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
