import { type FailingLift, failingLifts, isInForce } from '../../compute/failing-lifts.ts'
import { answers } from '../../compute/needs.ts'
import { schedulePlan } from '../../compute/schedule.ts'
import type { Lifter, Plan } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import { groupedBy } from '../common/groups.ts'
import { titleOf } from '../common/titles.ts'
import type { Rule } from '../rule.ts'
import { missingForLifter } from './missing-work.ts'
import page from './unanswered-breakdown.md'

export const unansweredBreakdown: Rule = {
	code: 'unanswered-breakdown',
	area: 'breakdowns',
	level: 'info',
	summary: 'A plan targets a lift that fails, and none of its blocks says that it answers how.',
	source: 'common practice',
	fix: 'none',
	since: '0.1.0',
	page,
	check: { plan: checkPlan },
}

function checkPlan(plan: Plan, programme: Programme): Finding[] {
	const lifter = programme.find('lifter', plan.lifter.text)
	if (lifter === undefined) return []
	const declared = groupedBy(failingLifts(lifter, programme), one => `${one.lift} ${one.breakdown.name.text}`)
	return declared.flatMap(lines => check(lines, lifter, plan, programme))
}

/** `lines` are of one lift and one breakdown. */
function check(lines: readonly FailingLift[], lifter: Lifter, plan: Plan, programme: Programme): Finding[] {
	const [first] = lines
	if (first === undefined) return []
	const { lift, breakdown, fails } = first
	const name = breakdown.name.text
	const { runs } = schedulePlan(plan, programme)
	const targeting = runs.find(
		run => run.block.targets.some(target => target.text === lift) && lines.some(line => isInForce(line.fails, run.firstDay)),
	)
	const answered = runs.some(run => run.block.answers.some(answer => answer.text === name))
	// Where work is missing, the rules about that say this too.
	const missing = missingForLifter(lifter, programme).some(one => one.plan === plan && one.breakdown === breakdown)
	if (targeting === undefined || answered || missing || putsInAnswers(plan, lines, programme)) return []
	return [
		{
			span: targeting.run.header,
			message: `${targeting.block.name.text} targets ${titleOf('movement', lift, programme)}, which fails with ${name} (lifter ${lifter.name.text}), and no block of this plan says that it answers it. The work that it needs is there all the same.`,
			source: 'common practice',
			related: [
				{ definition: lifter, span: fails.span, message: 'How the lift fails.' },
				{ definition: targeting.block, span: targeting.block.header, message: `\`answers ${name}\` would say it here.` },
			],
		},
	]
}

/** A run that puts in what answers it shows that the coach has thought of it. */
function putsInAnswers(plan: Plan, lines: readonly FailingLift[], programme: Programme): boolean {
	const failing = new Set(lines.map(line => line.lift))
	return plan.runs.some(run =>
		run.changes.some(change => {
			const name = change.kind === 'add' ? change.item.movement : change.kind === 'swap' ? change.to : undefined
			const movement = name && programme.find('movement', name.text)
			return movement !== undefined && lines.some(({ breakdown }) => answers(movement, breakdown, failing))
		}),
	)
}
