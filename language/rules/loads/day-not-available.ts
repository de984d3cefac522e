import type { Plan } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import { groupedBy } from '../common/groups.ts'
import { movesInPlan, titleOfSession } from '../common/moves.ts'
import { planSessions } from '../common/placed-sessions.ts'
import { soundOnes } from '../common/proposals.ts'
import { titleOf } from '../common/titles.ts'
import { weeksInWords } from '../common/weeks.ts'
import { inWords } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import page from './day-not-available.md'

const code = 'day-not-available'

export const dayNotAvailable: Rule = {
	code,
	area: 'loads',
	level: 'warning',
	summary: 'A session falls on a day that the lifter does not have.',
	source: 'the `available` days of the lifter',
	fix: 'to confirm',
	since: '0.1.0',
	page,
	check: { plan: checkPlan },
}

function checkPlan(plan: Plan, programme: Programme): Finding[] {
	const lifter = programme.find('lifter', plan.lifter.text)
	const available = lifter?.available
	if (lifter === undefined || available === undefined) return []
	const sessions = planSessions(plan, programme).filter(session => session.items.some(item => item.sets.length > 0))
	const off = sessions.filter(({ scheduled }) => !available.value.includes(scheduled.weekday))
	return groupedBy(off, one => `${one.run.monday} ${one.session.name.text}`).map(same => {
		const [session] = same
		const who = titleOf('lifter', lifter.name.text, programme)
		const weeks = weeksInWords(same.map(one => one.runWeek))
		return {
			span: session.run.run.header,
			message: `${titleOfSession(session.session)} falls on ${session.scheduled.weekday} in ${weeks}; ${who} is available on ${inWords(available.value)}. Move the session in this plan.`,
			source: `lifter ${lifter.name.text}`,
			related: [
				{ definition: lifter, span: available.span, message: 'The days stand here.' },
				{ definition: session.run.block, span: session.session.header, message: 'The session stands here.' },
			],
			corrections: soundOnes(code, plan, programme, () => movesInPlan(session, plan, programme)),
		}
	})
}
