import type { DoneGate, Gate, HowOften, Lifter, Movement, Passed, Progression } from '../model/definitions.ts'
import type { Milestone } from '../model/prescription.ts'
import type { Programme } from '../model/programme.ts'
import type { CalendarDate, Mass } from '../model/quantities.ts'
import type { BlockOutline, PlannedLoad, Schedule } from '../model/schedule.ts'
import { decimal } from './exact.ts'
import { type Evidence, type ShownFeat, shownBefore, undatedPassed } from './gates/evidence.ts'
import { compareFeats, type Feat, featOfPlanned, isGoodEnough, isOfKind } from './gates/feat.ts'
import { gateLoadText, loadOfGate } from './gates/gate-load.ts'
import { countSessions, type ShownSession, sessionsOf } from './gates/shown-sessions.ts'
import { inUnit } from './mass.ts'
import { plannedGroup, setsOf } from './outline/planned-group.ts'

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
	if (gate.kind === 'sign-off') return `${movement} sign-off`
	const load = loadOfGate(gate)
	const what = gate.kind === 'hold' ? `held ${gate.seconds.toFraction()}` : `${gate.kind === 'reps' ? gate.reps : 1} reps`
	return `${movement} ${what} ${load === undefined ? '' : gateLoadText(load)} ${gate.often.sets} ${gate.often.sessions}`
}

/**
 * "Plank held 45 s", "Front squat 5 reps at 80 kg", "a sign-off of Front squat". `movementGated` is the movement behind the gate, which a
 * bare `sign-off` means; empty where there is none.
 */
export function gateText(gate: Gate, movementGated: string, programme: Programme): string {
	const name = gate.movement?.text ?? movementGated
	const title = programme.find('movement', name)?.title?.text ?? name
	if (gate.kind === 'sign-off') return title === '' ? 'a sign-off' : `a sign-off of ${title}`
	return `${title} ${gateWords(gate)}`
}

/** "held 45 s x 3 in 2 sessions", "5 reps at 80 kg", "at 1.5 x bodyweight": as it is written after the movement. */
export function gateWords(gate: DoneGate): string {
	return `${whatText(gate)}${howOftenText(gate.often)}`
}

function whatText(gate: DoneGate): string {
	const load = loadOfGate(gate)
	switch (gate.kind) {
		case 'hold':
			return `held ${decimal(gate.seconds)} s${load === undefined ? '' : ` with ${gateLoadText(load)}`}`
		case 'reps':
			return `${gate.reps === 1 ? '1 rep' : `${gate.reps} reps`}${load === undefined ? '' : ` at ${gateLoadText(load)}`}`
		case 'load':
			return `at ${gateLoadText(gate.at)}`
	}
}

/** " x 3 in 2 sessions", as it is written; nothing for once. */
function howOftenText({ sets, sessions }: HowOften): string {
	return `${sets === 1 ? '' : ` x ${sets}`}${sessions === 1 ? '' : ` in ${sessions} sessions`}`
}

export type GateState =
	/** The latest evidence before the day that passes the gate. */
	| { readonly passed: true; readonly by: Evidence; readonly on: CalendarDate | undefined }
	| {
			readonly passed: false
			/** What came nearest to it before the day. */
			readonly bestSoFar: ShownFeat | undefined
			/** Sessions in which it was shown often enough. */
			readonly sessions: number
			/** Of those sets that were good enough, the session with most of them. */
			readonly mostSets: ShownSession | undefined
			/** A `passed` line that would do, had it a date. */
			readonly undated: Passed | undefined
	  }

/**
 * Has a lifter passed a gate before a day: by a dated `passed` line, logged sets, or a best? `movementGated` is the movement behind the
 * gate, which a bare `sign-off` means. `counts` says which evidence is looked at: all, where it is not given.
 */
export function gateState(
	gate: Gate,
	movementGated: string,
	lifter: Lifter,
	beforeDate: CalendarDate,
	programme: Programme,
	counts: (evidence: Evidence) => boolean = () => true,
): GateState {
	const bodyweight = lifter.bodyweight?.value
	const often = gate.kind === 'sign-off' ? once : gate.often
	const isEnough = (feat: Feat) => isGoodEnough(feat, gate, movementGated, bodyweight)
	const shown = shownBefore(lifter, beforeDate, programme).filter(one => counts(one.by))
	const sessions = sessionsOf(shown.filter(one => isEnough(one.feat)))
	const count = countSessions(sessions, often)
	const latest = lastOf(sessions.filter(session => session.sets >= often.sets))
	if (latest !== undefined && count >= often.sessions) return { passed: true, by: latest.by, on: latest.on }
	const ofKind = shown.filter(one => isOfKind(one.feat, gate, movementGated))
	const isWhole = (feat: Feat) =>
		feat.kind === 'sign-off' || (feat.often.sets >= often.sets && feat.often.sessions >= often.sessions)
	return {
		passed: false,
		bestSoFar: mostOf(ofKind, (a, b) => compareFeats(a.feat, b.feat, gate, bodyweight)),
		sessions: count,
		mostSets: mostOf(sessions, (a, b) => a.sets - b.sets),
		undated: undatedPassed(lifter, feat => isEnough(feat) && isWhole(feat)),
	}
}

const once: HowOften = { sets: 1, sessions: 1 }

/** The latest; of several on one day the last. */
function lastOf(sessions: readonly ShownSession[]): ShownSession | undefined {
	return mostOf(sessions, (a, b) => ((a.on ?? '') >= (b.on ?? '') ? 1 : -1))
}

/** The first of the greatest. */
function mostOf<T>(things: readonly T[], order: (a: T, b: T) => number): T | undefined {
	return things.reduce<T | undefined>((most, one) => (most === undefined || order(one, most) > 0 ? one : most), undefined)
}

/**
 * The date on which a plan first reaches a gate before a day, if it is done as written, at the low end of what it leaves open; `undefined`
 * where it does not. No plan reaches a sign-off.
 */
export function gateReachedInSchedule(gate: Gate, schedule: Schedule, beforeDate: CalendarDate): CalendarDate | undefined {
	const bodyweight = schedule.lifter?.bodyweight?.value
	const sessions = schedule.sessions.filter(session => session.date < beforeDate)
	return reachedIn(gate, sessions, ({ items }) =>
		items.flatMap(item =>
			item.sets.map(set => {
				const { load, unit } = set.computed
				const mass = load && { amount: load, unit }
				return reaches(featOfPlanned(item.movementName.text, set, mass), gate, bodyweight)
			}),
		),
	)?.date
}

/** The week of a block that first reaches a gate before `beforeWeek`, by the block alone: a load counts where it is written as a mass. */
export function gateReachedInOutline(gate: Gate, outline: BlockOutline, beforeWeek: number): number | undefined {
	const sessions = outline.weeks
		.filter(({ week }) => week < beforeWeek)
		.flatMap(({ week, sessions }) => sessions.map(({ items }) => ({ week, items })))
	return reachedIn(gate, sessions, ({ items }) =>
		items.flatMap(item =>
			item.sets.map(set => reaches(featOfPlanned(item.movementName.text, set, writtenMass(set.load)), gate, undefined)),
		),
	)?.week
}

/** Is a gate passed by what a milestone of a movement waits for? Then whoever takes that step has passed it. */
export function gatePassedBy({ reached }: Milestone, movement: string, gate: Gate, bodyweight: Mass | undefined): boolean {
	const sets = setsOf(plannedGroup(reached, 'best', 'accessory'), 'accessory')
	const session = sets.map(set => reaches(featOfPlanned(movement, set, writtenMass(set.load)), gate, bodyweight))
	return reachedIn(gate, [session], marks => marks) !== undefined
}

/** The session with which a gate is reached: enough sets in it, and enough such sessions with it. */
function reachedIn<S>(gate: Gate, sessions: readonly S[], marksOf: (session: S) => readonly boolean[]): S | undefined {
	if (gate.kind === 'sign-off') return undefined
	const reaching = sessions.filter(session => marksOf(session).filter(Boolean).length >= gate.often.sets)
	return reaching[gate.often.sessions - 1]
}

/** The low end of a load in kilograms or pounds, with what progression and deload have made of it. */
function writtenMass(load: PlannedLoad): Mass | undefined {
	if (load.kind !== 'mass') return undefined
	const { unit } = load.from
	const amount = load.added.reduce((sum, mass) => sum.add(inUnit(mass, unit)), load.from.amount.mul(load.share))
	return { amount, unit }
}

function reaches(feat: Feat | undefined, gate: Gate, bodyweight: Mass | undefined): boolean {
	return feat !== undefined && gate.kind !== 'sign-off' && isGoodEnough(feat, gate, '', bodyweight)
}
