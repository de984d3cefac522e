import { type FailingLift, failingLifts, isInForce } from '../../compute/failing-lifts.ts'
import { schedulePlan } from '../../compute/schedule.ts'
import type { Lifter, Movement, Plan } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { ScheduledRun } from '../../model/schedule.ts'
import type { Link } from '../../model/vocabulary.ts'
import { groupedBy } from '../common/groups.ts'
import { distinctPlaces, placeOfItem } from '../common/places.ts'
import { titleOf } from '../common/titles.ts'
import type { Rule } from '../rule.ts'
import page from './emphasis-mismatch.md'

export const emphasisMismatch: Rule = {
	code: 'emphasis-mismatch',
	area: 'breakdowns',
	level: 'info',
	summary: 'Most accessory work around a failing lift trains the other link of the chain.',
	source: 'common practice',
	fix: 'none',
	since: '0.1.0',
	page,
	check: { plan: checkPlan },
}

/** Fewer accessory sets than this in a whole run show no emphasis. */
const fewestSets = 8
/** Percent of them that train the weak link. */
const leastShare = 40

function checkPlan(plan: Plan, programme: Programme): Finding[] {
	const lifter = programme.find('lifter', plan.lifter.text)
	if (lifter === undefined) return []
	return schedulePlan(plan, programme).runs.flatMap(run => {
		const inForce = failingLifts(lifter, programme).filter(({ fails }) => isInForce(fails, run.firstDay))
		// Two breakdowns of one lift with one weak link are one emphasis.
		const distinct = groupedBy(inForce, one => `${one.lift} ${one.breakdown.weakLinks?.value[0]}`)
		return distinct.flatMap(([failing]) => check(failing, run, lifter, plan, programme))
	})
}

function check(failing: FailingLift, run: ScheduledRun, lifter: Lifter, plan: Plan, programme: Programme): Finding[] {
	const { lift, breakdown, fails } = failing
	const weak = breakdown.weakLinks?.value[0]
	const pattern = programme.find('movement', lift)?.pattern?.value
	const sessions = schedulePlan(plan, programme).sessions.filter(session => session.run === run)
	const trained =
		run.block.targets.some(target => target.text === lift) ||
		sessions.some(({ items }) => items.some(item => item.working && item.movementName.text === lift))
	if (weak === undefined || !trained) return []
	// Where nothing of the family trains the weak link first (squats and presses, as a rule), the share says nothing: the work is elsewhere.
	const canTrainWeak = programme.all('movement').some(one => isFamily(one, lift, pattern) && firstLink(one) === weak)
	if (!canTrainWeak) return []
	const family = sessions.flatMap(session =>
		session.items
			.filter(({ role, movement }) => role === 'accessory' && movement !== undefined && isFamily(movement, lift, pattern))
			.map(item => ({
				item,
				sets: item.sets.filter(set => !set.optional).length,
				trainsWeak: firstLink(item.movement) === weak,
			})),
	)
	const all = sum(family.map(one => one.sets))
	const fitting = sum(family.filter(one => one.trainsWeak).map(one => one.sets))
	if (all < fewestSets || fitting * 100 >= all * leastShare) return []
	const others = family.filter(one => !one.trainsWeak && one.sets > 0)
	return [
		{
			span: run.run.header,
			message: `Of the ${all} accessory sets around ${titleOf('movement', lift, programme)} in ${run.block.name.text}, ${fitting} train ${weak} first (${Math.floor((fitting * 100) / all)}%; at least ${leastShare}% is common practice): ${breakdown.name.text} is a matter of ${weak}.`,
			source: 'common practice',
			related: [
				{ definition: lifter, span: fails.span, message: 'How the lift fails.' },
				...distinctPlaces(others.map(({ item }) => placeOfItem(item, { run, plan }, 'Trains the other link first, or none.'))),
			],
		},
	]
}

/** The lift's pattern, or a percent of it; the lift itself is no accessory to itself. */
function isFamily(movement: Movement, lift: string, pattern: string | undefined): boolean {
	if (movement.name.text === lift) return false
	return (pattern !== undefined && movement.pattern?.value === pattern) || movement.percentOf?.movement.text === lift
}

function firstLink(movement: Movement | undefined): Link | undefined {
	return movement?.trains?.value[0]
}

function sum(counts: readonly number[]): number {
	return counts.reduce((total, count) => total + count, 0)
}
