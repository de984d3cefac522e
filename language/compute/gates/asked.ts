import type { Block, Gate, Lifter, Movement, Plan, Progression } from '../../model/definitions.ts'
import type { Milestone } from '../../model/prescription.ts'
import type { Programme } from '../../model/programme.ts'
import type { CalendarDate } from '../../model/quantities.ts'
import type { ScheduledItem, ScheduledRun } from '../../model/schedule.ts'
import { type GateState, gatePassedBy, gateReachedInSchedule, gateState, gatesOf, gateText } from '../gates.ts'
import { schedulePlan } from '../schedule.ts'

/** A gate that a plan comes to, at the first day that asks for it. */
export interface GateAsked {
	readonly gate: Gate
	/** "Plank held 45 s" */
	readonly text: string
	readonly setBy: Movement | Progression | Block
	/** The movements behind it that are used on that day; none where the block itself requires it. */
	readonly movements: readonly string[]
	/** The movement that a milestone moves on from; `undefined` where the plan itself uses what is behind the gate. */
	readonly movedFrom: string | undefined
	readonly run: ScheduledRun
	readonly date: CalendarDate
	readonly state: GateState
	/** When the lifter's plans reach it before that day, if they are done as written. */
	readonly reachedOn: CalendarDate | undefined
	/** All that ask for it on that day; the first is the one above. */
	readonly asks: readonly GateAsk[]
}

/** One that asks for a gate: a movement where it is first used, or a block. */
export interface GateAsk {
	readonly gate: Gate
	readonly text: string
	readonly setBy: Movement | Progression | Block
	/** The movement behind it; `undefined` where a block requires it. */
	readonly movement: string | undefined
	/** The first use, or the item that moves on to it; `undefined` where a block requires it. */
	readonly item: ScheduledItem | undefined
	/** Where a milestone of the item moves on to it. */
	readonly milestone: Milestone | undefined
	readonly run: ScheduledRun
	readonly date: CalendarDate
}

/** The gates of a plan: those of each movement at its first use, and those that its blocks require at their first day. By date. */
export function gatesAsked(plan: Plan, programme: Programme): readonly GateAsked[] {
	return programme.derived(plan, workOutAsked)
}

function workOutAsked(plan: Plan, programme: Programme): readonly GateAsked[] {
	const lifter = programme.find('lifter', plan.lifter.text)
	if (lifter === undefined) return []
	const asks = [
		...asksOfBlocks(plan, programme),
		...asksOfMovements(plan, programme),
		...asksOfMilestones(plan, lifter, programme),
	]
	asks.sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0))
	// What is asked for twice is one gate, at the first day that asks for it.
	return [...Map.groupBy(asks, ask => ask.text).values()].map((same): GateAsked => {
		const first = same[0]!
		const { gate, text, setBy, date, run } = first
		const together = same.filter(ask => ask.date === date && ask.run === run)
		return {
			gate,
			text,
			setBy,
			run,
			date,
			movements: [...new Set(together.flatMap(ask => ask.movement ?? []))],
			movedFrom: first.milestone && first.item?.movementName.text,
			state: gateState(gate, first.movement ?? '', lifter, date, programme),
			reachedOn: reachedBefore(gate, date, lifter, programme),
			asks: together,
		}
	})
}

function asksOfBlocks(plan: Plan, programme: Programme): GateAsk[] {
	return schedulePlan(plan, programme).runs.flatMap(run =>
		// A sign-off of nothing in particular nobody can show.
		run.block.requires
			.filter(gate => gate.movement !== undefined)
			.map(gate => ({
				gate,
				text: gateText(gate, '', programme),
				setBy: run.block,
				movement: undefined,
				item: undefined,
				milestone: undefined,
				run,
				date: run.firstDay,
			})),
	)
}

function asksOfMovements(plan: Plan, programme: Programme): GateAsk[] {
	const known = new Set<string>()
	return schedulePlan(plan, programme).sessions.flatMap(session =>
		session.items.flatMap(item => {
			const { movement, movementName, sets } = item
			if (movement === undefined || sets.length === 0 || known.has(movementName.text)) return []
			known.add(movementName.text)
			return gatesOf(movement, programme).map(
				({ gate, setBy }): GateAsk => ({
					gate,
					text: gateText(gate, movementName.text, programme),
					setBy,
					movement: movementName.text,
					item,
					milestone: undefined,
					run: session.run,
					date: session.date,
				}),
			)
		}),
	)
}

/**
 * What milestones move on to: by the last day of the run that their item stands on, for nobody knows when it is reached. A gate that is
 * passed by what must be reached asks nothing more, and neither does an item of one day, which has no day left to move on.
 */
function asksOfMilestones(plan: Plan, lifter: Lifter, programme: Programme): GateAsk[] {
	const { sessions } = schedulePlan(plan, programme)
	const standing = sessions.flatMap(session =>
		session.items.filter(item => item.sets.length > 0).map(item => ({ item, session })),
	)
	const used = new Set(standing.map(({ item }) => item.movementName.text))
	const moving = standing.filter(({ item }) => item.item.milestones.length > 0 && item.role === item.item.role)
	const byItem = Map.groupBy(
		moving,
		({ item, session }) => `${session.run.monday} ${item.movementName.text} ${item.item.span.start}`,
	)
	return [...byItem.values()].flatMap(days => {
		const { item, session } = days.at(-1)!
		return item.item.milestones.flatMap((milestone): GateAsk[] => {
			const { then } = milestone
			const movement = then.kind === 'move' && !used.has(then.movement.text) && programme.find('movement', then.movement.text)
			if (!movement || days.length < 2) return []
			return gatesOf(movement, programme)
				.filter(({ gate }) => !gatePassedBy(milestone, item.movementName.text, gate, lifter.bodyweight?.value))
				.map(({ gate, setBy }) => {
					const name = movement.name.text
					const text = gateText(gate, name, programme)
					return { gate, text, setBy, movement: name, item, milestone, run: session.run, date: session.date }
				})
		})
	})
}

function reachedBefore(gate: Gate, date: CalendarDate, lifter: Lifter, programme: Programme): CalendarDate | undefined {
	const plans = programme.plansOf(lifter.name.text)
	return plans.flatMap(plan => gateReachedInSchedule(gate, schedulePlan(plan, programme), date) ?? []).sort()[0]
}
