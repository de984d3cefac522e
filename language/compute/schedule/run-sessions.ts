import type { Plan } from '../../model/definitions.ts'
import type { Programme } from '../../model/programme.ts'
import type { CalendarDate, Weekday } from '../../model/quantities.ts'
import type { BlockOutline, PlannedSession, ScheduledRun } from '../../model/schedule.ts'
import { addDays, mondayOf, weekdayIndex } from '../calendar.ts'
import { isMovable } from '../outline/placements.ts'
import { outlineBlock, workOutOutline } from '../outline.ts'
import { type ChangedBlock, changedBlock } from './changed-block.ts'
import { movedOn, shiftsOf } from './pauses.ts'
import { type PlacedRun, placedRuns } from './placed-runs.ts'

/** A session of a run, on the day for which it is meant. */
interface MeantSession {
	readonly planned: PlannedSession
	readonly changed: ChangedBlock
	/** Week of the block, from 1. */
	readonly blockWeek: number
	/** Week of the run, from 1. */
	readonly runWeek: number
	readonly deload: boolean
	/** Before pauses have moved anything on; `undefined` where its `day N` has no weekday. */
	readonly meant: CalendarDate | undefined
}

/** A session of a run, on the day on which pauses let it stand. */
export interface PlacedSession extends MeantSession {
	readonly date: CalendarDate | undefined
	/** A pause would move it into a later run that has a day of its own: that one stands, and this falls away. */
	readonly overrun: boolean
}

/** A run with its sessions, in the order of the block. */
export interface RunSessions {
	readonly run: ScheduledRun
	readonly sessions: readonly PlacedSession[]
}

/** The runs of a plan with all their sessions, on their days. */
export function runSessions(plan: Plan, programme: Programme): readonly RunSessions[] {
	const placed = placedRuns(plan, programme).map(run => ({ run, sessions: meantSessions(run, plan, programme) }))
	return placed.map(({ run, sessions }): RunSessions => {
		const start = plan.start?.value
		const together = placed.filter(one => one.run.chain === run.chain).flatMap(one => one.sessions)
		const dates = together.flatMap(({ meant }) => (meant !== undefined && (start === undefined || meant >= start) ? [meant] : []))
		const shifts = plan.pauses.length === 0 ? [] : shiftsOf(plan.pauses, dates)
		const fixed = placed.find(one => one.run.chain > run.chain && one.run.monday > run.monday)?.run.monday
		const moved = sessions.map((session): PlacedSession => {
			const { meant } = session
			const date = meant && movedOn(meant, shifts)
			const overrun = fixed !== undefined && meant !== undefined && date !== undefined && meant < fixed && date >= fixed
			return { ...session, date, overrun }
		})
		return { run: scheduledRun(run, moved, start, date => movedOn(date, shifts)), sessions: moved }
	})
}

function meantSessions(placed: PlacedRun, plan: Plan, programme: Programme): readonly MeantSession[] {
	const { run, block, blockWeeks, times, monday } = placed
	return Array.from({ length: times }, (_, index) => index).flatMap(before => {
		const changed = changedBlock(block, run, before * blockWeeks, blockWeeks)
		return outlineOf(placed, changed, before, programme).weeks.flatMap(({ week, deload, sessions }) =>
			sessions.map((planned): MeantSession => {
				const weekday = weekdayFor(planned, plan, changed)
				const runWeek = before * blockWeeks + week
				const meant = weekday && addDays(monday, 7 * (runWeek - 1) + weekdayIndex(weekday))
				return { planned, changed, blockWeek: week, runWeek, deload, meant }
			}),
		)
	})
}

function outlineOf({ run, block }: PlacedRun, changed: ChangedBlock, before: number, programme: Programme): BlockOutline {
	const added = run.eachTime !== undefined && before > 0 ? { step: run.eachTime, times: before } : undefined
	if (changed.block === block && added === undefined) return outlineBlock(block, programme)
	return workOutOutline(changed.block, programme, added)
}

/** The weekday that a run moves a session of one day to, else its day's own, else the plan's for its `day N`. */
function weekdayFor({ session, day }: PlannedSession, plan: Plan, changed: ChangedBlock): Weekday | undefined {
	const ofDay = day?.number === undefined ? undefined : plan.days?.value[day.number - 1]
	return (isMovable(session, changed.block) ? changed.moves.get(session.name.text) : undefined) ?? day?.weekday ?? ofDay
}

function scheduledRun(
	{ run, block, blockWeeks, times, monday: first }: PlacedRun,
	sessions: readonly PlacedSession[],
	start: CalendarDate | undefined,
	moved: (date: CalendarDate) => CalendarDate,
): ScheduledRun {
	const kept = sessions.filter(session => !session.overrun)
	const lastWeek = kept.length === sessions.length ? blockWeeks * times : Math.max(0, ...kept.map(session => session.runWeek))
	const numbers = Array.from({ length: lastWeek }, (_, index) => index + 1)
	const mondaysOf = numbers.map(week => {
		const dates = kept.flatMap(session => (session.runWeek === week && session.date !== undefined ? [session.date] : []))
		const own = [...new Set(dates.map(mondayOf))].sort()
		return own.length > 0 ? own : [moved(addDays(first, 7 * (week - 1)))]
	})
	const mondays = mondaysOf.map(own => own[0]!)
	const monday = mondays[0] ?? first
	return {
		run,
		block,
		firstDay: start !== undefined && start > monday ? start : monday,
		monday,
		weeks: numbers.length,
		blockWeeks,
		mondays,
		tornMondays: mondaysOf.flatMap(own => (own.length > 1 ? own : [])),
		lastDay: mondays.length > 0 ? addDays(mondaysOf.at(-1)?.at(-1) ?? first, 6) : addDays(first, -1),
	}
}
