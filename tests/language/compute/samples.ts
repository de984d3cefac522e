import fc from 'fast-check'
import { exact } from '../../../language/compute/exact.ts'
import { type Implement, implementFor, type NotLoaded } from '../../../language/compute/implement.ts'
import { type Loaded, nearestLoad } from '../../../language/compute/loading.ts'
import type { Gym, Movement } from '../../../language/model/definitions.ts'
import type { Exact, Mass, Unit } from '../../../language/model/quantities.ts'
import type { Fact, Name } from '../../../language/model/text.ts'

/** Gyms and movements as data, without their texts. */

const span = { start: 0, end: 0 }
const base = { title: undefined, span, header: span, source: undefined, notes: [], allows: [], faults: [], references: [] }

function name(text: string): Name {
	return { text, span }
}

function fact<T>(value: T): Fact<T> {
	return { value, span }
}

/** "20 kg" */
export function mass(text: string): Mass {
	const [amount = '', unit = ''] = text.split(' ')
	return { amount: exact(amount), unit: unit === 'lb' ? 'lb' : 'kg' }
}

export function movement(equipment: readonly string[], more: { hands?: number; loadAdded?: boolean } = {}): Movement {
	return {
		...base,
		kind: 'movement',
		name: name('lift'),
		pattern: undefined,
		trains: undefined,
		muscles: [],
		roles: undefined,
		equipment: equipment.map(fact),
		sets: undefined,
		reps: undefined,
		holdSeconds: undefined,
		carryMetres: undefined,
		intensity: undefined,
		caps: [],
		apartDays: undefined,
		percentOf: undefined,
		gates: [],
		order: [],
		hands: more.hands ?? 1,
		loadAdded: more.loadAdded ?? false,
	}
}

export interface GymText {
	readonly bars?: Readonly<Record<string, string>>
	/** "25 kg x 4" or "25 kg". */
	readonly plates?: readonly string[]
	readonly collars?: string
	/** from, to, by */
	readonly dumbbells?: readonly [string, string, string]
	readonly stacks?: Readonly<Record<string, readonly [string, string, string]>>
	readonly fixed?: Readonly<Record<string, readonly string[]>>
	readonly equipment?: readonly string[]
	readonly round?: Gym['round']
}

export function gym(text: GymText): Gym {
	const range = ([from, to, by]: readonly [string, string, string]) => ({ from: mass(from), to: mass(to), by: mass(by) })
	const plates = text.plates?.map(plate => {
		const [what = '', count] = plate.split(' x ')
		return { mass: mass(what), count: count === undefined ? undefined : Number(count), span }
	})
	return {
		...base,
		kind: 'gym',
		name: name('hall'),
		title: { text: 'North Hall', span },
		bars: Object.entries(text.bars ?? {}).map(([bar, of]) => ({ name: name(bar), mass: mass(of), span })),
		plates: plates && fact(plates),
		collars: text.collars === undefined ? undefined : fact(mass(text.collars)),
		dumbbells: text.dumbbells && fact(range(text.dumbbells)),
		stacks: Object.entries(text.stacks ?? {}).map(([stack, of]) => ({ name: name(stack), ...range(of), span })),
		fixed: Object.entries(text.fixed ?? {}).map(([row, of]) => ({ name: name(row), masses: of.map(mass), span })),
		equipment: (text.equipment ?? []).map(fact),
		round: text.round ?? 'nearest',
	}
}

export function carrier(equipment: readonly string[], at: Gym | undefined, unit: Unit = 'kg', more = {}): Implement {
	return there(implementFor(movement(equipment, more), at, unit, []))
}

export function load(target: Exact | string, implement: Implement, unit: Unit = 'kg', round: Gym['round'] = 'nearest'): Loaded {
	return there(nearestLoad(typeof target === 'string' ? exact(target) : target, implement, unit, round))
}

function there<T extends object>(result: T | NotLoaded): T {
	if ('missing' in result) throw new Error(result.reason)
	return result
}

/** Exact decimals with at most two places. */
export function decimals(from: number, to: number): fc.Arbitrary<Exact> {
	return fc.integer({ min: from * 100, max: to * 100 }).map(hundredths => exact(hundredths).div(exact(100)))
}
