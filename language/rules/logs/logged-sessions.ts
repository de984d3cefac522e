import { mondayOf } from '../../compute/calendar.ts'
import type { Lifter, Log, LogEntry } from '../../model/definitions.ts'
import type { Programme } from '../../model/programme.ts'
import type { CalendarDate } from '../../model/quantities.ts'
import { groupedBy } from '../common/groups.ts'
import { type DatedSession, lifterSessions } from '../common/placed-sessions.ts'

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

/**
 * The planned sessions that each entry of a lifter is about. Where it names none, those of its date. Else, in each plan, the one of that
 * name in that week: where the name stands on several days, the one of its date, or the next that no entry has a date of.
 */
export function plannedByEntry(lifter: Lifter, programme: Programme): ReadonlyMap<LogEntry, readonly DatedSession[]> {
	return programme.derived(lifter, workOutPlanned)
}

function workOutPlanned(lifter: Lifter, programme: Programme): ReadonlyMap<LogEntry, readonly DatedSession[]> {
	const entries = entriesOf(lifter, programme)
	const sessions = lifterSessions(lifter, programme)
	const found = new Map<LogEntry, DatedSession[]>(entries.map(({ entry }) => [entry, []]))
	const byDate = new Map(groupedBy(sessions, session => session.date).map(same => [same[0].date, same]))
	for (const { entry, on } of entries) if (entry.session === undefined) found.get(entry)?.push(...(byDate.get(on) ?? []))
	const weekOf = (name: string, monday: CalendarDate) => `${name} ${monday}`
	const named = entries.filter(({ entry }) => entry.session !== undefined)
	const ofWeek = new Map(
		groupedBy(named, ({ entry, on }) => weekOf(entry.session?.text ?? '', mondayOf(on))).map(same => [
			weekOf(same[0].entry.session?.text ?? '', mondayOf(same[0].on)),
			same,
		]),
	)
	const planned = groupedBy(sessions, ({ plan, session, monday }) => `${plan.name.text} ${weekOf(session.name.text, monday)}`)
	for (const days of planned) {
		const [{ session, monday }] = days
		for (const [{ entry }, day] of inTurn(ofWeek.get(weekOf(session.name.text, monday)) ?? [], days)) found.get(entry)?.push(day)
	}
	return found
}

/** Each entry with its day: by the date, else one after the other. What is left over is about the last of them. */
function inTurn(entries: readonly DatedEntry[], days: readonly DatedSession[]): [DatedEntry, DatedSession][] {
	const dated = new Set(entries.map(({ on }) => on))
	const open = days.filter(({ date }) => !dated.has(date))
	return entries.flatMap((one): [DatedEntry, DatedSession][] => {
		const day = days.find(({ date }) => date === one.on) ?? open.shift() ?? days.at(-1)
		return day === undefined ? [] : [[one, day]]
	})
}
