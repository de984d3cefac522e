import type { Gym, Lifter, Movement, PlateSupply } from '../model/definitions.ts'
import type { Exact, Mass, Unit } from '../model/quantities.ts'
import { DiscSums, type DiscSupply } from './disc-sums.ts'
import { compare, exact, zero } from './exact.ts'
import { inUnit } from './mass.ts'
import type { MassRange } from './mass-row.ts'

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
	readonly unit: Unit
	readonly sums: DiscSums
}

/** Masses as they stand: dumbbells, a stack, a row of stones. */
interface Row {
	readonly kind: 'row'
	readonly name: string
	readonly unit: Unit
	readonly ranges: readonly MassRange[]
}

/** No masses are stated: any load. */
export interface Free {
	readonly kind: 'free'
	readonly name: string | undefined
}

/** Why nothing can be loaded, in a coach's words. */
export interface NotLoaded {
	/** The gym does not have the implement, or states no mass of it that can be used. */
	readonly missing: 'equipment' | 'loadable'
	readonly reason: string
}

/** The discs of a lifter without a gym, and of a gym that states none (common practice). */
const usualDiscs: Readonly<Record<Unit, readonly string[]>> = {
	kg: ['25', '20', '15', '10', '5', '2.5', '1.25'],
	lb: ['45', '35', '25', '10', '5', '2.5'],
}

/** The bar of a lifter without a gym. Source: IWF equipment rules for 20 kg; 45 lb from memory. */
const usualBar: Readonly<Record<Unit, Exact>> = { kg: exact(20), lb: exact(45) }

/** Called a bar, but it holds the lifter. */
const hangingBars: ReadonlySet<string> = new Set(['pull-up-bar', 'chin-up-bar', 'dip-bar', 'wall-bar'])

/** No side of a bar holds more than this, however many discs there are. */
const mostPerSide: Mass = { amount: exact(1000), unit: 'kg' }

/** The sums of the usual discs. */
const usualSums: Readonly<Record<Unit, DiscSums>> = { kg: usualSumsIn('kg'), lb: usualSumsIn('lb') }

/** Sums are worked out once for a gym, by unit and by how many of a disc go on at once. */
const gymSums = new WeakMap<Gym, Map<string, DiscSums>>()

/**
 * What carries the load of a movement in a gym: every equipment word of the movement must be there, and the first one with masses
 * decides. What the lifter `uses` in place of a word stands for it. Without a gym a lifter has everything: bars of 20 kg (45 lb where
 * `unit` is lb) with any number of the usual discs, and any load of all else; what is used in place of a bar is not the usual one, and
 * nobody says what it weighs.
 */
export function implementFor(movement: Movement, gym: Gym | undefined, unit: Unit, uses: Lifter['uses']): Implement | NotLoaded {
	const asked = movement.equipment.map(word => word.value)
	const words = asked.map(word => uses.find(one => one.insteadOf.text === word)?.implement.text ?? word)
	if (gym !== undefined) return gymImplement(movement, words, gym, unit, asked)
	return usualImplement(
		movement,
		words.filter((word, index) => word === asked[index]),
		unit,
	)
}

function usualImplement(movement: Movement, words: readonly string[], unit: Unit): Implement {
	const bar = words.find(word => /(^|-)bar(bell)?$/.test(word) && !hangingBars.has(word))
	if (bar !== undefined) {
		return { kind: 'bar', name: bar, unit, mass: usualBar[unit], collars: zero, side: usualSums[unit] }
	}
	if (movement.loadAdded || words.some(isDiscWord)) return { kind: 'discs', unit, sums: usualSums[unit] }
	return { kind: 'free', name: words[0] }
}

function gymImplement(
	movement: Movement,
	words: readonly string[],
	gym: Gym,
	unit: Unit,
	asked: readonly string[],
): Implement | NotLoaded {
	const carriers: Implement[] = []
	for (const [index, word] of words.entries()) {
		const carrier = carrierOf(word, gym, movement.hands)
		if (carrier === undefined) {
			const spoken = (one: string | undefined) => (one ?? '').replaceAll('-', ' ')
			const instead = word === asked[index] ? '' : ` to use as ${spoken(asked[index])}`
			return { missing: 'equipment', reason: `${gym.title?.text ?? gym.name.text} has no ${spoken(word)}${instead}` }
		}
		carriers.push(carrier)
	}
	const withMasses = carriers.find(each => each.kind !== 'free')
	if (withMasses === undefined && movement.loadAdded) return discsIn(gym, unit, movement.hands)
	return withMasses ?? { kind: 'free', name: words[0] }
}

/** What one equipment word is in a gym; `undefined` where the gym does not have it. */
function carrierOf(word: string, gym: Gym, hands: number): Implement | undefined {
	const bar = gym.bars.find(each => each.name.text === word)
	if (bar !== undefined) {
		const { amount: mass, unit } = bar.mass
		const collars = gym.collars === undefined ? zero : inUnit(gym.collars.value, unit)
		return { kind: 'bar', name: word, unit, mass, collars, side: sumsIn(gym, unit, 2 * hands) }
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
	return gym.plates !== undefined && isDiscWord(word) ? discsIn(gym, 'kg', hands) : undefined
}

function isDiscWord(word: string): boolean {
	return word === 'plate' || word === 'plates' || word === 'disc' || word === 'discs'
}

function rowOf(name: string, written: readonly { readonly from: Mass; readonly to: Mass; readonly by: Mass }[]): Row {
	const unit = written[0]?.from.unit ?? 'kg'
	const ranges = written
		.map(({ from, to, by }) => ({ from: inUnit(from, unit), to: inUnit(to, unit), by: inUnit(by, unit) }))
		.filter(({ from, to, by }) => from.equals(to) || (compare(from, to) < 0 && compare(by, zero) > 0))
	return { kind: 'row', name, unit, ranges }
}

/** The gym's discs without a bar, in the unit of the first. */
function discsIn(gym: Gym, usualUnit: Unit, hands: number): Discs {
	const unit = gym.plates?.value[0]?.mass.unit ?? usualUnit
	return { kind: 'discs', unit, sums: sumsIn(gym, unit, hands) }
}

function usualSumsIn(unit: Unit): DiscSums {
	const discs = usualDiscs[unit].map(mass => ({ mass: exact(mass), limit: undefined }))
	return new DiscSums(discs, inUnit(mostPerSide, unit))
}

/** What a gym's discs make where `places` of each go on at once: on both sides, in both hands. */
function sumsIn(gym: Gym, unit: Unit, places: number): DiscSums {
	if (gym.plates === undefined) return usualSums[unit]
	const known = gymSums.get(gym) ?? new Map<string, DiscSums>()
	gymSums.set(gym, known)
	const key = `${unit} ${places}`
	const sums = known.get(key) ?? new DiscSums(supplyOf(gym.plates.value, unit, places), inUnit(mostPerSide, unit))
	known.set(key, sums)
	return sums
}

/** One supply for each mass, in one unit, for one of `places` places. */
function supplyOf(plates: readonly PlateSupply[], unit: Unit, places: number): readonly DiscSupply[] {
	const counts = new Map<string, { readonly mass: Exact; readonly count: number | undefined }>()
	for (const plate of plates) {
		const mass = inUnit(plate.mass, unit)
		if (compare(mass, zero) <= 0) continue
		const known = counts.get(mass.toFraction())
		// A mass that is listed twice is there as often as both lines say; one of them without a count has no limit.
		const count = known === undefined ? plate.count : sumOf(known.count, plate.count)
		counts.set(mass.toFraction(), { mass, count })
	}
	return [...counts.values()].map(({ mass, count }) => ({
		mass,
		limit: count === undefined ? undefined : Math.floor(count / places),
	}))
}

function sumOf(a: number | undefined, b: number | undefined): number | undefined {
	return a === undefined || b === undefined ? undefined : a + b
}
