import { decimal } from '../../compute/exact.ts'
import { type GateAsk, type GateAsked, gatesAsked } from '../../compute/gates/asked.ts'
import type { GateState } from '../../compute/gates.ts'
import { massText } from '../../compute/mass.ts'
import type { Plan } from '../../model/definitions.ts'
import type { RelatedPlace } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
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

function placesOf({ gate, setBy, item, run, date }: GateAsk, plan: Plan): RelatedPlace[] {
	if (item === undefined) return [{ definition: setBy, span: gate.span, message: 'The block requires it here.' }]
	const use = placeOfItem(item, { run, plan }, `First used on ${date}.`)
	return [use, { definition: setBy, span: gate.span, message: 'The gate stands here.' }]
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
