import { type CalendarDate, type Weekday, weekdays } from '../model/quantities.ts'

/**
 * The Gregorian calendar without time zones or clock: a date is a text, and UTC is used only as a calendar in which every day has
 * 24 hours.
 */

const millisecondsPerDay = 86_400_000

/**
 * Is it a day of the calendar, written `YYYY-MM-DD`? Years from 1900 to 2999: no training text means another one, so a slip in the
 * year is found here.
 */
export function isRealDate(text: string): boolean {
	return /^(19|2\d)\d\d-\d\d-\d\d$/.test(text) && dateOf(dayNumber(text)) === text
}

/** The date `days` later (earlier where negative). */
export function addDays(date: CalendarDate, days: number): CalendarDate {
	return dateOf(dayNumber(date) + days)
}

/** Days from `a` to `b`: positive where `b` is later. */
export function daysBetween(a: CalendarDate, b: CalendarDate): number {
	return dayNumber(b) - dayNumber(a)
}

export function weekdayOf(date: CalendarDate): Weekday {
	// Day 0 of UTC, 1970-01-01, was a thursday.
	const index = (((dayNumber(date) + 3) % 7) + 7) % 7
	return weekdays[index] ?? 'monday'
}

/** The first day of the date's calendar week. */
export function mondayOf(date: CalendarDate): CalendarDate {
	return addDays(date, -weekdayIndex(weekdayOf(date)))
}

/** 0 for monday to 6 for sunday. */
export function weekdayIndex(weekday: Weekday): number {
	return weekdays.indexOf(weekday)
}

/** Days since 1970-01-01. */
function dayNumber(date: CalendarDate): number {
	return Date.UTC(Number(date.slice(0, 4)), Number(date.slice(5, 7)) - 1, Number(date.slice(8, 10))) / millisecondsPerDay
}

function dateOf(day: number): CalendarDate {
	const moment = new Date(day * millisecondsPerDay)
	const digits = (value: number, length: number) => String(value).padStart(length, '0')
	return `${digits(moment.getUTCFullYear(), 4)}-${digits(moment.getUTCMonth() + 1, 2)}-${digits(moment.getUTCDate(), 2)}`
}
