import { addDays, daysBetween, mondayOf, weekdayIndex } from '../../compute/calendar.ts'
import { limitsFor } from '../../compute/limits.ts'
import type { Block, Lifter, Session } from '../../model/definitions.ts'
import type { Programme } from '../../model/programme.ts'
import { type CalendarDate, type Weekday, weekdays } from '../../model/quantities.ts'
import type { Correction } from '../../model/reading.ts'
import { closePairs } from './close-exposures.ts'
import { runLine } from './corrections.ts'
import { heavyPairs } from './heavy-pairs.ts'
import { blockSessions, type DatedSession, lifterSessions, type PlacedSession } from './placed-sessions.ts'

/** The first days are offered, nearest to where the session is. */
const mostMoves = 2

/**
 * Moves of a block's session to a weekday that no other session has, between the same neighbours, on which every lifter who runs the
 * block is available, so that no days of rest are lost and `fits` holds for the block's sessions as they are then.
 */
export function movesInBlock(
	session: Session,
	block: Block,
	programme: Programme,
	fits: (sessions: readonly PlacedSession[]) => boolean,
): Correction[] {
	const { daySpan, weekday } = session
	if (daySpan === undefined || weekday === undefined) return []
	const sessions = blockSessions(block, programme)
	const others = block.sessions.filter(each => each !== session).flatMap(each => each.weekday ?? [])
	const before = (day: Weekday) => others.filter(other => weekdayIndex(other) < weekdayIndex(day)).length
	const open = weekdays.filter(
		day =>
			day !== weekday && !others.includes(day) && before(day) === before(weekday) && isOpenToAll(day, session, block, programme),
	)
	const faults = restFaults(sessions, undefined, programme)
	return nearestFirst(open, weekday)
		.filter(day => {
			const after = sessions.map(each => (each.session === session ? placedOn(each, day) : each))
			return restFaults(after, undefined, programme) <= faults && fits(after)
		})
		.slice(0, mostMoves)
		.map(day => ({ title: `Move ${titleOfSession(session)} to ${day}`, edits: [{ span: daySpan, text: day }] }))
}

/** The same for one run of a plan, with the lifter's other sessions in view. */
export function movesInPlan(
	moved: DatedSession,
	lifter: Lifter,
	programme: Programme,
	fits: (sessions: readonly DatedSession[]) => boolean = () => true,
): Correction[] {
	const { run, session, scheduled } = moved
	const name = session.name.text
	if (run.run.changes.some(change => change.kind === 'move' && change.session.text === name)) return []
	const sessions = lifterSessions(lifter, programme)
	const isMoved = (each: DatedSession) => each.run === run && each.session.name.text === name
	const others = sessions.filter(each => !isMoved(each)).map(each => each.date)
	const before = (date: CalendarDate) => others.filter(other => other < date).length
	const open = weekdays.filter(day => {
		const isAvailable = lifter.available?.value.includes(day) ?? true
		return (
			day !== scheduled.weekday &&
			isAvailable &&
			sessions.filter(isMoved).every(each => {
				const date = addDays(each.monday, weekdayIndex(day))
				return !others.includes(date) && date >= run.firstDay && before(date) === before(each.date)
			})
		)
	})
	const faults = restFaults(sessions, lifter.name.text, programme)
	return nearestFirst(open, scheduled.weekday)
		.filter(day => {
			const after = sessions.map(each => (isMoved(each) ? datedOn(each, day) : each)).sort((a, b) => a.day - b.day)
			return restFaults(after, lifter.name.text, programme) <= faults && fits(after)
		})
		.slice(0, mostMoves)
		.map(day => ({
			title: `Move ${titleOfSession(session)} to ${day} in this plan`,
			edits: [runLine(run.run, `move ${name} to ${day}`)],
		}))
}

/** How often sessions come too soon after one another. */
function restFaults(sessions: readonly PlacedSession[], lifter: string | undefined, programme: Programme): number {
	const { estimator, heavy, heavyHingeAndSquat } = limitsFor(lifter, programme)
	const formula = estimator?.value ?? 'epley'
	const apart = heavyHingeAndSquat?.value.apartDays
	const inARow = heavy && apart !== undefined ? heavyPairs(sessions, heavy.value.fromPercent, apart, formula) : []
	return closePairs(sessions, formula).length + inARow.length
}

export function titleOfSession(session: Session): string {
	return session.title?.text ?? session.name.text
}

/** The block's session on another weekday. */
function placedOn(placed: PlacedSession, day: Weekday): PlacedSession {
	const { blockWeek } = placed
	return { ...placed, day: 7 * (blockWeek - 1) + weekdayIndex(day), dayKey: `${blockWeek} ${day}`, dayText: day }
}

function datedOn(session: DatedSession, day: Weekday): DatedSession {
	const date = addDays(mondayOf(session.date), weekdayIndex(day))
	return { ...session, date, day: session.day + daysBetween(session.date, date), dayKey: date, dayText: `${day} ${date}` }
}

/** A plan that moves the session itself does not follow the block. */
function isOpenToAll(day: Weekday, session: Session, block: Block, programme: Programme): boolean {
	return programme.all('plan').every(plan => {
		const follows = plan.runs.some(
			run =>
				run.block.text === block.name.text &&
				!run.changes.some(change => change.kind === 'move' && change.session.text === session.name.text),
		)
		return !follows || (programme.find('lifter', plan.lifter.text)?.available?.value.includes(day) ?? true)
	})
}

function nearestFirst(days: readonly Weekday[], from: Weekday): readonly Weekday[] {
	const distance = (day: Weekday) => Math.abs(weekdayIndex(day) - weekdayIndex(from))
	return [...days].sort((a, b) => distance(a) - distance(b))
}
