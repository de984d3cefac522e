import { decimal } from '../../compute/exact.ts'
import { massText } from '../../compute/mass.ts'
import type { Plan } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import { itemPlaces } from '../common/plan-sets.ts'
import { titleOf } from '../common/titles.ts'
import type { Rule } from '../rule.ts'
import { bestsInUse } from './reference-use.ts'
import page from './uncertain-estimate.md'

const source = 'Reynolds, Gordon, Robergs 2006, J Strength Cond Res 20(3):584-592'

export const uncertainEstimate: Rule = {
	code: 'uncertain-estimate',
	area: 'loads',
	level: 'info',
	summary: 'A best that loads are taken of is an estimate from more than 10 reps to failure.',
	source,
	fix: 'none',
	since: '0.1.0',
	page,
	check: { plan: checkPlan },
}

function checkPlan(plan: Plan, programme: Programme): Finding[] {
	const lifter = programme.find('lifter', plan.lifter.text)
	if (lifter === undefined) return []
	return bestsInUse(plan, lifter, programme)
		.filter(({ reference }) => reference.uncertain)
		.map(({ best, reference, sets }): Finding => {
			const { run } = sets[0].session
			const lift = titleOf('movement', reference.movementName, programme)
			const spare = best.reserve.equals(0) ? '' : ` with ${decimal(best.reserve)} to spare`
			const reps = decimal(reference.repsToFailure)
			return {
				span: run.run.header,
				message: `The best of ${lift}, ${massText(best.mass)} for ${best.reps ?? 1}${spare}, is an estimate from ${reps} reps to failure; above 10 it is uncertain (${source}). A set of fewer reps says more.`,
				source,
				related: [
					{ definition: lifter, span: best.span, message: 'The best stands here.' },
					...itemPlaces(sets, 'Its load is taken of that.'),
				],
			}
		})
}
