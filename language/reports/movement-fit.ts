import { gateState, gatesOf, gateText } from '../compute/gates.ts'
import { implementFor } from '../compute/implement.ts'
import { schedulePlan } from '../compute/schedule.ts'
import { gymAt } from '../compute/training-place.ts'
import type { Lifter, Movement, Plan } from '../model/definitions.ts'
import type { Programme } from '../model/programme.ts'
import type { CalendarDate } from '../model/quantities.ts'
import type { Role } from '../model/vocabulary.ts'

/** Where a movement would stand. */
export interface PlaceInPlan {
	/** The plan that would have it; without one, nobody's gym and gates are known. */
	readonly plan: Plan | undefined
	/** Name of the block. */
	readonly block: string | undefined
	readonly role: Role | undefined
}

/**
 * Why a movement does not fit a place, in a few words: it is no work of that role, the gym lacks something, the lifter avoids it, or a gate
 * before it is not passed. `undefined` where nothing speaks against it.
 */
export function misfit(movement: Movement, { plan, block, role }: PlaceInPlan, programme: Programme): string | undefined {
	const { roles } = movement
	if (role && roles && !roles.value.includes(role)) return `no ${role} work, but ${roles.value.join(' or ')}`
	const lifter = plan && programme.find('lifter', plan.lifter.text)
	if (!plan || !lifter) return undefined
	const { runs, unit } = schedulePlan(plan, programme)
	const day = (runs.find(run => run.block.name.text === block) ?? runs[0])?.firstDay ?? plan.start?.value
	if (day === undefined) return undefined
	const implement = implementFor(movement, gymAt(lifter, day, programme), unit, lifter.uses)
	if ('missing' in implement && implement.missing === 'equipment') return implement.reason
	if (isAvoided(movement, lifter, day)) return `${lifter.title?.text ?? lifter.name.text} avoids it`
	const name = movement.name.text
	const open = gatesOf(movement, programme).find(({ gate }) => !gateState(gate, name, lifter, day, programme).passed)
	return open && `first needs ${gateText(open.gate, name, programme)}`
}

function isAvoided({ name, pattern }: Movement, { avoids }: Lifter, day: CalendarDate): boolean {
	return avoids.some(avoid => {
		const isMeant = avoid.movement?.text === name.text || (avoid.pattern !== undefined && avoid.pattern === pattern?.value)
		return isMeant && (avoid.from ?? day) <= day && day <= (avoid.until ?? day)
	})
}
