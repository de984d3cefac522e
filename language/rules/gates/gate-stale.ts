import { daysBetween } from '../../compute/calendar.ts'
import { limitsFor } from '../../compute/limits.ts'
import type { Plan } from '../../model/definitions.ts'
import type { Finding, RelatedPlace } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import { titleOf } from '../common/titles.ts'
import { counted } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import { type AskedGate, askedGates, askInWords } from './asked-gates.ts'
import page from './gate-stale.md'

export const gateStale: Rule = {
	code: 'gate-stale',
	area: 'gates',
	level: 'info',
	summary: 'A gate was passed longer ago than the limit allows.',
	source: 'the limits (`gates no older than … weeks`)',
	fix: 'none',
	since: '0.1.0',
	page,
	check: { plan: checkPlan },
}

function checkPlan(plan: Plan, programme: Programme): Finding[] {
	const limit = limitsFor(plan.lifter.text, programme).gatesWeeks
	if (limit === undefined) return []
	return askedGates(plan, programme).flatMap((asked): Finding[] => {
		const { state, date } = asked
		if (!state.passed || state.on === undefined || daysBetween(state.on, date) <= 7 * limit.value) return []
		const weeks = Math.floor(daysBetween(state.on, date) / 7)
		const lifter = titleOf('lifter', plan.lifter.text, programme)
		return [
			{
				span: asked.run.run.header,
				message: `${askInWords(asked, programme)}. ${lifter} passed it on ${state.on}, ${counted(weeks, 'week')} before; the limit is ${counted(limit.value, 'week')} (${limit.origin}). Have it shown again.`,
				source: limit.origin,
				related: [
					evidencePlace(state.by),
					...asked.places,
					{ definition: limit.definition, span: limit.span, message: 'The limit stands here.' },
				],
			},
		]
	})
}

function evidencePlace(by: (AskedGate['state'] & { passed: true })['by']): RelatedPlace {
	const message = 'The latest evidence.'
	switch (by.kind) {
		case 'passed':
			return { definition: by.lifter, span: by.passed.span, message }
		case 'best':
			return { definition: by.lifter, span: by.best.span, message }
		case 'logged':
			return { definition: by.log, span: by.set.span, message }
	}
}
