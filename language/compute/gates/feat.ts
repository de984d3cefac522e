import type { Best, Gate, GateLoad, HowOften, LoggedSet } from '../../model/definitions.ts'
import type { Exact, Mass } from '../../model/quantities.ts'
import type { PlannedSet } from '../../model/schedule.ts'
import { repsWithoutRest } from '../clusters.ts'
import { compare, decimal, exact, zero } from '../exact.ts'
import { inUnit } from '../mass.ts'
import { gateLoadText, isMultiple } from './gate-load.ts'

/** What was shown, or will be if a set is done as written, in one shape for all that can show it. */
export type Feat = { readonly kind: 'sign-off'; readonly movement: string } | DoneFeat

/** Work that was done, `often` so many times; one set is once in one session. */
export type DoneFeat = { readonly movement: string; readonly load: GateLoad | undefined; readonly often: HowOften } & (
	| { readonly kind: 'hold'; readonly seconds: Exact }
	| { readonly kind: 'reps'; readonly reps: number }
)

const once: HowOften = { sets: 1, sessions: 1 }

/** What a `passed` line says; one rep where it names a load alone. */
export function featOfGate(gate: Gate, movementGated: string): Feat {
	const movement = gate.movement?.text ?? movementGated
	switch (gate.kind) {
		case 'sign-off':
			return { kind: 'sign-off', movement }
		case 'hold':
			return { kind: 'hold', movement, seconds: gate.seconds, load: gate.with, often: gate.often }
		case 'reps':
			return { kind: 'reps', movement, reps: gate.reps, load: gate.at, often: gate.often }
		case 'load':
			return { kind: 'reps', movement, reps: 1, load: gate.at, often: gate.often }
	}
}

/** What a logged set shows; nothing where position was lost or no rep was made. Of a set in clusters, the reps without a rest. */
export function featOfLogged(movement: string, set: LoggedSet): Feat | undefined {
	if (set.brokeWith !== undefined) return undefined
	if (set.seconds !== undefined) return { kind: 'hold', movement, seconds: set.seconds, load: set.mass, often: once }
	const made = (set.reps ?? 0) - set.missed
	const reps = Math.min(made, set.clusterReps ?? made)
	return reps > 0 ? { kind: 'reps', movement, reps, load: set.mass, often: once } : undefined
}

/** A best was lifted: it shows its reps at its load. */
export function featOfBest(best: Best): Feat {
	return { kind: 'reps', movement: best.movement.text, reps: best.reps ?? 1, load: best.mass, often: once }
}

/**
 * What a planned set shows if it is done as written; the low end of what it leaves open, nothing if it may be left out or nobody knows
 * how many reps it will be.
 */
export function featOfPlanned(movement: string, set: PlannedSet, load: Mass | undefined): Feat | undefined {
	if (set.optional) return undefined
	switch (set.work.kind) {
		case 'reps':
			return { kind: 'reps', movement, reps: repsWithoutRest(set) ?? 0, load, often: once }
		case 'hold':
		case 'time':
			return { kind: 'hold', movement, seconds: set.work.seconds.from, load, often: once }
		case 'reps-in-time':
		case 'carry':
			return undefined
	}
}

/**
 * Is a feat good enough for a gate, however often it was shown? A longer hold, more reps or a greater load pass a lesser one; a sign-off
 * only another sign-off. A multiple of the bodyweight and a mass compare where the bodyweight is known.
 */
export function isGoodEnough(feat: Feat, gate: Gate, movementGated: string, bodyweight: Mass | undefined): boolean {
	const needed = featOfGate(gate, movementGated)
	if (feat.movement !== needed.movement) return false
	if (needed.kind === 'sign-off' || feat.kind === 'sign-off') return needed.kind === feat.kind
	return howMuch(feat, needed) >= 0 && isHeavyEnough(feat.load, needed.load, bodyweight)
}

/** Is it the same kind of showing of the same movement, if perhaps too little? */
export function isOfKind(feat: Feat, gate: Gate, movementGated: string): boolean {
	const needed = featOfGate(gate, movementGated)
	return feat.movement === needed.movement && feat.kind === needed.kind
}

/** Orders feats of one kind by how near they come to a gate: first those with its load, then by time, reps and load. */
export function compareFeats(a: Feat, b: Feat, gate: Gate, bodyweight: Mass | undefined): number {
	if (a.kind === 'sign-off' || b.kind === 'sign-off') return 0
	const needed = featOfGate(gate, '')
	const load = needed.kind === 'sign-off' ? undefined : needed.load
	const hasLoad = (feat: DoneFeat) => Number(isHeavyEnough(feat.load, load, bodyweight))
	const kilograms = (feat: DoneFeat) => kilogramsOf(feat.load, bodyweight) ?? zero
	return (gate.kind === 'load' ? 0 : hasLoad(a) - hasLoad(b) || howMuch(a, b)) || compare(kilograms(a), kilograms(b))
}

/** Above 0 where the first is longer or has more reps. */
function howMuch(a: DoneFeat, b: DoneFeat): number {
	if (a.kind === 'hold' && b.kind === 'hold') return compare(a.seconds, b.seconds)
	if (a.kind === 'reps' && b.kind === 'reps') return compare(exact(a.reps), exact(b.reps))
	return -1
}

function isHeavyEnough(load: GateLoad | undefined, needed: GateLoad | undefined, bodyweight: Mass | undefined): boolean {
	if (needed === undefined) return true
	if (load !== undefined && isMultiple(load) && isMultiple(needed)) return compare(load.bodyweights, needed.bodyweights) >= 0
	const shown = kilogramsOf(load, bodyweight)
	const least = kilogramsOf(needed, bodyweight)
	return shown !== undefined && least !== undefined && compare(shown, least) >= 0
}

/** `undefined` where the bodyweight that it is a multiple of is not known. */
function kilogramsOf(load: GateLoad | undefined, bodyweight: Mass | undefined): Exact | undefined {
	if (load === undefined) return zero
	if (!isMultiple(load)) return inUnit(load, 'kg')
	return bodyweight && inUnit(bodyweight, 'kg').mul(load.bodyweights)
}

/** "30 s", "5 reps with 80 kg"; nothing to measure of a sign-off. */
export function featText(feat: DoneFeat): string {
	const load = feat.load === undefined ? '' : ` with ${gateLoadText(feat.load)}`
	const amount = feat.kind === 'hold' ? `${decimal(feat.seconds)} s` : `${feat.reps} rep${feat.reps === 1 ? '' : 's'}`
	return `${amount}${load}`
}
