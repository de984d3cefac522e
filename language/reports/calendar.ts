import { addDays, daysBetween, mondayOf } from '../compute/calendar.ts'
import { sessionSeconds } from '../compute/duration.ts'
import { planVolume } from '../compute/volume.ts'
import type { Plan } from '../model/definitions.ts'
import type { Programme } from '../model/programme.ts'
import type { CalendarDate, PartOfDay } from '../model/quantities.ts'
import type { ScheduledSession } from '../model/schedule.ts'
import { itemsOnSheet } from './load-sheet.ts'

/** A plan on the calendar: every week from the first to the last, those without a session too, and its meets. */
export interface PlanCalendar {
	readonly weeks: readonly CalendarWeek[]
}

export interface CalendarWeek {
	readonly monday: CalendarDate
	/** Of the plan, from 1. */
	readonly week: number
	/** The blocks that have a week of theirs here. */
	readonly blocks: readonly CalendarBlock[]
	/** Pauses that reach into the week, each with its reason. */
	readonly pauses: readonly { readonly because: string | null }[]
	/** Days with something on them, in order. */
	readonly days: readonly CalendarDay[]
}

export interface CalendarBlock {
	readonly block: string
	/** Week of the block, from 1. */
	readonly week: number
	readonly deload: boolean
}

export interface CalendarDay {
	readonly date: CalendarDate
	readonly sessions: readonly CalendarSession[]
	/** Titles of the day's meets; an empty one where the plan gives none. */
	readonly meets: readonly string[]
}

export interface CalendarSession {
	readonly block: string
	readonly session: string
	readonly title: string | null
	readonly part: PartOfDay | null
	readonly deload: boolean
	/** Low end of the estimated length. */
	readonly minutes: number
	/** Titles of its main work, and of what it tests. */
	readonly main: readonly string[]
}

/** So many weeks without anything are shown one by one; more of them are a slip in a date. */
const mostEmptyWeeks = 26

/** The weeks of a plan. A meet far outside of it has its week, and the empty ones before it are left out. */
export function planCalendar(plan: Plan, programme: Programme): PlanCalendar {
	const { weeks } = planVolume(plan, programme)
	const blocks = Map.groupBy(
		weeks.flatMap(({ monday, block, blockWeek, deload }) =>
			monday === undefined ? [] : [{ monday, block: block.name.text, week: blockWeek, deload }],
		),
		({ monday }) => monday,
	)
	const sessions = Map.groupBy(
		weeks.flatMap(week => week.sessions.map(({ session }) => session)).filter(session => itemsOnSheet(session).length > 0),
		({ date }) => date,
	)
	const meets = Map.groupBy(plan.meets, ({ on }) => on)
	const known = new Set([...blocks.keys(), ...[...sessions.keys(), ...meets.keys()].map(mondayOf)])
	const first = [...known].sort()[0]
	if (first === undefined) return { weeks: [] }
	return {
		weeks: withEmptyWeeks([...known].sort()).map((monday): CalendarWeek => {
			const days = Array.from({ length: 7 }, (_, day) => addDays(monday, day))
			return {
				monday,
				week: daysBetween(first, monday) / 7 + 1,
				blocks: (blocks.get(monday) ?? []).map(({ block, week, deload }) => ({ block, week, deload })),
				pauses: plan.pauses
					.filter(({ from, to }) => from <= addDays(monday, 6) && to >= monday)
					.map(({ because }) => ({ because: because?.text ?? null })),
				days: days
					.filter(date => sessions.has(date) || meets.has(date))
					.map(date => ({
						date,
						sessions: (sessions.get(date) ?? []).map(calendarSession),
						meets: (meets.get(date) ?? []).map(({ title }) => title?.text ?? ''),
					})),
			}
		}),
	}
}

function withEmptyWeeks(mondays: readonly CalendarDate[]): CalendarDate[] {
	return mondays.flatMap((monday, index) => {
		const before = mondays[index - 1]
		const between = before === undefined ? 0 : daysBetween(before, monday) / 7 - 1
		if (before === undefined || between > mostEmptyWeeks) return [monday]
		return [...Array.from({ length: between }, (_, week) => addDays(before, 7 * (week + 1))), monday]
	})
}

function calendarSession(session: ScheduledSession): CalendarSession {
	const { run, deload, items } = session
	const main = items.filter(({ role, working }) => working && (role === 'main' || role === 'test'))
	return {
		block: run.block.name.text,
		session: session.session.name.text,
		title: session.session.title?.text ?? null,
		part: session.part ?? null,
		deload,
		minutes: Math.round(sessionSeconds(items).from.valueOf() / 60),
		main: [...new Set(main.map(({ movement, movementName }) => movement?.title?.text ?? movementName.text))],
	}
}
