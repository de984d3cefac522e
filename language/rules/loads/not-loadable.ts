import { decimal, exact, hundred, rounded, zero } from '../../compute/exact.ts'
import { isOfTopSet } from '../../compute/loads/top-set.ts'
import { massText } from '../../compute/mass.ts'
import type { Plan } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { Exact, Unit } from '../../model/quantities.ts'
import type { Correction } from '../../model/reading.ts'
import { runLine } from '../common/corrections.ts'
import { titleOfItem } from '../common/exposures.ts'
import { groupedBy } from '../common/groups.ts'
import { type DatedSet, itemPlaces, runWeeks, workingSetsOf } from '../common/plan-sets.ts'
import type { Rule } from '../rule.ts'
import page from './not-loadable.md'
import { distance, isFar, nearestFor, roundingAmount, roundingPercent } from './rounding.ts'

export const notLoadable: Rule = {
	code: 'not-loadable',
	area: 'loads',
	level: 'warning',
	summary: 'What the gym can load is farther from the load that is asked for than rounding goes.',
	source: 'common practice',
	fix: 'to confirm',
	since: '0.1.0',
	page,
	check: { plan: checkPlan },
}

interface OffLoad extends DatedSet {
	readonly wanted: Exact
	readonly nearest: Exact
	readonly unit: Unit
}

/** A scale that moves the loads by more than this is another plan. */
const mostScaled = exact(10)

function checkPlan(plan: Plan, programme: Programme): Finding[] {
	const sets = workingSetsOf(plan, programme)
	const off = sets.flatMap(offLoad)
	const cause = ({ session, item }: DatedSet) =>
		`${session.run.monday} ${item.movementName.text} ${session.scheduled.gym?.name.text}`
	return groupedBy(off, cause).map(same => {
		const farthest = same.reduce((most, one) => (relative(one).compare(relative(most)) > 0 ? one : most))
		const { session, item } = farthest
		const ofMovement = sets.filter(
			one => one.session.run === session.run && one.item.movementName.text === item.movementName.text,
		)
		return {
			span: session.run.run.header,
			message: messageOf(same, farthest),
			source: 'common practice',
			related: itemPlaces(same, 'Its load is asked for here.'),
			corrections: scales(same, ofMovement),
		}
	})
}

/** A share of a training week that the deload line takes is rounded as it comes, and what the bar or the discs forbid is another rule's. */
function offLoad(one: DatedSet): OffLoad[] {
	const { computed } = one.set
	const { exact: wanted, exactTo, unit, beyond, under, perSide } = computed
	const isOthers = beyond || (under && perSide !== undefined) || one.item.from === 'deload-fill'
	if (wanted === undefined || wanted.compare(zero) <= 0 || isOthers) return []
	const nearest = nearestFor(one, wanted)
	if (nearest === undefined || !isFar(nearest, wanted, unit)) return []
	// A range that holds any load of the gym's is one that can be loaded.
	const high = exactTo && nearestFor(one, exactTo)
	const within = (load: Exact) => load.compare(wanted) >= 0 && load.compare(exactTo ?? wanted) <= 0
	return within(nearest) || (high && within(high)) ? [] : [{ ...one, wanted, nearest, unit }]
}

function relative({ wanted, nearest }: OffLoad): Exact {
	return distance(nearest, wanted).div(wanted)
}

function messageOf(same: readonly OffLoad[], farthest: OffLoad): string {
	const { wanted, nearest, unit, item, session } = farthest
	const { gym } = session.scheduled
	const place = gym ? `in ${gym.title?.text ?? gym.name.text}` : 'with the usual bar and discs'
	const off = `${massText({ amount: distance(nearest, wanted), unit })} or ${decimal(relative(farthest).mul(hundred), 1)}% away`
	const loads = new Set(same.map(one => one.wanted.toFraction()))
	const most = loads.size > 1 ? `; farthest off in week ${session.blockWeek}: ` : ': '
	const limit = `up to ${decimal(roundingPercent)}% or ${massText({ amount: roundingAmount[unit], unit })} is rounding (common practice). Write a load that can be made, or scale it in this plan`
	return `${titleOfItem(item)} cannot be loaded as asked for in ${runWeeks(same)} ${place}${most}${shown(wanted, unit)} becomes ${shown(nearest, unit)}, ${off}; ${limit}.`
}

function shown(amount: Exact, unit: Unit): string {
	return massText({ amount: rounded(amount, 2), unit })
}

/** A scale for this plan, so that all loads of the movement can be loaded. */
function scales(same: readonly [OffLoad, ...OffLoad[]], ofMovement: readonly DatedSet[]): Correction[] {
	const [{ session, item }] = same
	const { run } = session.run
	const name = item.movementName.text
	const isScaled = run.changes.some(change => change.kind === 'scale' && change.movement.text === name)
	if (isScaled || ofMovement.some(({ set }) => isOfTopSet(set.load))) return []
	for (const one of same) {
		const percent = rounded(one.nearest.div(one.wanted).mul(hundred), 2)
		const fits = ofMovement.every(other => {
			const { exact: wanted, unit } = other.set.computed
			if (wanted === undefined || wanted.compare(zero) <= 0) return true
			const scaled = wanted.mul(percent).div(hundred)
			const nearest = nearestFor(other, scaled)
			return nearest === undefined || !isFar(nearest, scaled, unit)
		})
		if (!fits || percent.sub(hundred).abs().compare(mostScaled) > 0) continue
		return [
			{
				title: `Scale ${titleOfItem(item)} to ${decimal(percent)}% in this plan: ${shown(one.wanted, one.unit)} becomes ${shown(one.nearest, one.unit)}`,
				edits: [runLine(run, `scale ${name} ${decimal(percent)}%`)],
			},
		]
	}
	return []
}
