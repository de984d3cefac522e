import { fills } from '../../compute/outline/deload.ts'
import { outlineBlock } from '../../compute/outline.ts'
import type { Block } from '../../model/definitions.ts'
import type { Programme } from '../../model/programme.ts'
import type { PlannedItem, PlannedSession } from '../../model/schedule.ts'
import type { Span } from '../../model/text.ts'

/** A session in a week, and what of it nobody has said anything about. */
export interface SessionInWeek extends PlannedSession {
	readonly week: number
	/** Items without a prescription, a `skip` or a deload line for that week. */
	readonly unsaid: readonly PlannedItem[]
	/** None of several items has a word for that week: the session is what is missing, not each of them. */
	readonly isWhollyUnsaid: boolean
}

/** A line that does not read may have said it; the fault is reported where it is. */
export function isRead(span: Span, { faults }: Block): boolean {
	const isUnread = (code: string) => code === 'syntax' || code === 'bad-number'
	return !faults.some(fault => isUnread(fault.code) && fault.span.start <= span.end && span.start <= fault.span.end)
}

/** A test has its week; that it does not stand in the others needs no word. */
function isTestOfOtherWeeks({ role, item }: PlannedItem): boolean {
	return role === 'test' && item.weekLines.length > 0
}

export function sessionsInWeeks(block: Block, programme: Programme): readonly SessionInWeek[] {
	const { deload } = block
	return outlineBlock(block, programme).weeks.flatMap(week =>
		week.sessions.map(planned => {
			// What a deload line cannot fill is missing in the training week before it, and said there.
			const isFilled = week.deload && deload !== undefined && fills(deload)
			const unsaid = isFilled
				? []
				: planned.items.filter(item => item.from === 'none' && !isTestOfOtherWeeks(item) && isRead(item.item.span, block))
			const written = planned.items.filter(item => item.from !== 'computed-warm-up')
			const isWhollyUnsaid = unsaid.length > 1 && unsaid.length === written.length
			return { ...planned, week: week.week, unsaid, isWhollyUnsaid }
		}),
	)
}
