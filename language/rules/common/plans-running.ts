import type { Block, Plan } from '../../model/definitions.ts'
import type { Programme } from '../../model/programme.ts'

/** The plans that run a block, those of a team's members each. */
export function plansRunning(block: Block, programme: Programme): readonly Plan[] {
	return programme.referrersOf('block', block.name.text).flatMap(one => (one.kind === 'plan' ? programme.plansIn(one) : []))
}
