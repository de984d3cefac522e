import { isMultiple, loadOfGate } from '../../compute/gates/gate-load.ts'
import { gatePassedBy, gateReachedInOutline, gateState, gateText } from '../../compute/gates.ts'
import { outlineBlock } from '../../compute/outline.ts'
import { schedulePlan } from '../../compute/schedule.ts'
import type { Block, Gate, Progression } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { PlannedItem } from '../../model/schedule.ts'
import { originOf } from '../common/origins.ts'
import { plansRunning } from '../common/plans-running.ts'
import { titleOf } from '../common/titles.ts'
import type { Rule } from '../rule.ts'
import page from './gate-order.md'
import { type StepInBlock, stepsInBlock } from './steps-in-block.ts'

export const gateOrder: Rule = {
	code: 'gate-order',
	area: 'gates',
	level: 'info',
	summary: 'A block holds a step and the one below it, which never reaches the gate between them.',
	source: 'the steps of the progression',
	fix: 'none',
	since: '0.1.0',
	page,
	check: {
		block: (block, programme) => programme.all('progression').flatMap(one => check(one, block, programme)),
	},
}

function check(progression: Progression, block: Block, programme: Programme): Finding[] {
	const held = stepsInBlock(progression, block, programme)
	return held.flatMap((upper): Finding[] => {
		const lower = held.find(one => one.index === upper.index - 1)
		const gate = progression.steps[upper.index]?.after
		if (lower === undefined || gate === undefined || gate.kind === 'sign-off') return []
		const outline = outlineBlock(block, programme)
		if (gateReachedInOutline(gate, outline, upper.firstWeek) !== undefined) return []
		const { movedOn } = upper
		if (movedOn && gatePassedBy(movedOn.milestone, movedOn.from, gate, undefined)) return []
		if (mayReach(gate, lower) || isPassedByAll(gate, upper, block, programme)) return []
		const text = gateText(gate, upper.name, programme)
		return [
			{
				span: upper.span,
				message: `${titleOf('movement', upper.name, programme)} begins in week ${upper.firstWeek} and comes after ${text} (${originOf(progression, programme)}), which ${titleOf('movement', lower.name, programme)} does not reach in an earlier week of this block. Let the lower step get there first, or leave the higher one for the next block.`,
				source: originOf(progression, programme),
				related: [
					{ definition: block, span: lower.span, message: 'The step below.' },
					{ definition: progression, span: gate.span, message: 'The gate stands here.' },
				],
			},
		]
	})
}

/** A gate with a load, where the block does not say which load the lower step has. */
function mayReach(gate: Gate, lower: StepInBlock): boolean {
	const load = loadOfGate(gate)
	// Whose bodyweight it is a multiple of, the block does not say.
	if (load !== undefined && isMultiple(load)) return true
	const isKnown = ({ sets }: PlannedItem) => sets.every(set => set.load.kind === 'mass' || set.load.kind === 'none')
	return load !== undefined && !lower.uses.every(isKnown)
}

/** Have all lifters who run the block passed the gate before it asks for it? Not where nobody runs it. */
function isPassedByAll(gate: Gate, upper: StepInBlock, block: Block, programme: Programme): boolean {
	const plans = plansRunning(block, programme)
	const uses = plans.flatMap(plan => {
		const lifter = programme.find('lifter', plan.lifter.text)
		return schedulePlan(plan, programme)
			.runs.filter(run => run.block === block)
			.map(run => {
				const sessions = schedulePlan(plan, programme).sessions.filter(session => session.run === run)
				const first = sessions.find(({ items }) =>
					items.some(item => item.movementName.text === upper.name && item.sets.length > 0),
				)
				return lifter && first && gateState(gate, upper.name, lifter, first.date, programme).passed
			})
	})
	return uses.length > 0 && uses.every(passed => passed !== false)
}
