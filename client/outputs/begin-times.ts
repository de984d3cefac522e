import type { SheetSession } from '../../language/reports/load-sheet.ts'

/** When sessions of one kind begin. A plan's text has days and no clock times: who makes a calendar says them. */
export interface BeginTime {
	/** `null`: every day for which nothing else is said. */
	readonly weekday: SheetSession['weekday'] | null
	/** As a session's own line says it; `null`: sessions whose line says none. */
	readonly part: SheetSession['part']
	/** Since midnight. */
	readonly minutes: number
}

/**
 * When each session begins, in minutes since the midnight before its day; `null` where no time is said for it.
 *
 * Sessions of one day that would begin at the same time follow one another, since nobody does both at once. Where different times are said,
 * they stand, even if the first session is likely to run into the next: the length is an estimate, and the times are not.
 */
export function beginsOf(sessions: readonly SheetSession[], times: readonly BeginTime[]): readonly (number | null)[] {
	const free = new Map<string, number>()
	return sessions.map(session => {
		const said = saidFor(session, times)
		if (said === null) return null
		const slot = `${session.date} ${said}`
		const begin = free.get(slot) ?? said
		free.set(slot, begin + session.minutes)
		return begin
	})
}

function saidFor({ weekday, part }: SheetSession, times: readonly BeginTime[]): number | null {
	const fitting = times.filter(time => time.part === part)
	const time = fitting.find(one => one.weekday === weekday) ?? fitting.find(one => one.weekday === null)
	return time?.minutes ?? null
}
