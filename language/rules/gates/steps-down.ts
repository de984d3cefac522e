import { gateState, gatesOf } from '../../compute/gates.ts'
import { schedulePlan } from '../../compute/schedule.ts'
import type { Lifter, Movement, Plan, RunChange } from '../../model/definitions.ts'
import type { Programme } from '../../model/programme.ts'
import type { Correction } from '../../model/reading.ts'
import { lastRunLines } from '../common/corrections.ts'
import { titleOf } from '../common/titles.ts'
import { isNoWorse, withRunChanges } from '../common/trial-plans.ts'
import { usualDose, usualItem } from '../common/usual-dose.ts'
import type { AskedGate } from './asked-gates.ts'

/** A way back, as lines of a run and as what they mean. */
interface WayBack {
	readonly lines: readonly string[]
	readonly changes: readonly RunChange[]
}

/**
 * For a movement whose gate is not passed: the nearest step below it that the lifter may use, in place of it for the whole run, where that
 * breaks no other rule.
 */
export function stepsDown(asked: AskedGate, plan: Plan, programme: Programme): readonly Correction[] {
	const lifter = programme.find('lifter', plan.lifter.text)
	const reportsIf = programme.trialsOf(plan)
	const movement = asked.movements.length === 1 ? programme.find('movement', asked.movements[0]!) : undefined
	if (lifter === undefined || reportsIf === undefined || movement === undefined) return []
	const before = reportsIf(plan)
	const { run } = asked.run
	for (const lower of stepsBelow(movement, asked, lifter, programme)) {
		const ways = [swapped(movement, lower, asked), replaced(movement, lower, asked, plan, programme)]
		for (const way of ways.filter(one => one !== undefined)) {
			const after = reportsIf(withRunChanges(plan, run, way.changes))
			if (!isNoWorse(before, after, 'gate-not-passed')) continue
			const title = `Go back to ${titleOf('movement', lower.name.text, programme)} in this plan`
			return [{ title, edits: [lastRunLines(run, way.lines)] }]
		}
	}
	return []
}

/** The steps before a movement in its progressions, nearest first, whose own gates are passed. */
function stepsBelow(movement: Movement, { date }: AskedGate, lifter: Lifter, programme: Programme): readonly Movement[] {
	const isOpen = (lower: Movement) =>
		gatesOf(lower, programme).every(({ gate }) => gateState(gate, lower.name.text, lifter, date, programme).passed)
	return programme.all('progression').flatMap(({ steps }) => {
		const at = steps.findIndex(step => step.movement.text === movement.name.text)
		const below = at > 0 ? steps.slice(0, at).reverse() : []
		return below.flatMap(step => programme.find('movement', step.movement.text) ?? []).filter(isOpen)
	})
}

/** The same sets of the lower step: only where both are for time, or both for reps. */
function swapped(movement: Movement, lower: Movement, { run }: AskedGate): WayBack | undefined {
	if ((movement.holdSeconds === undefined) !== (lower.holdSeconds === undefined)) return undefined
	const span = run.run.header
	const [from, to] = [movement.name.text, lower.name.text]
	const swap: RunChange = { kind: 'swap', from: { text: from, span }, to: { text: to, span }, because: undefined, span }
	return { lines: [`swap ${from} for ${to}`], changes: [swap] }
}

/** The lower step with a dose of its own, in the sessions that had the higher one. */
function replaced(
	movement: Movement,
	lower: Movement,
	{ run }: AskedGate,
	plan: Plan,
	programme: Programme,
): WayBack | undefined {
	const dose = usualDose(lower)
	if (dose === undefined) return undefined
	const span = run.run.header
	const name = movement.name.text
	const using = schedulePlan(plan, programme).sessions.filter(
		session => session.run === run && session.items.some(item => item.movementName.text === name),
	)
	const sessions = [...new Set(using.map(session => session.session.name.text))]
	const drop: RunChange = { kind: 'drop', movement: { text: name, span }, because: undefined, span }
	const adds = sessions.map((session): RunChange => {
		return { kind: 'add', item: usualItem(dose, span), session: { text: session, span }, because: undefined, span }
	})
	const lines = sessions.map(session => `add accessory ${lower.name.text} ${dose.text} to ${session}`)
	return { lines: [`drop ${name}`, ...lines], changes: [drop, ...adds] }
}
