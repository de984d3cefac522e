import { type GateAsk, type GateAsked, gatesAsked } from '../../compute/gates/asked.ts'
import { featText } from '../../compute/gates/feat.ts'
import { gateLoadText, isMultiple, loadOfGate, massOfMultiple } from '../../compute/gates/gate-load.ts'
import type { GateState } from '../../compute/gates.ts'
import { massText } from '../../compute/mass.ts'
import type { Gate, Lifter, Plan } from '../../model/definitions.ts'
import type { RelatedPlace } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { CalendarDate } from '../../model/quantities.ts'
import { originOf } from '../common/origins.ts'
import { placeOfItem } from '../common/places.ts'
import { titleOf } from '../common/titles.ts'
import { inWords } from '../common/words.ts'

/** A gate that a plan comes to, with where it is set and where it is come to. */
export interface AskedGate extends GateAsked {
	readonly places: readonly RelatedPlace[]
}

/** The gates that a plan comes to, as rules report them. */
export function askedGates(plan: Plan, programme: Programme): readonly AskedGate[] {
	return programme.derived(plan, withPlaces)
}

function withPlaces(plan: Plan, programme: Programme): readonly AskedGate[] {
	return gatesAsked(plan, programme).map(one => ({ ...one, places: one.asks.flatMap(ask => placesOf(ask, plan)) }))
}

function placesOf({ gate, setBy, item, milestone, run, date }: GateAsk, plan: Plan): RelatedPlace[] {
	if (item === undefined) return [{ definition: setBy, span: gate.span, message: 'The block requires it here.' }]
	const owner = item.changedBy === 'add' ? plan : run.block
	const use = milestone
		? { definition: owner, span: milestone.span, message: 'The step stands here.' }
		: placeOfItem(item, { run, plan }, `First used on ${date}.`)
	return [use, { definition: setBy, span: gate.span, message: 'The gate stands here.' }]
}

/** "Weighted plank, first used on 2026-10-05, needs Plank held 45 s before (common practice)" */
export function askInWords({ movements, movedFrom, run, date, text, setBy }: AskedGate, programme: Programme): string {
	const origin = originOf(setBy, programme)
	if (movements.length === 0) return `${run.block.name.text} requires ${text} before its first day, ${date} (${origin})`
	const titles = inWords(movements.map(name => titleOf('movement', name, programme)))
	if (movedFrom !== undefined)
		return `${titles}, which ${titleOf('movement', movedFrom, programme)} may move on to, needs ${text} before (${origin})`
	return `${titles}, first used on ${date}, ${movements.length === 1 ? 'needs' : 'need'} ${text} before (${origin})`
}

/**
 * What a lifter has shown so far: "the most so far is 30 s on 2026-09-20", "it was shown in 1 of 2 sessions so far", "the most in one
 * session so far is 2 of 3 sets, on 2026-09-20". Before that, what a multiple of the bodyweight is for the lifter.
 */
export function shownInWords({ gate, state }: AskedGate & { state: { passed: false } }, lifter: Lifter | undefined): string {
	const load = loadOfGate(gate)
	const bodyweight = lifter?.bodyweight?.value
	const inMass = massOfMultiple(load, bodyweight)
	const known = inMass === undefined || load === undefined ? '' : `${gateLoadText(load)} is ${massText(inMass)}; `
	const unknown = load !== undefined && isMultiple(load) && bodyweight === undefined ? '; no bodyweight is written down' : ''
	return `${known}${soFarInWords(gate, state)}${unknown}`
}

function soFarInWords(gate: Gate, state: GateState & { passed: false }): string {
	const { bestSoFar, undated, sessions, mostSets } = state
	if (undated !== undefined) return 'its `passed` line has no date'
	if (bestSoFar === undefined) return 'nothing is written down that shows it'
	const { feat, on } = bestSoFar
	const dateOf = (date: CalendarDate | undefined) => (date === undefined ? '' : ` on ${date}`)
	if (feat.kind === 'sign-off' || gate.kind === 'sign-off') return 'nothing is written down that shows it'
	if (sessions > 0) return `it was shown in ${sessions} of ${gate.often.sessions} sessions so far`
	if (mostSets !== undefined)
		return `the most in one session so far is ${mostSets.sets} of ${gate.often.sets} sets${dateOf(mostSets.on)}`
	return `the most so far is ${featText(feat)}${dateOf(on)}`
}
