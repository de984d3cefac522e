import { outlineBlock } from '../../compute/outline.ts'
import type { Block, Progression } from '../../model/definitions.ts'
import type { Milestone } from '../../model/prescription.ts'
import type { Programme } from '../../model/programme.ts'
import type { PlannedItem } from '../../model/schedule.ts'
import type { Span } from '../../model/text.ts'

/** A step of a progression that a block has work of. */
export interface StepInBlock {
	/** In the progression, from 0. */
	readonly index: number
	readonly name: string
	readonly firstWeek: number
	/** Where it is named first: by its item, or by a milestone that moves on to it. */
	readonly span: Span
	/** The milestone, and the movement that it moves on from. */
	readonly movedOn: { readonly from: string; readonly milestone: Milestone } | undefined
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
		const name = step.movement.text
		if (first === undefined) return movedOnTo(name, uses).map(one => ({ index, name, ...one }))
		const planned = own.map(one => one.planned)
		const { span } = first.planned.item.movement
		return [{ index, name, firstWeek: first.week, span, movedOn: undefined, uses: planned }]
	})
}

/** By the first milestone that moves on to a step of which the block has no item. */
function movedOnTo(
	step: string,
	uses: readonly { readonly week: number; readonly planned: PlannedItem }[],
): readonly Omit<StepInBlock, 'index' | 'name'>[] {
	return uses
		.flatMap(({ week, planned }) =>
			planned.item.milestones.flatMap(milestone => {
				const { then } = milestone
				if (then.kind !== 'move' || then.movement.text !== step) return []
				const movedOn = { from: planned.movementName.text, milestone }
				return [{ firstWeek: week, span: then.movement.span, movedOn, uses: [] }]
			}),
		)
		.slice(0, 1)
}
