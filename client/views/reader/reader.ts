import type { CalendarDate, Unit } from '../../../language/model/quantities.ts'

/** A no-break space: a number and its unit stay on one line. */
const space = '\u00a0'

/**
 * Digits are the same everywhere: our lines run from left to right, where those of some scripts change sides, and 4 × 5 would be read as
 * 5 × 4.
 */
const numberingSystem = 'latn'

/** Numbers, masses, times and dates as the person who looks at the page writes them. */
export interface Reader {
	/** A BCP 47 tag; `null` writes what the language itself writes: decimal points and ISO dates. */
	readonly locale: string | null
	/** A decimal string, every digit kept. */
	number(decimal: string | number): string
	/** One percent, or from one to another. */
	percent(from: string, to?: string): string
	mass(decimal: string, unit: Unit): string
	/** Seconds as `45 s`, `1 min 30 s`. */
	duration(seconds: number): string
	/** Seconds as `1:30`, minutes and seconds. */
	clock(seconds: number): string
	/** Two ends as `5–8`, or one value where they are equal. */
	range(from: string, to: string): string
	/** `Mon`. */
	weekday(date: CalendarDate): string
	/** Day and month; the whole ISO date without a locale. */
	day(date: CalendarDate): string
	/** The month that a day is in, with the year: `Oct 2026`. */
	month(date: CalendarDate): string
	/** From a day to a day, with the year. */
	days(from: CalendarDate, to: CalendarDate): string
}

/** @param locale a BCP 47 tag; one that does not exist reads as none. */
export function readerOf(locale: string | null): Reader {
	const known = locale !== null && isKnown(locale) ? locale : null
	const numbers =
		known === null ? null : new Intl.NumberFormat(known, { numberingSystem, maximumFractionDigits: 6, useGrouping: 'min2' })
	const [before, after] = aroundPercent(known)
	const dates = datesOf(known)

	const number = (decimal: string | number) =>
		numbers === null ? String(decimal) : numbers.format(decimal as Intl.StringNumericLiteral)

	return {
		locale: known,
		number,
		percent: (from, to = from) => `${before}${from === to ? number(from) : `${number(from)}–${number(to)}`}${after}`,
		mass: (decimal, unit) => `${number(decimal)}${space}${unit}`,
		duration(seconds) {
			const minutes = Math.floor(seconds / 60)
			// What is left of 100.1 is 40.099… in binary.
			const rest = Number((seconds - minutes * 60).toFixed(3))
			// Holds and rests are spoken of in seconds up to a minute and a half.
			if (minutes === 0 || (rest !== 0 && seconds <= 90)) return `${number(seconds)}${space}s`
			if (rest === 0) return `${number(minutes)}${space}min`
			return `${number(minutes)}${space}min ${number(rest)}${space}s`
		},
		clock(seconds) {
			const rest = seconds % 60
			return `${number(Math.floor(seconds / 60))}:${rest < 10 ? number(0) : ''}${number(rest)}`
		},
		range: (from, to) => (from === to ? from : `${from}–${to}`),
		...dates,
	}
}

/** What stands before and after the number: `70%` in English, `70 %` in German, `%70` in Turkish. */
function aroundPercent(locale: string | null): readonly [before: string, after: string] {
	if (locale === null) return ['', '%']
	const parts = new Intl.NumberFormat(locale, { numberingSystem, style: 'percent' }).formatToParts(0.7)
	const number = parts.findIndex(({ type }) => type === 'integer')
	const text = (some: typeof parts) => some.map(({ value }) => value).join('')
	return [text(parts.slice(0, number)), text(parts.slice(number + 1))]
}

function isKnown(locale: string): boolean {
	try {
		return Intl.NumberFormat.supportedLocalesOf(locale).length > 0
	} catch {
		return false
	}
}

type Dates = Pick<Reader, 'weekday' | 'day' | 'month' | 'days'>

function datesOf(locale: string | null): Dates {
	// Calendar dates have no time zone; midday UTC is the same day everywhere that formats in UTC.
	const moment = (date: CalendarDate) => new Date(`${date}T12:00:00Z`)
	const weekdays = new Intl.DateTimeFormat(locale ?? 'en', { weekday: 'short', timeZone: 'UTC' })
	const weekday = (date: CalendarDate) => weekdays.format(moment(date))

	if (locale === null) {
		return {
			weekday,
			day: date => date,
			month: date => date.slice(0, 7),
			days: (from, to) => (from === to ? from : `${from} to ${to}`),
		}
	}
	const days = new Intl.DateTimeFormat(locale, { numberingSystem, day: 'numeric', month: 'short', timeZone: 'UTC' })
	const years = new Intl.DateTimeFormat(locale, {
		numberingSystem,
		day: 'numeric',
		month: 'short',
		year: 'numeric',
		timeZone: 'UTC',
	})
	const months = new Intl.DateTimeFormat(locale, { numberingSystem, month: 'short', year: 'numeric', timeZone: 'UTC' })
	return {
		weekday,
		day: date => days.format(moment(date)),
		month: date => months.format(moment(date)),
		days: (from, to) => years.formatRange(moment(from), moment(to)),
	}
}
