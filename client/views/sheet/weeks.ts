import type { CalendarDate } from '../../../language/model/quantities.ts'
import type { LoadSheet, SheetSession } from '../../../language/reports/load-sheet.ts'

/** The sessions of one calendar week, with their places in the sheet. */
export interface SheetWeek {
	/** Of the plan, from 1. */
	readonly week: number
	readonly monday: CalendarDate
	readonly sunday: CalendarDate
	readonly deload: boolean
	readonly sessions: readonly { readonly index: number; readonly session: SheetSession }[]
}

/** The calendar weeks that hold sessions, in order; a week without one is left out. */
export function weeksOf(sheet: LoadSheet): SheetWeek[] {
	const weeks = new Map<CalendarDate, { index: number; session: SheetSession }[]>()
	for (const [index, session] of sheet.sessions.entries()) {
		const monday = mondayOf(session.date)
		const sessions = weeks.get(monday)
		if (sessions) sessions.push({ index, session })
		else weeks.set(monday, [{ index, session }])
	}
	return [...weeks].map(([monday, sessions]) => ({
		week: sessions[0]!.session.planWeek,
		monday,
		sunday: shift(monday, 6),
		deload: sessions.every(({ session }) => session.deload),
		sessions,
	}))
}

const day = 86_400_000

export function mondayOf(date: CalendarDate): CalendarDate {
	const weekday = (new Date(`${date}T00:00:00Z`).getUTCDay() + 6) % 7
	return shift(date, -weekday)
}

/** The date `days` later. */
export function shift(date: CalendarDate, days: number): CalendarDate {
	return new Date(Date.parse(`${date}T00:00:00Z`) + days * day).toISOString().slice(0, 10)
}

/** Days from one date to another. */
export function daysFrom(from: CalendarDate, to: CalendarDate): number {
	return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / day)
}
