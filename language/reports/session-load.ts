import { addDays, daysBetween, mondayOf } from '../compute/calendar.ts'
import { zero } from '../compute/exact.ts'
import { limitsFor } from '../compute/limits.ts'
import { dailyLoads, loadSpread, sessionLoad, weightedAverages } from '../compute/session-load.ts'
import type { LogEntry } from '../model/definitions.ts'
import type { Programme } from '../model/programme.ts'
import type { CalendarDate, Exact } from '../model/quantities.ts'
import type { Deviation } from '../model/vocabulary.ts'

/** What a lifter's logs say of the load of training: rating × minutes, in arbitrary units. */
export interface LoggedLoad {
	/** Every calendar week from the first entry to the last, weeks without a session too; ten years at most. */
	readonly weeks: readonly LoggedWeek[]
	/** Weighted averages of a day's load, after the day of the last entry. */
	readonly averages: readonly DailyAverage[]
}

export interface LoggedWeek {
	readonly monday: CalendarDate
	/** Sessions that were done. */
	readonly sessions: number
	/** Those of them without a rating, whose load is not known: they are in no sum. */
	readonly unrated: number
	readonly load: Exact
	/** Does the log reach the week's end? The week of the last entry is over on a sunday. */
	readonly isOver: boolean
	/** Of a whole week in which every session has a rating; monotony and strain are `undefined` where all days are the same. */
	readonly spread:
		| { readonly monotony: Exact | undefined; readonly strain: Exact | undefined; readonly deviation: Deviation }
		| undefined
}

export interface DailyAverage {
	readonly spanDays: number
	readonly average: Exact
}

/** Days that a weighted average looks back. Source: Williams, West, Cross, Stokes 2017, Br J Sports Med 51(3):209-210. */
const averageSpans = [7, 28] as const

/** A first entry whose year is mistyped by centuries must not keep an editor waiting. */
const mostWeeks = 520

/**
 * Weekly load, monotony and strain of a lifter's logs, and the weighted averages of a day. Days without a session are 0, from the monday
 * of the first entry on. An average needs as many days as it looks back, and a rating for every session: before that it would speak of
 * the first day alone. The two averages are not set against each other: their ratio is no measure of risk.
 */
export function loggedLoad(lifter: string, programme: Programme): LoggedLoad {
	const entries = programme.logsOf(lifter).flatMap(log => log.entries)
	const dates = entries.flatMap(entry => entry.on ?? []).sort()
	const last = dates.at(-1)
	if (last === undefined) return { weeks: [], averages: [] }
	const earliest = addDays(mondayOf(last), -7 * (mostWeeks - 1))
	const monday = mondayOf(dates.find(date => date >= earliest) ?? last)
	const done = entries.flatMap(datedSession).filter(({ on }) => on >= monday)
	const days = daysBetween(monday, last) + 1
	const loads = dailyLoads(
		done.map(({ on, load }) => ({ on, load: load ?? zero })),
		monday,
		7 * Math.ceil(days / 7),
	)
	const deviation = limitsFor(lifter, programme).deviation?.value ?? 'population'
	const weeks = Array.from({ length: Math.ceil(days / 7) }, (_, week): LoggedWeek => {
		const from = addDays(monday, 7 * week)
		const sunday = addDays(from, 6)
		const ofWeek = done.filter(({ on }) => on >= from && on <= sunday)
		const unrated = ofWeek.filter(({ load }) => load === undefined).length
		const isOver = last >= sunday
		const spread = loadSpread(loads.slice(7 * week, 7 * week + 7), deviation)
		const { monotony, strain } = spread
		return {
			monday: from,
			sessions: ofWeek.length,
			unrated,
			load: spread.total,
			isOver,
			spread: isOver && unrated === 0 ? { monotony, strain, deviation } : undefined,
		}
	})
	const isRated = done.every(({ load }) => load !== undefined)
	const averages = averageSpans.flatMap((spanDays): DailyAverage[] => {
		const average = weightedAverages(loads.slice(0, days), spanDays).at(-1)
		return isRated && days >= spanDays && average !== undefined ? [{ spanDays, average }] : []
	})
	return { weeks, averages }
}

/** A session that was done on a date, with its load where it has a rating; an entry with a note alone is none. */
function datedSession({ on, missed, session, lifts, felt }: LogEntry): { on: CalendarDate; load: Exact | undefined }[] {
	const isDone = !missed && (session !== undefined || lifts.length > 0 || felt !== undefined)
	return on === undefined || !isDone ? [] : [{ on, load: felt && sessionLoad(felt) }]
}
