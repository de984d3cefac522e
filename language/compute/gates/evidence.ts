import type { Best, Gate, Lifter, Log, LogEntry, LoggedLift, LoggedSet, Passed } from '../../model/definitions.ts'
import type { Programme } from '../../model/programme.ts'
import type { CalendarDate } from '../../model/quantities.ts'
import { type Feat, featOfBest, featOfGate, featOfLogged } from './feat.ts'

/** Where a feat stands: a `passed` line, a logged set or a best. */
export type Evidence =
	| { readonly kind: 'passed'; readonly lifter: Lifter; readonly passed: Passed }
	| {
			readonly kind: 'logged'
			readonly log: Log
			readonly entry: LogEntry
			readonly lift: LoggedLift
			readonly set: LoggedSet
	  }
	| { readonly kind: 'best'; readonly lifter: Lifter; readonly best: Best }

export interface ShownFeat {
	readonly feat: Feat
	readonly by: Evidence
	/** `undefined` for a best without a date, which counts as always known. */
	readonly on: CalendarDate | undefined
}

/** All that a lifter has shown before a day. A `passed` line without a date shows nothing that a plan could come after. */
export function shownBefore(lifter: Lifter, beforeDate: CalendarDate, programme: Programme): readonly ShownFeat[] {
	return programme
		.derived(lifter, allShown)
		.filter(shown => (shown.on === undefined ? shown.by.kind === 'best' : shown.on < beforeDate))
}

function allShown(lifter: Lifter, programme: Programme): readonly ShownFeat[] {
	const passed = lifter.passed.map((line): ShownFeat => {
		return { feat: featOfGate(line.gate, ''), by: { kind: 'passed', lifter, passed: line }, on: line.on }
	})
	const bests = lifter.bests.map(
		(best): ShownFeat => ({ feat: featOfBest(best), by: { kind: 'best', lifter, best }, on: best.on }),
	)
	return [...passed, ...bests, ...programme.logsOf(lifter.name.text).flatMap(loggedFeats)]
}

function loggedFeats(log: Log): readonly ShownFeat[] {
	return log.entries.flatMap(entry =>
		entry.lifts.flatMap(lift =>
			lift.sets.flatMap((set): ShownFeat[] => {
				const feat = entry.on === undefined ? undefined : featOfLogged(lift.movement.text, set)
				return feat === undefined ? [] : [{ feat, by: { kind: 'logged', log, entry, lift, set }, on: entry.on }]
			}),
		),
	)
}

/** Does a lifter's `passed` line that has no date say what a gate asks for? */
export function undatedPassed(lifter: Lifter, isEnough: (feat: Feat) => boolean): Passed | undefined {
	const says = (line: { readonly gate: Gate }) => isEnough(featOfGate(line.gate, ''))
	return lifter.passed.find(line => line.on === undefined && says(line))
}
