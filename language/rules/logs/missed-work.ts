import { daysBetween } from '../../compute/calendar.ts'
import { entriesOf, todayOf } from '../../compute/logged-sessions.ts'
import type { Plan } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import { groupedBy } from '../common/groups.ts'
import { titleOfSession } from '../common/moves.ts'
import { planSessions } from '../common/placed-sessions.ts'
import { titleOf } from '../common/titles.ts'
import { counted, inWords } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import page from './missed-work.md'
import { plannedSessions } from './planned-sessions.ts'

/** So long a log may lag behind. */
const daysToWrite = 7
/** A log without an entry in so many days is not kept any more, and no session is missing from it. */
const daysOfUse = 28

export const missedWork: Rule = {
	code: 'missed-work',
	area: 'logs',
	level: 'info',
	summary: 'A planned session, more than a week ago, has no entry in a log that is kept.',
	source: 'common practice',
	fix: 'none',
	since: '0.1.0',
	page,
	check: { plan: checkPlan },
}

function checkPlan(plan: Plan, programme: Programme): Finding[] {
	const lifter = programme.find('lifter', plan.lifter.text)
	const today = lifter && todayOf(lifter, programme)
	if (lifter === undefined || today === undefined) return []
	const past = entriesOf(lifter, programme).filter(({ on }) => on <= today)
	const [first] = past
	const last = past.at(-1)
	if (first === undefined || last === undefined || daysBetween(last.on, today) > daysOfUse) return []
	const written = new Set([...plannedSessions(lifter, programme).values()].flat())
	// What was planned before the log begins was never meant to stand in it.
	const missing = planSessions(plan, programme).filter(
		session =>
			session.date >= first.on &&
			daysBetween(session.date, today) > daysToWrite &&
			session.items.some(item => item.working) &&
			!written.has(session),
	)
	return groupedBy(missing, session => String(session.run.run.span.start)).map(same => {
		const [{ run }] = same
		const shown = same.slice(0, 3).map(({ session, date }) => `${titleOfSession(session)} of ${date}`)
		const more = same.length > 3 ? [`${same.length - 3} more`] : []
		return {
			span: run.run.header,
			message: `${counted(same.length, 'planned session')} of ${titleOf('lifter', plan.lifter.text, programme)}, more than ${daysToWrite} days before ${today}, ${same.length === 1 ? 'has' : 'have'} no entry in the log: ${inWords([...shown, ...more])} (common practice). Write what was done, or \`missed\` with the reason.`,
			source: 'common practice',
			related: [{ definition: last.log, span: last.entry.span, message: 'The last entry.' }],
		}
	})
}
