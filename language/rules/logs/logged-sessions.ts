import { mondayOf } from '../../compute/calendar.ts'
import type { Lifter, Log, LogEntry } from '../../model/definitions.ts'
import type { Programme } from '../../model/programme.ts'
import type { CalendarDate } from '../../model/quantities.ts'
import type { DatedSession } from '../common/placed-sessions.ts'

/** An entry of a lifter's log that has a date. */
export interface DatedEntry {
	readonly log: Log
	readonly entry: LogEntry
	readonly on: CalendarDate
}

/** The entries of all logs of a lifter, by date. */
export function entriesOf(lifter: Lifter, programme: Programme): readonly DatedEntry[] {
	return programme.derived(lifter, workOutEntries)
}

function workOutEntries(lifter: Lifter, programme: Programme): readonly DatedEntry[] {
	const entries = programme
		.logsOf(lifter.name.text)
		.flatMap(log => log.entries.flatMap(entry => (entry.on === undefined ? [] : [{ log, entry, on: entry.on }])))
	// Sorting is stable: entries of one date stay in the order of their text.
	return entries.sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0))
}

/** The day up to which logs can be asked for: the one that was given, else that of the last entry. */
export function todayOf(lifter: Lifter, programme: Programme): CalendarDate | undefined {
	return programme.today() ?? entriesOf(lifter, programme).at(-1)?.on
}

/** Is an entry about a planned session: the one of that name in the same week, or, where it names none, the one of that date? */
export function isAbout({ entry, on }: DatedEntry, session: DatedSession): boolean {
	if (entry.session === undefined) return on === session.date
	return entry.session.text === session.session.name.text && mondayOf(on) === session.monday
}
