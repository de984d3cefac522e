import type { Block, Plan } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { PlannedItem, PlannedSet, ScheduledItem } from '../../model/schedule.ts'
import type { Span } from '../../model/text.ts'
import type { CheckByKind } from '../rule.ts'
import { groupedBy } from './groups.ts'
import { blockSessions, type PlacedSession, planSessions } from './placed-sessions.ts'
import { distinctPlaces, placeOfItem } from './places.ts'

/** Something about a set of an item, seen in one session. */
export interface ItemFault {
	readonly item: PlannedItem
	readonly set: PlannedSet
	/** Faults of one movement and one cause are one message. */
	readonly cause: string
}

/** A fault and the session in which it stands. */
export type Seen<F extends ItemFault> = F & { readonly session: PlacedSession }

/** A fault of one cause, in one or more sets, items and weeks. */
export type SeenFaults<F extends ItemFault> = readonly [Seen<F>, ...Seen<F>[]]

/**
 * A rule about single items: it is reported on the block's line where it holds whoever runs the block, and on the plan's `run` line for what
 * only a lifter's loads, or the plan's swaps, additions and scales, bring out.
 */
export interface ItemCheck<F extends ItemFault> {
	/** `whose` is the lifter, or the block itself where no lifter is looked at. */
	readonly faultsIn: (session: PlacedSession, whose: string | Block, programme: Programme) => readonly F[]
	/** What is said of faults of one cause. */
	readonly finding: (same: SeenFaults<F>, whose: string | Block, programme: Programme) => Omit<Finding, 'span'>
	/** Where it stands in the block. */
	readonly spanOf: (fault: F) => Span
	/** In the block alone: a plan changes no block's text. */
	readonly corrections?: (same: SeenFaults<F>, block: Block, programme: Programme) => NonNullable<Finding['corrections']>
}

export function itemChecks<F extends ItemFault>(check: ItemCheck<F>): CheckByKind {
	// Declared once, so that it is worked out once for a block and all the plans that run it.
	const ofBlock = (block: Block, programme: Programme): readonly Seen<F>[] =>
		seen(blockSessions(block, programme), check, block, programme)
	return {
		block: (block, programme) =>
			groupedBy(programme.derived(block, ofBlock), one => `${one.item.item.span.start} ${one.cause}`).map(same => ({
				...check.finding(same, block, programme),
				span: check.spanOf(same[0]),
				corrections: check.corrections?.(same, block, programme) ?? [],
			})),
		plan: (plan, programme) => checkPlan(plan, programme, check, ofBlock),
	}
}

function seen<F extends ItemFault, S extends PlacedSession>(
	sessions: readonly S[],
	check: ItemCheck<F>,
	whose: string | Block,
	programme: Programme,
): readonly (F & { readonly session: S })[] {
	return sessions.flatMap(session => check.faultsIn(session, whose, programme).map(fault => ({ ...fault, session })))
}

function checkPlan<F extends ItemFault>(
	plan: Plan,
	programme: Programme,
	check: ItemCheck<F>,
	ofBlock: (block: Block, programme: Programme) => readonly Seen<F>[],
): Finding[] {
	const lifter = plan.lifter.text
	const key = ({ session, item, cause }: Seen<F>) =>
		`${session.session.name.text} ${session.blockWeek} ${item.movementName.text} ${cause}`
	const known = new Map<Block, ReadonlySet<string>>()
	const isInBlock = (one: Seen<F>, block: Block) => {
		const keys = known.get(block) ?? new Set(programme.derived(block, ofBlock).map(key))
		known.set(block, keys)
		return keys.has(key(one))
	}
	const found = seen(planSessions(plan, programme), check, lifter, programme)
	const own = found.filter(one => !isInBlock(one, one.session.run.block))
	return groupedBy(own, one => `${one.session.run.monday} ${one.item.movementName.text} ${one.cause}`).map(same => {
		const finding = check.finding(same, lifter, programme)
		const places = same.map(one => placeOfItem(one.item as ScheduledItem, one.session, 'It is prescribed here.'))
		return {
			...finding,
			span: same[0].session.run.run.header,
			related: [...distinctPlaces(places), ...(finding.related ?? [])],
		}
	})
}
