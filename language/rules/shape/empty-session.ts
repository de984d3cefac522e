import { placementsOf } from '../../compute/outline/placements.ts'
import { weekCount } from '../../compute/outline/week-choice.ts'
import type { Block, Session } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { PlannedItem } from '../../model/schedule.ts'
import { groupedBy } from '../common/groups.ts'
import { titleOfSession } from '../common/moves.ts'
import { weeksInWords } from '../common/weeks.ts'
import type { Rule } from '../rule.ts'
import page from './empty-session.md'
import { isRead, type SessionInWeek, sessionsInWeeks } from './missing-work.ts'

export const emptySession: Rule = {
	code: 'empty-session',
	area: 'shape',
	level: 'warning',
	summary: 'A session has no items, no turn, or no work in a week without saying that it rests.',
	source: "the language's own rules",
	fix: 'none',
	since: '0.1.0',
	page,
	check: { block: checkBlock },
}

function checkBlock(block: Block, programme: Programme): Finding[] {
	const empty = sessionsInWeeks(block, programme).filter(one => isEmpty(one) && isRead(one.session.span, block))
	const placed = new Set(placementsOf(block).map(placement => placement.session))
	const never = block.sessions.filter(session => !placed.has(session)).map(session => neverComes(session, block))
	const found = groupedBy(empty, one => String(one.session.span.start)).map(same => {
		const [{ session }] = same
		const title = titleOfSession(session)
		const weeks = weeksInWords(same.map(one => one.week))
		const message =
			session.items.length === 0
				? `${title} has nothing in it. Write its items below it, as in main deadlift 4 x 5 at 70%.`
				: same.some(one => one.isWhollyUnsaid)
					? `${title} has nothing to do in ${weeks}: none of its items has a line for it. Write their sets, or "skip" where the day is off.`
					: `${title} has only warm-ups in ${weeks}. Give it work, or "skip" all of its items where the day is off.`
		return { span: session.header, message }
	})
	return [...found, ...never]
}

/** A turn of more sessions than the block has days for. */
function neverComes(session: Session, block: Block): Finding {
	const message = `The turn never comes to ${titleOfSession(session)}: ${weekCount(block) === 1 ? 'the one week of these days is' : `the ${weekCount(block)} weeks of these days are`} over before. Give the block more weeks, or the turn more days.`
	return { span: session.header, message }
}

function isEmpty({ items, unsaid, isWhollyUnsaid }: SessionInWeek): boolean {
	if (isWhollyUnsaid || items.length === 0) return true
	// One item without a word is that item's fault, and reported there.
	return unsaid.length === 0 && !items.some(isWork) && !items.every(rests)
}

function isWork({ working, role, sets }: PlannedItem): boolean {
	return working || (role === 'conditioning' && sets.length > 0)
}

/** Skipped, filled with nothing, or a computed warm-up with no work to lead to. */
function rests({ sets }: PlannedItem): boolean {
	return sets.length === 0
}
