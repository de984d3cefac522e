import { gateReachedInOutline, gatesOf, gateText } from '../compute/gates.ts'
import { outlineBlock } from '../compute/outline.ts'
import type { Block } from '../model/definitions.ts'
import type { Programme } from '../model/programme.ts'
import type { PlannedItem } from '../model/schedule.ts'

/** What a block asks of a lifter before its first day, as people read it; each once. */
export interface BlockDemands {
	/** "Plank held 45 s": those of the block and of its movements, but for what the block itself leads up to first. */
	readonly gates: readonly string[]
	/** Titles of the lifts whose best its loads are taken of. */
	readonly bests: readonly string[]
	readonly equipment: readonly string[]
}

export function blockDemands(block: Block, programme: Programme): BlockDemands {
	return programme.derived(block, workOutDemands)
}

function workOutDemands(block: Block, programme: Programme): BlockDemands {
	const outline = outlineBlock(block, programme)
	const gates = new Set(block.requires.flatMap(gate => (gate.movement ? [gateText(gate, '', programme)] : [])))
	const bests = new Set<string>()
	const equipment = new Set<string>()
	for (const { week, sessions } of outline.weeks) {
		for (const item of sessions.flatMap(session => session.items)) {
			const { movement, movementName } = item
			if (item.sets.length === 0) continue
			const lift = movement?.percentOf?.movement.text ?? movementName.text
			if (takesOfBest(item)) bests.add(programme.find('movement', lift)?.title?.text ?? lift)
			if (!movement) continue
			for (const { value } of movement.equipment) equipment.add(value)
			for (const { gate } of gatesOf(movement, programme)) {
				const text = gateText(gate, movementName.text, programme)
				if (!gates.has(text) && gateReachedInOutline(gate, outline, week) === undefined) gates.add(text)
			}
		}
	}
	return { gates: [...gates], bests: [...bests], equipment: [...equipment] }
}

/** Masses, shares of the bodyweight and shares of a top set are taken of no best. */
function takesOfBest({ sets }: PlannedItem): boolean {
	return sets.some(
		({ load }) => load.kind === 'rm' || load.kind === 'effort' || (load.kind === 'percent' && load.of !== 'top-set'),
	)
}
