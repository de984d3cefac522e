import { daysBetween, mondayOf, weekdayIndex } from '../../compute/calendar.ts'
import { outlineBlock } from '../../compute/outline.ts'
import { schedulePlan } from '../../compute/schedule.ts'
import { dayText } from '../../compute/session-days.ts'
import type { Block, Lifter, Plan, Session, SessionDay } from '../../model/definitions.ts'
import type { Programme } from '../../model/programme.ts'
import type { CalendarDate } from '../../model/quantities.ts'
import type { PlannedItem, ScheduledItem, ScheduledRun, ScheduledSession } from '../../model/schedule.ts'

/**
 * Sessions on a line of days, so that one check serves a block (whatever the lifter) and a lifter's calendar (all plans together).
 */
export interface PlacedSession {
	readonly session: Session
	readonly items: readonly PlannedItem[]
	readonly deload: boolean
	/** Of the block, from 1. */
	readonly blockWeek: number
	/** Of the run, from 1: counted through where the block is run several times. */
	readonly runWeek: number
	/** Place on the line of days; `undefined` where a plan must say which day it is. */
	readonly day: number | undefined
	/** Its day in the week, if only by a number; `undefined` where nothing says it. */
	readonly placed: SessionDay | undefined
	/** Sessions of one key are on one day: an exposure. */
	readonly dayKey: string
	/** "monday", "day 2", "monday 2026-10-05". */
	readonly dayText: string
}

export interface DatedSession extends PlacedSession {
	readonly items: readonly ScheduledItem[]
	readonly day: number
	readonly date: CalendarDate
	readonly monday: CalendarDate
	readonly plan: Plan
	readonly run: ScheduledRun
	readonly scheduled: ScheduledSession
}

/** Every session of every week of a block. Day 0 is the monday of week 1. */
export function blockSessions(block: Block, programme: Programme): readonly PlacedSession[] {
	return programme.derived(block, placeInBlock)
}

function placeInBlock(block: Block, programme: Programme): readonly PlacedSession[] {
	return outlineBlock(block, programme).weeks.flatMap(({ week, deload, sessions }) =>
		sessions.map(({ session, items, day }): PlacedSession => {
			const weekday = day?.weekday
			const dayOfWeek = day === undefined ? session.name.text : dayText({ ...day, part: undefined })
			return {
				session,
				items,
				deload,
				blockWeek: week,
				runWeek: week,
				day: weekday && 7 * (week - 1) + weekdayIndex(weekday),
				placed: day,
				dayKey: `${week} ${dayOfWeek}`,
				dayText: dayOfWeek,
			}
		}),
	)
}

/** The dated sessions of a plan, by date. */
export function planSessions(plan: Plan, programme: Programme): readonly DatedSession[] {
	return programme.derived(plan, placePlan)
}

function placePlan(plan: Plan, programme: Programme): readonly DatedSession[] {
	return schedulePlan(plan, programme).sessions.map(session => dated(session, plan))
}

/** The dated sessions of all plans of a lifter, by date. */
export function lifterSessions(lifter: Lifter, programme: Programme): readonly DatedSession[] {
	return programme.derived(lifter, placeOnCalendar)
}

function placeOnCalendar(lifter: Lifter, programme: Programme): readonly DatedSession[] {
	const sessions = programme.plansOf(lifter.name.text).flatMap(plan => planSessions(plan, programme))
	// Sorting is stable: sessions of one date stay in the order of their plans and blocks.
	return sessions.sort((a, b) => a.day - b.day)
}

function dated(scheduled: ScheduledSession, plan: Plan): DatedSession {
	const { session, items, deload, blockWeek, runWeek, date, weekday, part, run } = scheduled
	return {
		session,
		items,
		deload,
		blockWeek,
		runWeek,
		day: daysBetween('1970-01-01', date),
		placed: { weekday, number: undefined, part, span: session.header },
		dayKey: date,
		dayText: `${weekday} ${date}`,
		date,
		monday: mondayOf(date),
		plan,
		run,
		scheduled,
	}
}
