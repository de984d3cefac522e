import { weekdayIndex } from '../../compute/calendar.ts'
import { isMovable } from '../../compute/outline/placements.ts'
import type { Block, Plan, RunChange, Session, SessionDay } from '../../model/definitions.ts'
import type { Programme } from '../../model/programme.ts'
import { type Weekday, weekdays } from '../../model/quantities.ts'
import { runLine } from './corrections.ts'
import { type DatedSession, planSessions } from './placed-sessions.ts'
import { type Proposal, withSession } from './proposals.ts'
import { withRunChanges } from './trial-plans.ts'

/** Moves of a block's session to another weekday, between the same neighbours; the nearest days first. */
export function movesInBlock(session: Session, block: Block): readonly Proposal<Block>[] {
	const [own] = session.days
	const weekday = own?.weekday
	if (own === undefined || weekday === undefined || !isMovable(session, block)) return []
	const others = [...block.sessions.filter(each => each !== session), ...block.turns].flatMap(({ days }) => weekdaysOf(days))
	return openDays(weekday, others).map(day => ({
		correction: { title: `Move ${titleOfSession(session)} to ${day}`, edits: [{ span: own.span, text: day }] },
		changed: withSession(block, session, one => ({ ...one, days: [{ ...own, weekday: day }] })),
	}))
}

/** The same for one run of a plan, by a line of the run. */
export function movesInPlan({ run: scheduled, session, scheduled: { weekday } }: DatedSession, plan: Plan, programme: Programme) {
	const { run } = scheduled
	const name = session.name.text
	if (!isMovable(session, scheduled.block)) return []
	if (run.changes.some(change => change.kind === 'move' && change.session.text === name)) return []
	const ofRun = planSessions(plan, programme).filter(each => each.run === scheduled && each.session.name.text !== name)
	const others = [...new Set(ofRun.map(each => each.scheduled.weekday))]
	return openDays(weekday, others).map((day): Proposal<Plan> => {
		const span = run.header
		const change: RunChange = { kind: 'move', session: { text: name, span }, to: day, because: undefined, span }
		return {
			correction: {
				title: `Move ${titleOfSession(session)} to ${day} in this plan`,
				edits: [runLine(run, `move ${name} to ${day}`)],
			},
			changed: withRunChanges(plan, run, [change]),
		}
	})
}

function weekdaysOf(days: readonly SessionDay[]): readonly Weekday[] {
	return days.flatMap(day => day.weekday ?? [])
}

export function titleOfSession(session: Session): string {
	return session.title?.text ?? session.name.text
}

/** Days that no other session has, so that the order of the week stays as it is. */
function openDays(from: Weekday, others: readonly Weekday[]): readonly Weekday[] {
	const before = (day: Weekday) => others.filter(other => weekdayIndex(other) < weekdayIndex(day)).length
	const distance = (day: Weekday) => Math.abs(weekdayIndex(day) - weekdayIndex(from))
	return weekdays
		.filter(day => day !== from && !others.includes(day) && before(day) === before(from))
		.sort((a, b) => distance(a) - distance(b))
}
