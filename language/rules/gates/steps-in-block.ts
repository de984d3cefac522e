import { outlineBlock } from '../../compute/outline.ts'
import type { Block, Item, Progression } from '../../model/definitions.ts'
import type { Programme } from '../../model/programme.ts'
import type { PlannedItem } from '../../model/schedule.ts'

/** A step of a progression that a block has work of. */
export interface StepInBlock {
	/** In the progression, from 0. */
	readonly index: number
	readonly name: string
	readonly firstWeek: number
	/** Its first item. */
	readonly item: Item
	readonly uses: readonly PlannedItem[]
}

/** The steps of a progression that stand in a block, in the order of the progression. */
export function stepsInBlock(progression: Progression, block: Block, programme: Programme): readonly StepInBlock[] {
	const uses = outlineBlock(block, programme).weeks.flatMap(({ week, sessions }) =>
		sessions.flatMap(({ items }) => items.filter(item => item.sets.length > 0).map(planned => ({ week, planned }))),
	)
	return progression.steps.flatMap((step, index): StepInBlock[] => {
		const own = uses.filter(({ planned }) => planned.movementName.text === step.movement.text)
		const [first] = own
		if (first === undefined) return []
		const planned = own.map(one => one.planned)
		return [{ index, name: step.movement.text, firstWeek: first.week, item: first.planned.item, uses: planned }]
	})
}
