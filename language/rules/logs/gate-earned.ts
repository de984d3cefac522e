import { type Evidence, shownBefore } from '../../compute/gates/evidence.ts'
import { compareFeats, type DoneFeat, isGoodEnough } from '../../compute/gates/feat.ts'
import { gateState, gatesOf, gateText, gateWords } from '../../compute/gates.ts'
import type { Block, DoneGate, Gate, Lifter, Movement, Progression } from '../../model/definitions.ts'
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
	/** What the line that says so for good would state. */
	readonly shown: DoneGate
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
		// What was shown more than once says the single gate too.
		const { shown } = same.find(one => isOften(one.shown)) ?? first
		const line = `passed ${shown.movement.text} ${gateWords(shown)} on ${first.on}`
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

/** What logs have shown of a gate that nothing but logs passes. */
function earnedBy(known: KnownGate, lifter: Lifter, programme: Programme): Earned | undefined {
	const { gate, movementGated } = known
	if (gate.kind === 'sign-off') return undefined
	const stateBy = (counts: (evidence: Evidence) => boolean) =>
		gateState(gate, movementGated, lifter, endOfTime, programme, counts)
	const state = stateBy(() => true)
	if (!state.passed || state.by.kind !== 'logged' || state.on === undefined) return undefined
	if (stateBy(by => by.kind !== 'logged').passed) return undefined
	// What must be shown more than once is said as the gate says it; else the most that was shown.
	if (isOften(gate)) return { ...known, shown: gate, by: state.by, on: state.on }
	return mostShown(known, gate, lifter, programme)
}

function isOften({ often }: DoneGate): boolean {
	return often.sets > 1 || often.sessions > 1
}

function mostShown(known: KnownGate, gate: DoneGate, lifter: Lifter, programme: Programme): Earned | undefined {
	const bodyweight = lifter.bodyweight?.value
	let most: (Earned & { readonly feat: DoneFeat }) | undefined
	for (const { feat, by, on } of shownBefore(lifter, endOfTime, programme)) {
		if (!isGoodEnough(feat, gate, known.movementGated, bodyweight)) continue
		if (feat.kind === 'sign-off' || by.kind !== 'logged' || on === undefined) continue
		if (most !== undefined && compareFeats(feat, most.feat, gate, bodyweight) <= 0) continue
		most = { ...known, feat, shown: asGate(feat, gate), by, on }
	}
	return most
}

/** What was shown, in the shape of a gate. */
function asGate(feat: DoneFeat, { movement, span }: DoneGate): DoneGate {
	const { load, often } = feat
	return feat.kind === 'hold'
		? { kind: 'hold', movement, seconds: feat.seconds, with: load, often, span }
		: { kind: 'reps', movement, reps: feat.reps, at: load, often, span }
}
