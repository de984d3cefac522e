import { daysBetween } from '../../compute/calendar.ts'
import { decimal } from '../../compute/exact.ts'
import { type GateState, gateReachedInSchedule, gateState, gatesOf, gateText } from '../../compute/gates.ts'
import { massText } from '../../compute/mass.ts'
import { schedulePlan } from '../../compute/schedule.ts'
import type { Block, Gate, Lifter, Movement, Plan, Progression } from '../../model/definitions.ts'
import type { RelatedPlace } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { CalendarDate } from '../../model/quantities.ts'
import type { ScheduledRun } from '../../model/schedule.ts'
import { groupedBy } from '../common/groups.ts'
import { originOf } from '../common/origins.ts'
import { placeOfItem } from '../common/places.ts'
import { titleOf } from '../common/titles.ts'
import { inWords } from '../common/words.ts'

/** A gate that a plan comes to, at the first day that asks for it. */
export interface AskedGate {
	readonly gate: Gate
	/** "Plank held 45 s" */
	readonly text: string
	readonly setBy: Movement | Progression | Block
	/** The movements behind it that are used on that day; none where the block itself requires it. */
	readonly movements: readonly string[]
	readonly run: ScheduledRun
	readonly date: CalendarDate
	readonly state: GateState
	/** When the lifter's plans reach it before that day, if they are done as written. */
	readonly reachedOn: CalendarDate | undefined
	/** Where it is set, and where it is come to. */
	readonly places: readonly RelatedPlace[]
}

type Ask = Omit<AskedGate, 'movements' | 'state' | 'reachedOn'> & { readonly movement: string | undefined }

/** The gates of a plan: those of each movement at its first use, and those that its blocks require at their first day. */
export function askedGates(plan: Plan, programme: Programme): readonly AskedGate[] {
	return programme.derived(plan, workOutAsked)
}

function workOutAsked(plan: Plan, programme: Programme): readonly AskedGate[] {
	const lifter = programme.find('lifter', plan.lifter.text)
	if (lifter === undefined) return []
	const asks = [...asksOfBlocks(plan, programme), ...asksOfMovements(plan, programme)]
	asks.sort((a, b) => daysBetween(b.date, a.date))
	// What is asked for twice is one gate, at the first day that asks for it.
	return groupedBy(asks, ask => ask.text).map(same => {
		const [first] = same
		const { gate, date, run } = first
		const together = same.filter(ask => ask.date === date && ask.run === run)
		return {
			...first,
			movements: [...new Set(together.flatMap(ask => ask.movement ?? []))],
			places: together.flatMap(ask => ask.places),
			state: gateState(gate, first.movement ?? '', lifter, date, programme),
			reachedOn: reachedBefore(gate, date, lifter, programme),
		}
	})
}

function asksOfBlocks(plan: Plan, programme: Programme): Ask[] {
	return schedulePlan(plan, programme).runs.flatMap(run =>
		// A sign-off of nothing in particular nobody can show.
		run.block.requires
			.filter(gate => gate.movement !== undefined)
			.map(gate => ({
				gate,
				text: gateText(gate, '', programme),
				setBy: run.block,
				movement: undefined,
				run,
				date: run.firstDay,
				places: [{ definition: run.block, span: gate.span, message: 'The block requires it here.' }],
			})),
	)
}

function asksOfMovements(plan: Plan, programme: Programme): Ask[] {
	const known = new Set<string>()
	return schedulePlan(plan, programme).sessions.flatMap(session =>
		session.items.flatMap(item => {
			const { movement, movementName, sets } = item
			if (movement === undefined || sets.length === 0 || known.has(movementName.text)) return []
			known.add(movementName.text)
			const use = placeOfItem(item, { run: session.run, plan }, `First used on ${session.date}.`)
			return gatesOf(movement, programme).map(
				({ gate, setBy }): Ask => ({
					gate,
					text: gateText(gate, movementName.text, programme),
					setBy,
					movement: movementName.text,
					run: session.run,
					date: session.date,
					places: [use, { definition: setBy, span: gate.span, message: 'The gate stands here.' }],
				}),
			)
		}),
	)
}

function reachedBefore(gate: Gate, date: CalendarDate, lifter: Lifter, programme: Programme): CalendarDate | undefined {
	const plans = programme.plansOf(lifter.name.text)
	return plans.flatMap(plan => gateReachedInSchedule(gate, schedulePlan(plan, programme), date) ?? []).sort()[0]
}

/** "Weighted plank, first used on 2026-10-05, needs Plank held 45 s before (common practice)" */
export function askInWords({ movements, run, date, text, setBy }: AskedGate, programme: Programme): string {
	const origin = originOf(setBy, programme)
	if (movements.length === 0) return `${run.block.name.text} requires ${text} before its first day, ${date} (${origin})`
	const titles = inWords(movements.map(name => titleOf('movement', name, programme)))
	return `${titles}, first used on ${date}, ${movements.length === 1 ? 'needs' : 'need'} ${text} before (${origin})`
}

/** What a lifter has shown so far: "the most so far is 30 s on 2026-09-20". */
export function shownInWords(state: GateState & { passed: false }): string {
	const { bestSoFar, undated } = state
	if (undated !== undefined) return 'its `passed` line has no date'
	if (bestSoFar === undefined) return 'nothing is written down that shows it'
	const { feat, on } = bestSoFar
	const date = on === undefined ? '' : ` on ${on}`
	if (feat.kind === 'sign-off') return 'nothing is written down that shows it'
	const load = feat.load === undefined ? '' : ` with ${massText(feat.load)}`
	return `the most so far is ${feat.kind === 'hold' ? `${decimal(feat.seconds)} s` : `${feat.reps} rep${feat.reps === 1 ? '' : 's'}`}${load}${date}`
}
