import type { Plan } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import { originOf } from '../common/origins.ts'
import { titleOf } from '../common/titles.ts'
import type { Rule } from '../rule.ts'
import { type AskedGate, askedGates, askInWords, shownInWords } from './asked-gates.ts'
import page from './gate-not-passed.md'
import { stepsDown } from './steps-down.ts'

export const gateNotPassed: Rule = {
	code: 'gate-not-passed',
	area: 'gates',
	level: 'error',
	summary: 'A plan uses a movement, or a block, whose gate the lifter has not passed.',
	source: 'the `requires` of the movement or block, or the step of the progression',
	fix: 'to confirm',
	since: '0.1.0',
	page,
	check: { plan: checkPlan },
}

function checkPlan(plan: Plan, programme: Programme): Finding[] {
	return askedGates(plan, programme).flatMap(asked => {
		const { state, reachedOn } = asked
		return state.passed || reachedOn !== undefined ? [] : [findingOf({ ...asked, state }, plan, programme)]
	})
}

function findingOf(asked: AskedGate & { state: { passed: false } }, plan: Plan, programme: Programme): Finding {
	const lifter = titleOf('lifter', plan.lifter.text, programme)
	const { undated } = asked.state
	const owner = programme.find('lifter', plan.lifter.text)
	// What waits for a milestone is not planned yet: it is a remark.
	const isStep = asked.movedFrom !== undefined
	const advice = isStep ? 'before the step is taken' : 'with its date, or go a step back'
	return {
		span: asked.run.run.header,
		message: `${askInWords(asked, programme)}. ${lifter} has not passed it: ${shownInWords(asked, owner)}. See it done and write \`passed …\` ${advice}.`,
		source: originOf(asked.setBy, programme),
		related: [
			...asked.places,
			...(undated && owner ? [{ definition: owner, span: undated.span, message: 'This line has no date.' }] : []),
		],
		corrections: () => (isStep ? [] : stepsDown(asked, plan, programme)),
		...(isStep ? { level: 'info' } : {}),
	}
}
