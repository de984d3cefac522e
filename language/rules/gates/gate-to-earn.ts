import type { Plan } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import { originOf } from '../common/origins.ts'
import { titleOf } from '../common/titles.ts'
import type { Rule } from '../rule.ts'
import { askedGates, askInWords, shownInWords } from './asked-gates.ts'
import page from './gate-to-earn.md'

export const gateToEarn: Rule = {
	code: 'gate-to-earn',
	area: 'gates',
	level: 'info',
	summary: 'A gate is not passed yet, but the plan reaches it in time if it is done as written.',
	source: 'the `requires` of the movement or block, or the step of the progression',
	fix: 'none',
	since: '0.1.0',
	page,
	check: { plan: checkPlan },
}

function checkPlan(plan: Plan, programme: Programme): Finding[] {
	const lifter = titleOf('lifter', plan.lifter.text, programme)
	return askedGates(plan, programme).flatMap((asked): Finding[] => {
		const { state, reachedOn } = asked
		if (state.passed || reachedOn === undefined) return []
		const message = `${askInWords(asked, programme)}. ${lifter} has not passed it yet (${shownInWords({ ...asked, state }, programme.find('lifter', plan.lifter.text))}); done as written, the plan gets there on ${reachedOn}. Go on only if it was held.`
		return [{ span: asked.run.run.header, message, source: originOf(asked.setBy, programme), related: asked.places }]
	})
}
