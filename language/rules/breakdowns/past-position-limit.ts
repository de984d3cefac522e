import { type FailingLift, failingLifts, isInForce } from '../../compute/failing-lifts.ts'
import { schedulePlan } from '../../compute/schedule.ts'
import type { Lifter, Plan } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { ScheduledItem } from '../../model/schedule.ts'
import { overPercent, setsOver } from '../common/sets-over.ts'
import { titleOf } from '../common/titles.ts'
import type { Rule } from '../rule.ts'
import page from './past-position-limit.md'

export const pastPositionLimit: Rule = {
	code: 'past-position-limit',
	area: 'breakdowns',
	level: 'warning',
	summary: 'A set of a lift that loses position is heavier than the percent from which it does.',
	source: 'the `above` of the `fails` line of the lifter',
	fix: 'none',
	since: '0.1.0',
	page,
	check: { plan: checkPlan },
}

function checkPlan(plan: Plan, programme: Programme): Finding[] {
	const lifter = programme.find('lifter', plan.lifter.text)
	if (lifter === undefined) return []
	const losing = failingLifts(lifter, programme).filter(({ breakdown }) => breakdown.weakLinks?.value[0] === 'stability')
	return losing.flatMap(failing => check(failing, lifter, plan, programme))
}

function check({ lift, breakdown, fails }: FailingLift, lifter: Lifter, plan: Plan, programme: Programme): Finding[] {
	const { above } = fails
	if (above === undefined) return []
	const schedule = schedulePlan(plan, programme)
	const found = setsOver(schedule, above, (item, date) => isInForce(fails, date) && loads(item, lift))
	return found.map(over => ({
		span: over.run.run.header,
		message: `${overPercent(over, programme)}; ${titleOf('lifter', lifter.name.text, programme)} loses position above ${over.limit} of ${titleOf('movement', lift, programme)} (${breakdown.name.text}, lifter ${lifter.name.text}). Keep these sets at or below it until position holds.`,
		source: `lifter ${lifter.name.text}`,
		related: [...over.places, { definition: lifter, span: fails.span, message: 'The percent stands here.' }],
	}))
}

/** A working set of the lift itself, or main work that is a percent of it. */
function loads(item: ScheduledItem, lift: string): boolean {
	if (!item.working) return false
	if (item.movementName.text === lift) return true
	return item.role === 'main' && item.movement?.percentOf?.movement.text === lift
}
