import { addDays, mondayOf } from '../compute/calendar.ts'
import { decimal } from '../compute/exact.ts'
import { type DatedEntry, entriesOf, plannedByEntry, type SessionOnDay } from '../compute/logged-sessions.ts'
import { schedulePlan } from '../compute/schedule.ts'
import { sessionLoad } from '../compute/session-load.ts'
import type { Definition, Lifter, LoggedLift, LoggedSet } from '../model/definitions.ts'
import type { Programme } from '../model/programme.ts'
import type { CalendarDate, Unit } from '../model/quantities.ts'
import type { ScheduledSession } from '../model/schedule.ts'
import type { Span } from '../model/text.ts'
import { loadSheet, type SheetItem, type SheetSession, sessionsOnSheet } from './load-sheet.ts'
import type { Place } from './preview.ts'
import { type LoggedWeek, loggedLoad } from './session-load.ts'

/** A lifter's log beside the plans: week by week what was planned, what was done, and how it felt. */
export interface PlannedAgainstDone {
	readonly lifter: string
	/** The lifter's title, the name where there is none. */
	readonly title: string
	readonly weeks: readonly LogWeek[]
}

export interface LogWeek {
	readonly monday: CalendarDate
	/** Sessions that the plans have up to the last entry. */
	readonly planned: number
	/** Of those, the ones that were done. */
	readonly done: number
	readonly load: WeekLoad | null
	/** By date. */
	readonly sessions: readonly LogSession[]
}

/** Session load, rating × minutes, in arbitrary units. */
export interface WeekLoad {
	readonly total: string
	/** Sessions without a rating, which are in no sum. */
	readonly unrated: number
	/** `null` where the week is not whole, or where all its days are the same. */
	readonly monotony: string | null
	readonly strain: string | null
}

export interface LogSession {
	/** The day of the entry, else the planned day. */
	readonly date: CalendarDate
	readonly session: string | null
	readonly title: string | null
	readonly state:
		| 'done'
		| 'missed'
		/** Planned up to the last entry, and no entry says what became of it. */
		| 'not-logged'
		/** Done, and in no plan of that week. */
		| 'beside-the-plan'
	/** Where it was done on another day than planned. */
	readonly plannedOn: CalendarDate | null
	readonly because: string | null
	readonly items: readonly LogItem[]
	/** Rating from 0 to 10, minutes, and their product. */
	readonly felt: { readonly rating: string; readonly minutes: string; readonly load: string } | null
	readonly hurt: readonly string[]
	readonly notes: readonly string[]
	/** The entry, else the plan; `null` where a page leads to no text. */
	readonly place: Place | null
}

export interface LogItem {
	readonly movement: string
	readonly title: string
	/** `null` for what was done beside the plan. */
	readonly planned: SheetItem | null
	readonly done: readonly DoneSets[]
	readonly place: Place | null
}

/** Sets that were done alike, one after the other. */
export interface DoneSets {
	readonly sets: number
	readonly reps: number | null
	readonly seconds: number | null
	readonly metres: number | null
	/** How long the distance took, or the time in which the reps were done. */
	readonly tookSeconds: number | null
	readonly load: string | null
	readonly unit: Unit | null
	readonly bodyweight: boolean
	readonly rpe: string | null
	readonly rir: string | null
	/** Reps that were tried and not made, of each of the sets. */
	readonly missed: number
	/** Title of the breakdown with which position was lost. */
	readonly brokeWith: string | null
	readonly eachSide: boolean
}

type PlaceOf = (definition: Definition, span: Span) => Place | undefined

/** Working sets are what a log is about; warm-ups are left out of the comparison. */
const comparedRoles: readonly string[] = ['main', 'accessory', 'test', 'conditioning']

interface PlannedDay extends SessionOnDay {
	readonly scheduled: ScheduledSession
	readonly sheet: SheetSession
}

/** @param lifter Name of a lifter whose logs are there; one that nobody defines has no plan to compare with. */
export function plannedAgainstDone(lifter: string, programme: Programme, placeOf?: PlaceOf): PlannedAgainstDone {
	const definition = programme.find('lifter', lifter)
	const title = definition?.title?.text ?? lifter
	const entries = definition ? entriesOf(definition, programme) : []
	const first = entries[0]
	const last = entries.at(-1)
	if (definition === undefined || first === undefined || last === undefined) return { lifter, title, weeks: [] }
	// What was planned before the log begins was never meant to stand in it, and what comes after its end is still ahead.
	const planned = plannedDays(definition, programme).filter(({ scheduled: { date } }) => date >= first.on && date <= last.on)
	const sessions = matched(entries, planned, programme, placeOf)
	const loads = new Map(loggedLoad(lifter, programme).weeks.map(week => [week.monday, week]))
	const mondays = [...new Set(sessions.map(({ date }) => mondayOf(date)))].sort()
	return {
		lifter,
		title,
		weeks: mondays.map(monday => {
			const ofWeek = sessions.filter(({ date }) => date >= monday && date <= addDays(monday, 6))
			const load = loads.get(monday)
			return {
				monday,
				planned: ofWeek.filter(({ state }) => state !== 'beside-the-plan').length,
				done: ofWeek.filter(({ state }) => state === 'done').length,
				load: load ? weekLoad(load) : null,
				sessions: ofWeek,
			}
		}),
	}
}

function weekLoad({ load, unrated, spread }: LoggedWeek): WeekLoad {
	return {
		total: decimal(load, 0),
		unrated,
		monotony: spread?.monotony ? decimal(spread.monotony, 2) : null,
		strain: spread?.strain ? decimal(spread.strain, 0) : null,
	}
}

function plannedDays(lifter: Lifter, programme: Programme): PlannedDay[] {
	return programme.plansOf(lifter.name.text).flatMap(plan => {
		const schedule = schedulePlan(plan, programme)
		const { sessions } = loadSheet(schedule, programme)
		return sessionsOnSheet(schedule).flatMap((scheduled, index): PlannedDay[] => {
			const sheet = sessions[index]
			return sheet && scheduled.items.some(item => item.working)
				? [{ plan, session: scheduled.session, date: scheduled.date, scheduled, sheet }]
				: []
		})
	})
}

/** Each entry with the planned session that it is about, and the planned sessions that no entry is about. */
function matched(
	entries: readonly DatedEntry[],
	planned: readonly PlannedDay[],
	programme: Programme,
	placeOf: PlaceOf | undefined,
): LogSession[] {
	const open = new Set(planned)
	const sessions = entries.filter(isSession)
	const byEntry = plannedByEntry(sessions, planned)
	const logged = sessions.map(one => {
		// A second entry about the same session is one more look at it.
		const about = (byEntry.get(one.entry) ?? []).filter(day => open.has(day))
		for (const day of about) open.delete(day)
		return logSession(one, about[0], programme, placeOf)
	})
	const missing = [...open].map(one => notLogged(one, placeOf))
	return [...logged, ...missing].sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0))
}

/** An entry with a note alone is none. */
function isSession({ entry }: DatedEntry): boolean {
	return (
		entry.missed || entry.session !== undefined || entry.lifts.length > 0 || entry.felt !== undefined || entry.hurt.length > 0
	)
}

function logSession(
	{ log, entry, on }: DatedEntry,
	about: PlannedDay | undefined,
	programme: Programme,
	placeOf: PlaceOf | undefined,
): LogSession {
	const { felt } = entry
	const plannedOn = about && about.sheet.date !== on ? about.sheet.date : null
	return {
		date: on,
		session: entry.session?.text ?? about?.sheet.session ?? null,
		title: about?.sheet.title ?? null,
		state: entry.missed ? 'missed' : about ? 'done' : 'beside-the-plan',
		plannedOn: plannedOn ?? null,
		because: entry.because?.text ?? null,
		items: logItems(entry.lifts, entry.missed ? undefined : about, lift => placeOf?.(log, lift.span) ?? null, programme),
		felt: felt
			? {
					rating: decimal(felt.rating),
					minutes: decimal(felt.seconds.div(60)),
					load: decimal(sessionLoad(felt), 0),
				}
			: null,
		hurt: entry.hurt.map(({ text }) => text),
		notes: entry.notes.map(({ text }) => text),
		place: placeOf?.(log, entry.span) ?? null,
	}
}

function notLogged({ plan, scheduled, sheet }: PlannedDay, placeOf: PlaceOf | undefined): LogSession {
	return {
		date: sheet.date,
		session: sheet.session,
		title: sheet.title,
		state: 'not-logged',
		plannedOn: null,
		because: null,
		items: [],
		felt: null,
		hurt: [],
		notes: [],
		place: placeOf?.(plan, scheduled.run.run.header) ?? null,
	}
}

/** Planned movements in their order with what was done of each; after them what was done beside them. */
function logItems(
	lifts: readonly LoggedLift[],
	about: PlannedDay | undefined,
	placeOfLift: (lift: LoggedLift) => Place | null,
	programme: Programme,
): LogItem[] {
	const open = new Set(lifts)
	const planned = (about?.sheet.items ?? []).filter(({ role, sets }) => comparedRoles.includes(role) && sets.length > 0)
	const compared = planned.map((item, index): LogItem => {
		const ofMovement = [...open].filter(({ movement }) => movement.text === item.movement)
		// One line for each time that the movement stands in the session; what is left is more of the last one.
		const isLast = !planned.slice(index + 1).some(({ movement }) => movement === item.movement)
		const done = isLast ? ofMovement : ofMovement.slice(0, 1)
		for (const lift of done) open.delete(lift)
		return {
			movement: item.movement,
			title: item.title,
			planned: item,
			done: doneSets(done, programme),
			place: done[0] ? placeOfLift(done[0]) : null,
		}
	})
	const beside = [...open].map(
		(lift): LogItem => ({
			movement: lift.movement.text,
			title: programme.find('movement', lift.movement.text)?.title?.text ?? lift.movement.text,
			planned: null,
			done: doneSets([lift], programme),
			place: placeOfLift(lift),
		}),
	)
	return [...compared, ...beside]
}

function doneSets(lifts: readonly LoggedLift[], programme: Programme): DoneSets[] {
	const folded: { key: string; sets: DoneSets }[] = []
	for (const set of lifts.flatMap(({ sets }) => sets)) {
		const facts = doneSet(set, programme)
		const key = JSON.stringify(facts)
		const last = folded.at(-1)
		if (last?.key === key) last.sets = { ...last.sets, sets: last.sets.sets + 1 }
		else folded.push({ key, sets: facts })
	}
	return folded.map(({ sets }) => sets)
}

function doneSet(set: LoggedSet, programme: Programme): DoneSets {
	const broke = set.brokeWith?.text
	return {
		sets: 1,
		reps: set.reps ?? null,
		seconds: set.seconds?.valueOf() ?? null,
		metres: set.metres?.valueOf() ?? null,
		tookSeconds: set.tookSeconds?.valueOf() ?? null,
		load: set.mass ? decimal(set.mass.amount) : null,
		unit: set.mass?.unit ?? null,
		bodyweight: set.bodyweight,
		rpe: set.rpe ? decimal(set.rpe) : null,
		rir: set.rir ? decimal(set.rir) : null,
		missed: set.missed,
		brokeWith: broke === undefined ? null : (programme.find('breakdown', broke)?.title?.text ?? broke),
		eachSide: set.eachSide,
	}
}
