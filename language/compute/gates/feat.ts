import type { Best, Gate, LoggedSet } from '../../model/definitions.ts'
import type { Exact, Mass } from '../../model/quantities.ts'
import type { PlannedSet } from '../../model/schedule.ts'
import { compare, exact, zero } from '../exact.ts'
import { inUnit } from '../mass.ts'

/** What was shown, or will be if a set is done as written, in one shape for all that can show it. */
export type Feat =
	| { readonly kind: 'sign-off'; readonly movement: string }
	| { readonly kind: 'hold'; readonly movement: string; readonly seconds: Exact; readonly load: Mass | undefined }
	| { readonly kind: 'reps'; readonly movement: string; readonly reps: number; readonly load: Mass | undefined }

/** What a `passed` line says; one rep where it names a load alone. */
export function featOfGate(gate: Gate, movementGated: string): Feat {
	const movement = gate.movement?.text ?? movementGated
	switch (gate.kind) {
		case 'sign-off':
			return { kind: 'sign-off', movement }
		case 'hold':
			return { kind: 'hold', movement, seconds: gate.seconds, load: gate.with }
		case 'reps':
			return { kind: 'reps', movement, reps: gate.reps, load: gate.at }
		case 'load':
			return { kind: 'reps', movement, reps: 1, load: gate.at }
	}
}

/** What a logged set shows; nothing where position was lost or no rep was made. */
export function featOfLogged(movement: string, set: LoggedSet): Feat | undefined {
	if (set.brokeWith !== undefined) return undefined
	if (set.seconds !== undefined) return { kind: 'hold', movement, seconds: set.seconds, load: set.mass }
	const made = (set.reps ?? 0) - set.missed
	return made > 0 ? { kind: 'reps', movement, reps: made, load: set.mass } : undefined
}

/** A best was lifted: it shows its reps at its load. */
export function featOfBest(best: Best): Feat {
	return { kind: 'reps', movement: best.movement.text, reps: best.reps ?? 1, load: best.mass }
}

/** What a planned set shows if it is done as written; the low end of what it leaves open, nothing if it may be left out. */
export function featOfPlanned(movement: string, set: PlannedSet, load: Mass | undefined): Feat | undefined {
	if (set.optional) return undefined
	switch (set.work.kind) {
		case 'reps':
			return { kind: 'reps', movement, reps: set.work.reps.from, load }
		case 'hold':
		case 'time':
			return { kind: 'hold', movement, seconds: set.work.seconds.from, load }
		case 'carry':
			return undefined
	}
}

/** Does a feat pass a gate? A longer hold, more reps or a greater load pass a lesser one; a sign-off only another sign-off. */
export function passes(feat: Feat, gate: Gate, movementGated: string): boolean {
	const needed = featOfGate(gate, movementGated)
	if (feat.movement !== needed.movement) return false
	if (needed.kind === 'sign-off' || feat.kind === 'sign-off') return needed.kind === feat.kind
	return howMuch(feat, needed) >= 0 && isHeavyEnough(feat.load, needed.load)
}

/** Is it the same kind of showing of the same movement, if perhaps too little? */
export function isOfKind(feat: Feat, gate: Gate, movementGated: string): boolean {
	const needed = featOfGate(gate, movementGated)
	return feat.movement === needed.movement && feat.kind === needed.kind
}

/** Orders feats of one kind by how near they come to a gate: first those with its load, then by time, reps and load. */
export function compareFeats(a: Feat, b: Feat, gate: Gate): number {
	if (a.kind === 'sign-off' || b.kind === 'sign-off') return 0
	const needed = featOfGate(gate, '')
	const load = needed.kind === 'sign-off' ? undefined : needed.load
	const byLoad = Number(isHeavyEnough(a.load, load)) - Number(isHeavyEnough(b.load, load))
	return (gate.kind === 'load' ? 0 : byLoad || howMuch(a, b)) || compare(kilograms(a.load), kilograms(b.load))
}

/** Above 0 where the first is longer or has more reps. */
function howMuch(a: Exclude<Feat, { kind: 'sign-off' }>, b: Exclude<Feat, { kind: 'sign-off' }>): number {
	if (a.kind === 'hold' && b.kind === 'hold') return compare(a.seconds, b.seconds)
	if (a.kind === 'reps' && b.kind === 'reps') return compare(exact(a.reps), exact(b.reps))
	return -1
}

function isHeavyEnough(load: Mass | undefined, needed: Mass | undefined): boolean {
	return needed === undefined || compare(kilograms(load), kilograms(needed)) >= 0
}

function kilograms(load: Mass | undefined): Exact {
	return load === undefined ? zero : inUnit(load, 'kg')
}
