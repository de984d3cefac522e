import { schedulePlan } from '../../compute/schedule.ts'
import type { Plan } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { LeftOutSession, ScheduledRun } from '../../model/schedule.ts'
import { groupedBy } from '../common/groups.ts'
import { titleOfSession } from '../common/moves.ts'
import { counted, inWords } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import page from './day-not-given.md'

export const dayNotGiven: Rule = {
	code: 'day-not-given',
	area: 'loads',
	level: 'error',
	summary: "A block's session has no weekday: neither its own, nor one of the plan's `days`.",
	source: "the language's own rules",
	fix: 'none',
	since: '0.1.0',
	page,
	check: { plan: checkPlan },
}

function checkPlan(plan: Plan, programme: Programme): Finding[] {
	const left = schedulePlan(plan, programme).leftOut.filter(one => one.why === 'no-day')
	return groupedBy(left, one => one.run.monday).map(same => {
		const sessions = groupedBy(same, one => `${one.session.name.text} ${one.day?.number}`).map(([one]) => one)
		return {
			span: same[0].run.run.header,
			message: `${messageOf(sessions, plan)} Without a day ${sessions.length === 1 ? 'it stands' : 'they stand'} in no week of this plan.`,
			related: [
				...(plan.days ? [{ definition: plan, span: plan.days.span, message: 'The days of the plan stand here.' }] : []),
				...sessions.map(({ session, run }) => placeOf(session, run)),
			],
		}
	})
}

function messageOf(sessions: readonly LeftOutSession[], plan: Plan): string {
	const numbered = sessions.filter(({ day }) => day !== undefined)
	const dayless = sessions.filter(({ day }) => day === undefined)
	const given = plan.days?.value.length ?? 0
	const said: string[] = []
	if (numbered.length > 0) {
		const days = numbered.map(({ session, day }) => `${titleOfSession(session)} is on day ${day?.number}`)
		const plans = plan.days === undefined ? 'this plan has no line `days …`' : `this plan gives ${counted(given, 'day')}`
		const needed = Math.max(...numbered.map(({ day }) => day?.number ?? 0))
		said.push(`${inWords(days)}; ${plans}. Write ${counted(needed, 'weekday')} there, in order.`)
	}
	if (dayless.length > 0) {
		const names = dayless.map(({ session }) => titleOfSession(session))
		said.push(`${inWords(names)} ${names.length === 1 ? 'has' : 'have'} no day. Write one in the block: session … on monday.`)
	}
	return said.join(' ')
}

function placeOf(session: LeftOutSession['session'], run: ScheduledRun) {
	return { definition: run.block, span: session.header, message: 'The session stands here.' }
}
