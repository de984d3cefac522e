import type { Gym, Movement } from '../model/definitions.ts'
import type { Exact, Mass, Unit } from '../model/quantities.ts'
import { DiscSums, type DiscSupply, type Neighbours } from './disc-sums.ts'
import { compare, exact, rounded, zero } from './exact.ts'
import { inUnit } from './mass.ts'

/**
 * What a gym can put on a bar or in a hand, and the load nearest to the one that a plan asks for.
 */

/** What carries a load. Its masses are in its own `unit`; where a movement takes two, they are those of one hand. */
export type Implement = Bar | Discs | Row | Free

/** A bar with its collars, and discs in pairs. */
interface Bar {
	readonly kind: 'bar'
	readonly name: string
	readonly unit: Unit
	readonly mass: Exact
	/** Of the pair. */
	readonly collars: Exact
	/** What one side can hold. */
	readonly side: DiscSums
}

/** Discs without a bar: held, or added to bodyweight. */
interface Discs {
	readonly kind: 'discs'
	readonly name: string
	readonly unit: Unit
	readonly sums: DiscSums
}

/** Masses as they stand: dumbbells, a stack, a row of stones. */
interface Row {
	readonly kind: 'row'
	readonly name: string
	readonly unit: Unit
	readonly parts: readonly RowPart[]
}

/** Masses from–to, `by` apart; one mass where both ends are equal. */
interface RowPart {
	readonly from: Exact
	readonly to: Exact
	readonly by: Exact
}

/** No masses are stated: any load. */
interface Free {
	readonly kind: 'free'
	readonly name: string | undefined
}

/** Why nothing can be loaded, in a coach's words. */
export interface NotLoaded {
	/** The implement is not there, or it has no masses. */
	readonly missing: 'equipment' | 'loadable'
	readonly reason: string
}

export interface Loaded {
	/** In the unit that was asked for. */
	readonly load: Exact
	/** Discs a side (all of them, without a bar), heaviest first, in the unit that was asked for; `undefined` where none are used. */
	readonly perSide: readonly Exact[] | undefined
	/** The load asked for is more than the gym can make: `load` is the heaviest that it has. */
	readonly beyond: boolean
	/** The load asked for is under the empty bar or the lightest mass: `load` is that. */
	readonly under: boolean
}

/** The discs of a lifter without a gym, and of a gym that states none (common practice). */
const usualDiscs: Readonly<Record<Unit, readonly string[]>> = {
	kg: ['25', '20', '15', '10', '5', '2.5', '1.25'],
	lb: ['45', '35', '25', '10', '5', '2.5'],
}

/** The bar of a lifter without a gym. Source: IWF equipment rules for 20 kg; 45 lb from memory. */
const usualBar: Readonly<Record<Unit, Mass>> = {
	kg: { amount: exact(20), unit: 'kg' },
	lb: { amount: exact(45), unit: 'lb' },
}

/** Called a bar, but it holds the lifter. */
const hangingBars: ReadonlySet<string> = new Set(['pull-up-bar', 'chin-up-bar', 'dip-bar', 'wall-bar'])

/** No side of a bar holds more than this, however many discs there are. */
const mostPerSide: Mass = { amount: exact(1000), unit: 'kg' }

/** Places of a load without stated masses: nobody weighs a sled finer. */
const freePlaces = 2

/**
 * What carries the load of a movement in a gym: every equipment word of the movement must be there, and the first one with masses
 * decides. Without a gym a lifter has everything: bars of 20 kg (45 lb where `unit` is lb) with any number of the usual discs, and any
 * load of all else.
 */
export function implementFor(movement: Movement, gym: Gym | undefined, unit: Unit): Implement | NotLoaded {
	const words = movement.equipment.map(word => word.value)
	const known = gym === undefined ? usualImplements : (gymImplements.get(gym) ?? new Map<string, Implement | NotLoaded>())
	if (gym !== undefined) gymImplements.set(gym, known)
	const key = [unit, movement.hands, movement.loadAdded, ...words].join(' ')
	const found =
		known.get(key) ?? (gym === undefined ? usualImplement(movement, words, unit) : gymImplement(movement, words, gym, unit))
	known.set(key, found)
	return found
}

/** An implement keeps the sums that it has worked out, so there is one of each for a gym. */
const gymImplements = new WeakMap<Gym, Map<string, Implement | NotLoaded>>()
const usualImplements = new Map<string, Implement | NotLoaded>()

function usualImplement(movement: Movement, words: readonly string[], unit: Unit): Implement {
	const bar = words.find(word => /(^|-)bar(bell)?$/.test(word) && !hangingBars.has(word))
	if (bar !== undefined) return barOf(bar, usualBar[unit], zero, usualSupply(unit))
	if (movement.loadAdded || words.some(isDiscWord)) return discsOf(unit, usualSupply(unit))
	return { kind: 'free', name: words[0] }
}

function gymImplement(movement: Movement, words: readonly string[], gym: Gym, unit: Unit): Implement | NotLoaded {
	const place = gym.title?.text ?? gym.name.text
	const carriers: Implement[] = []
	for (const word of words) {
		const carrier = carrierOf(word, gym, movement.hands)
		if (carrier === undefined) return { missing: 'equipment', reason: `${place} has no ${word.replaceAll('-', ' ')}` }
		carriers.push(carrier)
	}
	const carrier =
		carriers.find(each => each.kind !== 'free') ??
		(movement.loadAdded ? discsOf(discUnit(gym) ?? unit, supplyOf(gym, discUnit(gym) ?? unit, movement.hands)) : carriers[0])
	if (carrier?.kind === 'row' && carrier.parts.length === 0) {
		return { missing: 'loadable', reason: `${place} states no mass of a ${carrier.name.replaceAll('-', ' ')} that can be used` }
	}
	return carrier ?? { kind: 'free', name: undefined }
}

/** What one equipment word is in a gym; `undefined` where the gym does not have it. */
function carrierOf(word: string, gym: Gym, hands: number): Implement | undefined {
	const bar = gym.bars.find(each => each.name.text === word)
	if (bar !== undefined) {
		const collars = gym.collars === undefined ? zero : inUnit(gym.collars.value, bar.mass.unit)
		return barOf(word, bar.mass, collars, supplyOf(gym, bar.mass.unit, 2 * hands))
	}
	if (gym.dumbbells !== undefined && (word === 'dumbbell' || word === 'dumbbells')) return rowOf(word, [gym.dumbbells.value])
	const stack = gym.stacks.find(each => each.name.text === word)
	if (stack !== undefined) return rowOf(word, [stack])
	const masses = gym.fixed.filter(each => each.name.text === word).flatMap(each => each.masses)
	if (masses.length > 0) {
		return rowOf(
			word,
			masses.map(mass => ({ from: mass, to: mass, by: mass })),
		)
	}
	if (gym.equipment.some(each => each.value === word)) return { kind: 'free', name: word }
	const plates = gym.plates
	return plates !== undefined && isDiscWord(word)
		? discsOf(discUnit(gym) ?? 'kg', supplyOf(gym, discUnit(gym) ?? 'kg', hands))
		: undefined
}

function isDiscWord(word: string): boolean {
	return word === 'plate' || word === 'plates' || word === 'disc' || word === 'discs'
}

function barOf(name: string, mass: Mass, collars: Exact, discs: readonly DiscSupply[]): Bar {
	const side = new DiscSums(discs, inUnit(mostPerSide, mass.unit))
	return { kind: 'bar', name, unit: mass.unit, mass: mass.amount, collars, side }
}

function discsOf(unit: Unit, discs: readonly DiscSupply[]): Discs {
	return { kind: 'discs', name: 'discs', unit, sums: new DiscSums(discs, inUnit(mostPerSide, unit)) }
}

function rowOf(name: string, ranges: readonly { readonly from: Mass; readonly to: Mass; readonly by: Mass }[]): Row {
	const unit = ranges[0]?.from.unit ?? 'kg'
	const parts = ranges
		.map(({ from, to, by }) => ({ from: inUnit(from, unit), to: inUnit(to, unit), by: inUnit(by, unit) }))
		.filter(({ from, to, by }) => from.equals(to) || (compare(from, to) < 0 && compare(by, zero) > 0))
	return { kind: 'row', name, unit, parts }
}

function usualSupply(unit: Unit): readonly DiscSupply[] {
	return usualDiscs[unit].map(mass => ({ mass: exact(mass), limit: undefined }))
}

/** The discs of a gym where `places` of them go on at once: both sides, both hands. */
function supplyOf(gym: Gym, unit: Unit, places: number): readonly DiscSupply[] {
	if (gym.plates === undefined) return usualSupply(unit)
	const supply = new Map<string, { mass: Exact; count: number | undefined }>()
	for (const { mass: written, count } of gym.plates.value) {
		const mass = inUnit(written, unit)
		if (compare(mass, zero) <= 0) continue
		const known = supply.get(mass.toFraction())
		const both = known?.count === undefined || count === undefined ? undefined : known.count + count
		supply.set(mass.toFraction(), { mass, count: known === undefined ? count : both })
	}
	return [...supply.values()].map(({ mass, count }) => ({
		mass,
		limit: count === undefined ? undefined : Math.floor(count / places),
	}))
}

function discUnit(gym: Gym): Unit | undefined {
	return gym.plates?.value[0]?.mass.unit
}

/** A load that an implement can make, in its own unit. */
interface Candidate {
	readonly load: Exact
	readonly discs: readonly Exact[] | undefined
}

/**
 * The load nearest to `target` that the implement can make; a tie goes down, because the lighter of two equal errors is the safer one.
 * `round` is the gym's rule. `target` and the result are in `unit`.
 */
export function nearestLoad(target: Exact, implement: Implement, unit: Unit, round: Gym['round']): Loaded | NotLoaded {
	if (implement.kind === 'free') return { load: rounded(target, freePlaces), perSide: undefined, beyond: false, under: false }
	// Discs cannot take weight off a lifter: what assists has no stated masses.
	if (implement.kind === 'discs' && compare(target, zero) < 0) {
		return { load: rounded(target, freePlaces), perSide: undefined, beyond: false, under: false }
	}
	const wanted = inUnit({ amount: target, unit }, implement.unit)
	const { under, at, over } = around(wanted, implement)
	const chosen = at ?? choose(wanted, under, over, round)
	if (chosen === undefined)
		return { missing: 'loadable', reason: `no mass of a ${implement.name.replaceAll('-', ' ')} is stated` }
	return {
		load: inUnit({ amount: chosen.load, unit: implement.unit }, unit),
		perSide: chosen.discs?.map(disc => inUnit({ amount: disc, unit: implement.unit }, unit)),
		beyond: over === undefined && at === undefined && isBeyond(wanted, chosen.load, implement, round),
		under: under === undefined && at === undefined,
	}
}

/** The loads next to a load, in `unit`: `undefined` where there is none. An implement without masses has no steps. */
export function loadableStep(
	load: Exact,
	implement: Implement,
	unit: Unit,
): { readonly below: Exact | undefined; readonly above: Exact | undefined } {
	if (implement.kind === 'free') return { below: undefined, above: undefined }
	const { under, over } = around(inUnit({ amount: load, unit }, implement.unit), implement)
	const back = (candidate: Candidate | undefined) => candidate && inUnit({ amount: candidate.load, unit: implement.unit }, unit)
	return { below: back(under), above: back(over) }
}

function choose(
	wanted: Exact,
	under: Candidate | undefined,
	over: Candidate | undefined,
	round: Gym['round'],
): Candidate | undefined {
	if (under === undefined || over === undefined) return under ?? over
	if (round !== 'nearest') return round === 'down' ? under : over
	return compare(wanted.sub(under.load), over.load.sub(wanted)) <= 0 ? under : over
}

/**
 * Is a load over the heaviest one really out of reach? Not where the heaviest would still be chosen if there were one more step:
 * 50.5 kg from a rack that ends with 48 and 50 is 50, as 48.5 is 48.
 */
function isBeyond(wanted: Exact, heaviest: Exact, implement: Exclude<Implement, Free>, round: Gym['round']): boolean {
	const before = around(heaviest, implement).under
	if (before === undefined) return true
	const candidate = (load: Exact): Candidate => ({ load, discs: undefined })
	const next = heaviest.add(heaviest.sub(before.load))
	return compare(wanted, next) >= 0 || choose(wanted, candidate(heaviest), candidate(next), round)?.load.equals(next) === true
}

function around(wanted: Exact, implement: Exclude<Implement, Free>): Neighbours<Candidate> {
	switch (implement.kind) {
		case 'row':
			return aroundRow(wanted, implement.parts)
		case 'discs': {
			const { under, at, over } = implement.sums.around(wanted)
			const held = (sum: typeof at) => sum && { load: sum.total, discs: sum.discs }
			return { under: held(under), at: held(at), over: held(over) }
		}
		case 'bar': {
			const empty = implement.mass.add(implement.collars)
			const { under, at, over } = implement.side.around(wanted.sub(empty).div(exact(2)))
			const loaded = (sum: typeof at) => sum && { load: empty.add(sum.total.mul(exact(2))), discs: sum.discs }
			return { under: loaded(under), at: loaded(at), over: loaded(over) }
		}
	}
}

function aroundRow(wanted: Exact, parts: readonly RowPart[]): Neighbours<Candidate> {
	let under: Exact | undefined
	let at: Exact | undefined
	let over: Exact | undefined
	for (const { from, to, by } of parts) {
		const steps = from.equals(to) ? zero : to.sub(from).div(by).floor()
		const way = from.equals(to) ? wanted.sub(from) : wanted.sub(from).div(by)
		const less = way.ceil().sub(exact(1))
		const more = way.floor().add(exact(1))
		const mass = (step: Exact) => from.add(step.mul(by))
		if (compare(less, zero) >= 0) under = heavier(under, mass(compare(less, steps) > 0 ? steps : less))
		if (compare(more, steps) <= 0) over = lighter(over, mass(compare(more, zero) < 0 ? zero : more))
		if (way.d === 1n && compare(way, zero) >= 0 && compare(way, steps) <= 0) at = wanted
	}
	const candidate = (load: Exact | undefined) => load && { load, discs: undefined }
	return { under: candidate(under), at: candidate(at), over: candidate(over) }
}

function heavier(known: Exact | undefined, mass: Exact): Exact {
	return known === undefined || compare(mass, known) > 0 ? mass : known
}

function lighter(known: Exact | undefined, mass: Exact): Exact {
	return known === undefined || compare(mass, known) < 0 ? mass : known
}
