import type { CalendarDate } from '../language/model/quantities.ts'

/** So often the clock is looked at: a day that begins is known soon after. */
const betweenLooks = 10 * 60_000

/** Tells which day it is where the editor runs, at once and when another one begins, for as long as the process lives. */
export function followToday(tell: (today: CalendarDate) => void): void {
	const look = () => tell(localDate(new Date()))
	look()
	setInterval(look, betweenLooks).unref?.()
}

/** The calendar date by the clock of this machine, in its own time zone. */
function localDate(now: Date): CalendarDate {
	const digits = (value: number, length: number) => String(value).padStart(length, '0')
	return `${digits(now.getFullYear(), 4)}-${digits(now.getMonth() + 1, 2)}-${digits(now.getDate(), 2)}`
}
