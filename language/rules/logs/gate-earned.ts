import { decimal } from '../../compute/exact.ts'
import { type Evidence, shownBefore } from '../../compute/gates/evidence.ts'
import { compareFeats, type Feat, passes } from '../../compute/gates/feat.ts'
import { gatesOf, gateText } from '../../compute/gates.ts'
import { massText } from '../../compute/mass.ts'
import type { Block, Gate, Lifter, Movement, Progression } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { CalendarDate } from '../../model/quantities.ts'
import { groupedBy } from '../common/groups.ts'
import { originOf } from '../common/origins.ts'
import { inWords } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import page from './gate-earned.md'

export const gateEarned: Rule = {
	code: 'gate-earned',
	area: 'logs',
	level: 'hint',
	summary: 'A logged set passes a gate that no line of the lifter says is passed.',
	source: 'the `requires` of the movement or block, or the step of the progression',
	fix: 'to confirm',
	since: '0.1.0',
	page,
	check: { lifter: checkLifter },
}

interface KnownGate {
	readonly gate: Gate
	readonly movementGated: string
	readonly setBy: Movement | Progression | Block
}

interface Earned extends KnownGate {
	readonly feat: Exclude<Feat, { kind: 'sign-off' }>
	readonly by: Evidence & { readonly kind: 'logged' }
	readonly on: CalendarDate
}

/** Later than every log. */
const endOfTime: CalendarDate = '9999-12-31'

function checkLifter(lifter: Lifter, programme: Programme): Finding[] {
	if (programme.logsOf(lifter.name.text).length === 0) return []
	const earned = knownGates(programme).flatMap(known => earnedBy(known, lifter, programme) ?? [])
	return groupedBy(earned, one => `${one.by.log.header.start} ${one.by.set.span.start} ${one.on}`).map(same => {
		const [first] = same
		const gates = [...new Set(same.map(one => gateText(one.gate, one.movementGated, programme)))]
		const line = `passed ${featInText(first.feat)} on ${first.on}`
		const after = lifter.passed.at(-1)?.span.end ?? lifter.bests.at(-1)?.span.end ?? lifter.header.end
		return {
			span: lifter.header,
			message: `What was logged on ${first.on} passes ${gates.length === 1 ? 'the gate' : 'the gates'} ${inWords(gates)} (${originOf(first.setBy, programme)}). A \`passed\` line says so for good.`,
			source: originOf(first.setBy, programme),
			related: [
				{ definition: first.by.log, span: first.by.set.span, message: 'The set stands here.' },
				...same.map(one => ({ definition: one.setBy, span: one.gate.span, message: 'The gate stands here.' })),
			],
			corrections: [{ title: `Write "${line}"`, edits: [{ span: { start: after, end: after }, text: `\n  ${line}` }] }],
		}
	})
}

/** Of all movements, steps and blocks, each gate once. */
function knownGates(programme: Programme): readonly KnownGate[] {
	const ofMovements = programme
		.all('movement')
		.flatMap(movement => gatesOf(movement, programme).map(one => ({ ...one, movementGated: movement.name.text })))
	const ofBlocks = programme
		.all('block')
		.flatMap(block => block.requires.map(gate => ({ gate, movementGated: '', setBy: block })))
	return groupedBy([...ofMovements, ...ofBlocks], one => gateText(one.gate, one.movementGated, programme)).map(same => same[0])
}

/** The most that a logged set has shown of a gate which nothing but the log passes. */
function earnedBy(known: KnownGate, lifter: Lifter, programme: Programme): Earned | undefined {
	const { gate, movementGated } = known
	const passing = shownBefore(lifter, endOfTime, programme).filter(one => passes(one.feat, gate, movementGated))
	if (passing.some(one => one.by.kind !== 'logged')) return undefined
	let most: Earned | undefined
	for (const { feat, by, on } of passing) {
		if (feat.kind === 'sign-off' || by.kind !== 'logged' || on === undefined) continue
		if (most === undefined || compareFeats(feat, most.feat, gate) > 0) most = { ...known, feat, by, on }
	}
	return most
}

/** "plank held 50 s", "front-squat 5 reps at 80 kg": as a `passed` line writes it. */
function featInText(feat: Earned['feat']): string {
	if (feat.kind === 'hold') {
		return `${feat.movement} held ${decimal(feat.seconds)} s${feat.load === undefined ? '' : ` with ${massText(feat.load)}`}`
	}
	return `${feat.movement} ${feat.reps} rep${feat.reps === 1 ? '' : 's'}${feat.load === undefined ? '' : ` at ${massText(feat.load)}`}`
}
