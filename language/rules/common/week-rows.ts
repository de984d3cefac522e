import { addDays, daysBetween } from '../../compute/calendar.ts'
import { outlineBlock } from '../../compute/outline.ts'
import { schedulePlan } from '../../compute/schedule.ts'
import type { Block, Lifter } from '../../model/definitions.ts'
import type { Programme } from '../../model/programme.ts'
import type { CalendarDate } from '../../model/quantities.ts'
import { groupedBy } from './groups.ts'
import { blockSessions, type DatedSession, lifterSessions, type PlacedSession } from './placed-sessions.ts'

/** One of the weeks of a block, or of a lifter's calendar, that are looked at in a row. */
export interface WeekInRow<S extends PlacedSession> {
	/** From 1, without gaps. */
	readonly week: number
	readonly deload: boolean
	readonly hasWork: boolean
	readonly sessions: readonly S[]
}

export interface CalendarWeek extends WeekInRow<DatedSession> {
	readonly monday: CalendarDate
	/** No session of it lies before a start or lacks its day: nothing in it is missing. */
	readonly isWhole: boolean
}

/** The weeks of a block, whoever runs it. */
export function blockWeeks(block: Block, programme: Programme): readonly WeekInRow<PlacedSession>[] {
	const sessions = blockSessions(block, programme)
	return outlineBlock(block, programme).weeks.map(({ week, deload, hasWork }) => ({
		week,
		deload,
		hasWork,
		sessions: sessions.filter(session => session.blockWeek === week),
	}))
}

/** The calendar weeks from a lifter's first session to the last, over all plans, those without a session included. */
export function calendarWeeks(lifter: Lifter, programme: Programme): readonly CalendarWeek[] {
	return programme.derived(lifter, workOutCalendarWeeks)
}

function workOutCalendarWeeks(lifter: Lifter, programme: Programme): readonly CalendarWeek[] {
	const sessions = lifterSessions(lifter, programme)
	const first = sessions[0]?.monday
	const last = sessions.at(-1)?.monday
	if (first === undefined || last === undefined) return []
	const byMonday = new Map(groupedBy(sessions, session => session.monday).map(week => [week[0].monday, week]))
	const torn = new Set(
		programme
			.plansOf(lifter.name.text)
			.flatMap(plan => schedulePlan(plan, programme).leftOut)
			.map(({ run, runWeek }) => run.mondays[runWeek - 1] ?? run.monday),
	)
	return Array.from({ length: daysBetween(first, last) / 7 + 1 }, (_, index): CalendarWeek => {
		const monday = addDays(first, 7 * index)
		const ofWeek = byMonday.get(monday) ?? []
		const working = ofWeek.filter(session => session.items.some(item => item.working))
		return {
			week: index + 1,
			monday,
			sessions: ofWeek,
			hasWork: working.length > 0,
			// Where two plans meet, a week is as light as the one that is not deloading.
			deload: working.length > 0 && working.every(session => session.deload),
			isWhole: !torn.has(monday),
		}
	})
}
