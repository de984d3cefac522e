import { gateReachedInOutline, gatesOf, gateText } from '../compute/gates.ts'
import { outlineBlock } from '../compute/outline.ts'
import type { Block, Definition, Gate, Movement } from '../model/definitions.ts'
import type { Programme } from '../model/programme.ts'
import type { PlannedItem, PlannedLoad } from '../model/schedule.ts'
import { sourceOf } from './origin.ts'

/** What a lifter must bring to a block: gates, bests and equipment, and the breakdowns that it is for. */
export interface BlockAsks {
	/** Titles of the lifts that it is for. */
	readonly targets: readonly string[]
	/** Titles of the breakdowns that it answers. */
	readonly answers: readonly string[]
	readonly gates: readonly BlockGate[]
	readonly bests: readonly AskedBest[]
	/** Loads count from the lifter's bodyweight. */
	readonly bodyweight: boolean
	/** What carries the loads or what a gym may lack, by name. */
	readonly equipment: readonly { readonly name: string; readonly movements: readonly string[] }[]
}

export interface BlockGate {
	/** "Plank held 45 s" */
	readonly text: string
	/** Titles of the movements behind it; none where the block itself requires it. */
	readonly before: readonly string[]
	/** The week of the block that first asks for it. */
	readonly week: number
	/** The week of the block in which its own sets reach it before that, if they are done as written. */
	readonly reachedIn: number | null
	/** Where the gate comes from; `null`: the coach's own text. */
	readonly source: string | null
}

export interface AskedBest {
	readonly movement: string
	readonly title: string
	/** Titles of the movements whose loads count from it. */
	readonly loads: readonly string[]
	/** Only a working share of it is asked for: `percents of base`. */
	readonly base: boolean
}

/** Works out what a block asks of whoever runs it. */
export function blockAsks(block: Block, programme: Programme): BlockAsks {
	const uses = usesOf(block, programme)
	return {
		targets: block.targets.map(({ text }) => titleOf('movement', text, programme)),
		answers: block.answers.map(({ text }) => titleOf('breakdown', text, programme)),
		gates: askedGates(block, uses, programme),
		bests: askedBests(uses, programme),
		bodyweight: uses.some(({ item }) => item.sets.some(({ load }) => load.kind === 'bodyweight')),
		equipment: askedEquipment(uses),
	}
}

interface Use {
	readonly week: number
	readonly item: PlannedItem
}

function usesOf(block: Block, programme: Programme): readonly Use[] {
	return outlineBlock(block, programme).weeks.flatMap(({ week, sessions }) =>
		sessions.flatMap(({ items }) => items.filter(({ sets }) => sets.length > 0).map(item => ({ week, item }))),
	)
}

interface Ask {
	readonly gate: Gate
	readonly setBy: Definition
	readonly movement: Movement | undefined
	readonly week: number
}

function askedGates(block: Block, uses: readonly Use[], programme: Programme): BlockGate[] {
	const required = block.requires.map((gate): Ask => ({ gate, setBy: block, movement: undefined, week: 1 }))
	const first = new Map<string, Use>()
	for (const use of uses) if (!first.has(use.item.movementName.text)) first.set(use.item.movementName.text, use)
	const ofMovements = [...first.values()].flatMap(({ week, item: { movement } }) =>
		movement === undefined ? [] : gatesOf(movement, programme).map((one): Ask => ({ ...one, movement, week })),
	)
	const asks = [...required, ...ofMovements].sort((a, b) => a.week - b.week)
	const textOf = ({ gate, movement }: Ask) => gateText(gate, movement?.name.text ?? '', programme)
	const outline = outlineBlock(block, programme)
	return [...Map.groupBy(asks, textOf)].flatMap(([text, same]) => {
		const [ask] = same
		if (ask === undefined) return []
		return {
			text,
			before: [
				...new Set(same.flatMap(({ movement }) => (movement ? [titleOf('movement', movement.name.text, programme)] : []))),
			],
			week: ask.week,
			reachedIn: gateReachedInOutline(ask.gate, outline, ask.week) ?? null,
			source: sourceOf(ask.setBy, programme),
		}
	})
}

function askedBests(uses: readonly Use[], programme: Programme): AskedBest[] {
	const needing = uses.flatMap(({ item }) => {
		const kinds = new Set(item.sets.flatMap(({ load }) => countsFrom(load) ?? []))
		const reference = item.movement?.percentOf?.movement.text ?? item.movementName.text
		return [...kinds].map(kind => ({ kind, reference, title: titleOf('movement', item.movementName.text, programme) }))
	})
	return [...Map.groupBy(needing, ({ reference }) => reference)].map(([movement, same]) => ({
		movement,
		title: titleOf('movement', movement, programme),
		loads: [...new Set(same.map(({ title }) => title))],
		base: same.every(({ kind }) => kind === 'base'),
	}))
}

/** What a load is counted from: the best, or the base that stands for it. */
function countsFrom(load: PlannedLoad): 'best' | 'base' | undefined {
	switch (load.kind) {
		case 'percent':
			return load.of === 'top-set' ? undefined : load.of
		case 'rm':
		case 'effort':
			return 'best'
		default:
			return undefined
	}
}

function askedEquipment(uses: readonly Use[]): BlockAsks['equipment'] {
	const needing = uses.flatMap(({ item: { movement } }) =>
		(movement?.equipment ?? []).map(({ value }) => ({ name: value, title: movement?.title?.text ?? movement?.name.text ?? '' })),
	)
	return [...Map.groupBy(needing, ({ name }) => name)].map(([name, same]) => ({
		name,
		movements: [...new Set(same.map(({ title }) => title))],
	}))
}

function titleOf(kind: 'movement' | 'breakdown', name: string, programme: Programme): string {
	return programme.find(kind, name)?.title?.text ?? name
}
