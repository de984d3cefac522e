import { mondayOf } from '../../compute/calendar.ts'
import { type DatedEntry, entriesOf } from '../../compute/logged-sessions.ts'
import { schedulePlan } from '../../compute/schedule.ts'
import type { Lifter, Log } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import { lifterSessions } from '../common/placed-sessions.ts'
import { titleOf } from '../common/titles.ts'
import { inWords } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import page from './not-in-plan.md'
import { plannedSessions } from './planned-sessions.ts'

export const notInPlan: Rule = {
	code: 'not-in-plan',
	area: 'logs',
	level: 'info',
	summary: 'A logged session is in no plan of the lifter in that week.',
	source: 'the plans of the lifter',
	fix: 'none',
	since: '0.1.0',
	page,
	check: { log: checkLog },
}

function checkLog(log: Log, programme: Programme): Finding[] {
	const lifter = programme.find('lifter', log.name.text)
	if (lifter === undefined) return []
	return entriesOf(lifter, programme)
		.filter(one => one.log === log)
		.flatMap(one => check(one, lifter, programme))
}

function check(logged: DatedEntry, lifter: Lifter, programme: Programme): Finding[] {
	const { entry, on } = logged
	const name = entry.session
	const week = lifterSessions(lifter, programme).filter(session => session.monday === mondayOf(on))
	// A week that no plan knows was planned somewhere else. A name that no block has is reported as that.
	if (name === undefined || week.length === 0 || !isKnown(name.text, programme)) return []
	if (hasNoDay(name.text, lifter, programme)) return []
	if (plannedSessions(lifter, programme).get(entry)?.length !== 0) return []
	const names = [...new Set(week.map(session => session.session.name.text))]
	const plans = [...new Set(week.map(session => session.plan))]
	return [
		{
			span: name.span,
			message: `${name.text} on ${on} is in no plan of ${titleOf('lifter', lifter.name.text, programme)} in that week; ${inWords(plans.map(plan => plan.name.text))} ${plans.length === 1 ? 'has' : 'have'} ${inWords(names)} there. A session beside the plan is worth a note.`,
			source: `plan ${plans[0]?.name.text ?? ''}`,
			related: plans.map(plan => ({ definition: plan, span: plan.header, message: 'The plan of that week.' })),
		},
	]
}

function isKnown(name: string, programme: Programme): boolean {
	return programme.all('block').some(block => block.sessions.some(session => session.name.text === name))
}

/** A session without a day may be meant for any. */
function hasNoDay(name: string, lifter: Lifter, programme: Programme): boolean {
	const leftOut = programme.plansOf(lifter.name.text).flatMap(plan => schedulePlan(plan, programme).leftOut)
	return leftOut.some(left => left.session.name.text === name)
}
