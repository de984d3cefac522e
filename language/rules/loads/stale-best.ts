import { daysBetween } from '../../compute/calendar.ts'
import { limitsFor } from '../../compute/limits.ts'
import type { Plan } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import { itemPlaces } from '../common/plan-sets.ts'
import { titleOf } from '../common/titles.ts'
import { counted } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import { bestsInUse } from './reference-use.ts'
import page from './stale-best.md'

export const staleBest: Rule = {
	code: 'stale-best',
	area: 'loads',
	level: 'info',
	summary: 'A best that loads are taken of is older than the limit on the first day of the run.',
	source: 'the `bests no older than … weeks` of the limits',
	fix: 'none',
	since: '0.1.0',
	page,
	check: { plan: checkPlan },
}

function checkPlan(plan: Plan, programme: Programme): Finding[] {
	const lifter = programme.find('lifter', plan.lifter.text)
	const limit = limitsFor(plan.lifter.text, programme).bestsWeeks
	if (lifter === undefined || limit === undefined) return []
	return bestsInUse(plan, lifter, programme).flatMap(({ best, reference, sets }): Finding[] => {
		const { on } = best
		const stale = on && sets.find(({ session }) => daysBetween(on, session.run.firstDay) > 7 * limit.value)
		if (!on || !stale) return []
		const { firstDay, run } = stale.session.run
		const lift = titleOf('movement', reference.movementName, programme)
		const days = daysBetween(on, firstDay)
		const rest = days % 7 === 0 ? '' : ` and ${counted(days % 7, 'day')}`
		const age = `${counted(Math.floor(days / 7), 'week')}${rest}`
		const ofRun = sets.filter(({ session }) => session.run === stale.session.run)
		return [
			{
				span: run.header,
				message: `The best of ${lift} is of ${on}, ${age} before this block begins on ${firstDay}; the limit is ${counted(limit.value, 'week')} (${limit.origin}). A newer one, also a set with reps to spare, makes its loads sure.`,
				source: limit.origin,
				related: [
					{ definition: lifter, span: best.span, message: 'The best stands here.' },
					{ definition: limit.definition, span: limit.span, message: 'The limit stands here.' },
					...itemPlaces(ofRun, 'Its load is taken of that.'),
				],
			},
		]
	})
}
