import type { Lifter, Log, LogEntry, Plan, Session } from '../model/definitions.ts'
import type { Programme } from '../model/programme.ts'
import type { CalendarDate } from '../model/quantities.ts'
import { mondayOf } from './calendar.ts'

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

/** A session on its day, as far as entries of a log are about it. */
export interface SessionOnDay {
	readonly plan: Plan
	readonly session: Session
	readonly date: CalendarDate
}

/**
 * The planned sessions that each entry is about. Where it names none, those of its date. Else, in each plan, the one of that name in that
 * week: where the name stands on several days, the one of its date, or the next that no entry has a date of.
 */
export function plannedByEntry<S extends SessionOnDay>(
	entries: readonly DatedEntry[],
	sessions: readonly S[],
): ReadonlyMap<LogEntry, readonly S[]> {
	const found = new Map<LogEntry, S[]>(entries.map(({ entry }) => [entry, []]))
	const byDate = Map.groupBy(sessions, session => session.date)
	for (const { entry, on } of entries) if (entry.session === undefined) found.get(entry)?.push(...(byDate.get(on) ?? []))
	const weekOf = (name: string, date: CalendarDate) => `${name} ${mondayOf(date)}`
	const named = entries.filter(({ entry }) => entry.session !== undefined)
	const ofWeek = Map.groupBy(named, ({ entry, on }) => weekOf(entry.session?.text ?? '', on))
	const planned = Map.groupBy(sessions, ({ plan, session, date }) => `${plan.name.text} ${weekOf(session.name.text, date)}`)
	for (const days of planned.values()) {
		const [first] = days
		const ofName = first && ofWeek.get(weekOf(first.session.name.text, first.date))
		for (const [{ entry }, day] of inTurn(ofName ?? [], days)) found.get(entry)?.push(day)
	}
	return found
}

/** Each entry with its day: by the date, else one after the other. What is left over is about the last of them. */
function inTurn<S extends SessionOnDay>(entries: readonly DatedEntry[], days: readonly S[]): [DatedEntry, S][] {
	const dated = new Set(entries.map(({ on }) => on))
	const open = days.filter(({ date }) => !dated.has(date))
	return entries.flatMap((one): [DatedEntry, S][] => {
		const day = days.find(({ date }) => date === one.on) ?? open.shift() ?? days.at(-1)
		return day === undefined ? [] : [[one, day]]
	})
}
