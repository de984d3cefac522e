import type { Gate, Lifter, Movement, Passed, Progression } from '../model/definitions.ts'
import type { Programme } from '../model/programme.ts'
import type { CalendarDate, Mass } from '../model/quantities.ts'
import type { BlockOutline, PlannedItem, PlannedLoad, Schedule } from '../model/schedule.ts'
import { decimal } from './exact.ts'
import { type Evidence, type ShownFeat, shownBefore, undatedPassed } from './gates/evidence.ts'
import { compareFeats, type Feat, featOfPlanned, isOfKind, passes } from './gates/feat.ts'
import { inUnit, massText } from './mass.ts'

/** A gate before a movement, and the definition that sets it. */
export interface MovementGate {
	readonly gate: Gate
	readonly setBy: Movement | Progression
}

/** The gates before a movement: its own `requires` and the `after` of its steps in progressions. One that stands in both is there once. */
export function gatesOf(movement: Movement, programme: Programme): readonly MovementGate[] {
	return programme.derived(movement, workOutGates)
}

function workOutGates(movement: Movement, programme: Programme): readonly MovementGate[] {
	const name = movement.name.text
	const steps = programme.all('progression').flatMap(progression =>
		progression.steps.flatMap(({ movement: step, after }): MovementGate[] => {
			return step.text === name && after !== undefined ? [{ gate: after, setBy: progression }] : []
		}),
	)
	const all = [...movement.gates.map((gate): MovementGate => ({ gate, setBy: movement })), ...steps]
	return all.filter((one, index) => all.findIndex(other => gateKey(other.gate, name) === gateKey(one.gate, name)) === index)
}

/** Equal for gates that ask for the same. */
function gateKey(gate: Gate, movementGated: string): string {
	const movement = gate.movement?.text ?? movementGated
	const mass = (load: Mass | undefined) => (load === undefined ? '' : massText(load))
	switch (gate.kind) {
		case 'sign-off':
			return `${movement} sign-off`
		case 'hold':
			return `${movement} held ${gate.seconds.toFraction()} ${mass(gate.with)}`
		case 'reps':
			return `${movement} ${gate.reps} reps ${mass(gate.at)}`
		case 'load':
			return `${movement} 1 reps ${mass(gate.at)}`
	}
}

/**
 * "Plank held 45 s", "Front squat 5 reps at 80 kg", "a sign-off of Front squat". `movementGated` is the movement behind the gate, which a
 * bare `sign-off` means; empty where there is none.
 */
export function gateText(gate: Gate, movementGated: string, programme: Programme): string {
	const name = gate.movement?.text ?? movementGated
	const title = programme.find('movement', name)?.title?.text ?? name
	switch (gate.kind) {
		case 'sign-off':
			return title === '' ? 'a sign-off' : `a sign-off of ${title}`
		case 'hold':
			return `${title} held ${decimal(gate.seconds)} s${gate.with === undefined ? '' : ` with ${massText(gate.with)}`}`
		case 'reps': {
			const reps = gate.reps === 1 ? '1 rep' : `${gate.reps} reps`
			return `${title} ${reps}${gate.at === undefined ? '' : ` at ${massText(gate.at)}`}`
		}
		case 'load':
			return `${title} at ${massText(gate.at)}`
	}
}

export type GateState =
	/** The latest evidence before the day that passes the gate. */
	| { readonly passed: true; readonly by: Evidence; readonly on: CalendarDate | undefined }
	| {
			readonly passed: false
			/** What came nearest to it before the day. */
			readonly bestSoFar: ShownFeat | undefined
			/** A `passed` line that would do, had it a date. */
			readonly undated: Passed | undefined
	  }

/**
 * Has a lifter passed a gate before a day: by a dated `passed` line, a logged set, or a best? `movementGated` is the movement behind the
 * gate, which a bare `sign-off` means.
 */
export function gateState(
	gate: Gate,
	movementGated: string,
	lifter: Lifter,
	beforeDate: CalendarDate,
	programme: Programme,
): GateState {
	let latest: ShownFeat | undefined
	let nearest: ShownFeat | undefined
	for (const shown of shownBefore(lifter, beforeDate, programme)) {
		if (passes(shown.feat, gate, movementGated)) {
			if (latest === undefined || (shown.on ?? '') >= (latest.on ?? '')) latest = shown
		} else if (isOfKind(shown.feat, gate, movementGated)) {
			if (nearest === undefined || compareFeats(shown.feat, nearest.feat, gate) > 0) nearest = shown
		}
	}
	if (latest !== undefined) return { passed: true, by: latest.by, on: latest.on }
	return { passed: false, bestSoFar: nearest, undated: undatedPassed(lifter, feat => passes(feat, gate, movementGated)) }
}

/**
 * The date on which a plan first reaches a gate before a day, if it is done as written, at the low end of what it leaves open; `undefined`
 * where it does not. No plan reaches a sign-off.
 */
export function gateReachedInSchedule(gate: Gate, schedule: Schedule, beforeDate: CalendarDate): CalendarDate | undefined {
	const reached = schedule.sessions.find(
		session =>
			session.date < beforeDate &&
			session.items.some(item =>
				item.sets.some(set => {
					const { load, unit } = set.computed
					const mass = load && { amount: load, unit }
					return reaches(featOfPlanned(item.movementName.text, set, mass), gate)
				}),
			),
	)
	return reached?.date
}

/** The week of a block that first reaches a gate before `beforeWeek`, by the block alone: a load counts where it is written as a mass. */
export function gateReachedInOutline(gate: Gate, outline: BlockOutline, beforeWeek: number): number | undefined {
	const reached = outline.weeks.find(
		({ week, sessions }) => week < beforeWeek && sessions.some(session => session.items.some(item => itemReaches(item, gate))),
	)
	return reached?.week
}

function itemReaches(item: PlannedItem, gate: Gate): boolean {
	return item.sets.some(set => reaches(featOfPlanned(item.movementName.text, set, writtenMass(set.load)), gate))
}

/** The low end of a load in kilograms or pounds, with what progression and deload have made of it. */
function writtenMass(load: PlannedLoad): Mass | undefined {
	if (load.kind !== 'mass') return undefined
	const { unit } = load.from
	const amount = load.added.reduce((sum, mass) => sum.add(inUnit(mass, unit)), load.from.amount.mul(load.share))
	return { amount, unit }
}

function reaches(feat: Feat | undefined, gate: Gate): boolean {
	return feat !== undefined && gate.kind !== 'sign-off' && passes(feat, gate, '')
}
