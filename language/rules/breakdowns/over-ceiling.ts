import { isInForce } from '../../compute/failing-lifts.ts'
import { schedulePlan } from '../../compute/schedule.ts'
import type { Keep, Lifter, Plan } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import { overPercent, setsOver } from '../common/sets-over.ts'
import { titleOf } from '../common/titles.ts'
import type { Rule } from '../rule.ts'
import page from './over-ceiling.md'

export const overCeiling: Rule = {
	code: 'over-ceiling',
	area: 'breakdowns',
	level: 'error',
	summary: 'A set is heavier than a ceiling that the lifter keeps to.',
	source: 'the `keep … to …` line of the lifter',
	fix: 'none',
	since: '0.1.0',
	page,
	check: { plan: checkPlan },
}

function checkPlan(plan: Plan, programme: Programme): Finding[] {
	const lifter = programme.find('lifter', plan.lifter.text)
	return lifter === undefined ? [] : lifter.keeps.flatMap(keep => check(keep, lifter, plan, programme))
}

function check(keep: Keep, lifter: Lifter, plan: Plan, programme: Programme): Finding[] {
	const lift = keep.movement.text
	const schedule = schedulePlan(plan, programme)
	const found = setsOver(schedule, keep.to, (item, date) => item.movementName.text === lift && isInForce(keep, date))
	return found.map(over => ({
		span: over.run.run.header,
		message: `${overPercent(over, programme)}; ${titleOf('lifter', lifter.name.text, programme)} keeps it to ${over.limit}${until(keep)} (lifter ${lifter.name.text}).`,
		source: `lifter ${lifter.name.text}`,
		related: [...over.places, { definition: lifter, span: keep.span, message: 'The ceiling stands here.' }],
	}))
}

function until({ until: last, because }: Keep): string {
	const date = last === undefined ? '' : ` until ${last}`
	return because === undefined ? date : `${date}: ${because.text.replace(/[.\s]+$/, '')}`
}
