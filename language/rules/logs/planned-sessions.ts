import { entriesOf, plannedByEntry } from '../../compute/logged-sessions.ts'
import type { Lifter, LogEntry } from '../../model/definitions.ts'
import type { Programme } from '../../model/programme.ts'
import { type DatedSession, lifterSessions } from '../common/placed-sessions.ts'

/** The sessions of a lifter's plans that each entry of the logs is about. */
export function plannedSessions(lifter: Lifter, programme: Programme): ReadonlyMap<LogEntry, readonly DatedSession[]> {
	return programme.derived(lifter, workOutPlanned)
}

function workOutPlanned(lifter: Lifter, programme: Programme): ReadonlyMap<LogEntry, readonly DatedSession[]> {
	return plannedByEntry(entriesOf(lifter, programme), lifterSessions(lifter, programme))
}
