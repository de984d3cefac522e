import { decimal, exact, hundred, rounded, zero } from '../../compute/exact.ts'
import { massText } from '../../compute/mass.ts'
import type { Plan, RunChange } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { Exact, Unit } from '../../model/quantities.ts'
import { runLine } from '../common/corrections.ts'
import { titleOfItem } from '../common/exposures.ts'
import { groupedBy } from '../common/groups.ts'
import { type DatedSet, itemPlaces, runWeeks, workingSetsOf } from '../common/plan-sets.ts'
import { type Proposal, soundOnes } from '../common/proposals.ts'
import { withRunChanges } from '../common/trial-plans.ts'
import type { Rule } from '../rule.ts'
import page from './not-loadable.md'
import { distance, isFar, nearestFor, roundingAmount, roundingPercent } from './rounding.ts'

const code = 'not-loadable'

export const notLoadable: Rule = {
	code,
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
/** Each scale is tried on the whole plan. */
const mostScales = 6

function checkPlan(plan: Plan, programme: Programme): Finding[] {
	const off = workingSetsOf(plan, programme).flatMap(offLoad)
	const cause = ({ session, item }: DatedSet) =>
		`${session.run.monday} ${item.movementName.text} ${session.scheduled.gym?.name.text}`
	return groupedBy(off, cause).map(same => {
		const farthest = same.reduce((most, one) => (relative(one).compare(relative(most)) > 0 ? one : most))
		const { session } = farthest
		return {
			span: session.run.run.header,
			message: messageOf(same, farthest),
			source: 'common practice',
			related: itemPlaces(same, 'Its load is asked for here.'),
			corrections: soundOnes(code, plan, programme, () => scales(same, plan)),
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
	const most = loads.size > 1 ? `; farthest off in week ${session.runWeek}: ` : ': '
	const limit = `up to ${decimal(roundingPercent)}% or ${massText({ amount: roundingAmount[unit], unit })} is rounding (common practice). Write a load that can be made, or scale it in this plan`
	return `${titleOfItem(item)} cannot be loaded as asked for in ${runWeeks(same)} ${place}${most}${shown(wanted, unit)} becomes ${shown(nearest, unit)}, ${off}; ${limit}.`
}

function shown(amount: Exact, unit: Unit): string {
	return massText({ amount: rounded(amount, 2), unit })
}

/** Scales for this plan, each so that one of the loads is one that can be loaded. */
function scales(same: readonly OffLoad[], plan: Plan): Proposal<Plan>[] {
	const loads = groupedBy(same, one => one.wanted.toFraction()).map(([one]) => one)
	return loads.slice(0, mostScales).flatMap(({ session, item, wanted, nearest, unit }): Proposal<Plan>[] => {
		const { run } = session.run
		const name = item.movementName.text
		const percent = rounded(nearest.div(wanted).mul(hundred), 2)
		const isScaled = run.changes.some(change => change.kind === 'scale' && change.movement.text === name)
		if (isScaled || percent.sub(hundred).abs().compare(mostScaled) > 0) return []
		const span = run.header
		const change: RunChange = { kind: 'scale', movement: { text: name, span }, share: percent, because: undefined, span }
		return [
			{
				correction: {
					title: `Scale ${titleOfItem(item)} to ${decimal(percent)}% in this plan: ${shown(wanted, unit)} becomes ${shown(nearest, unit)}`,
					edits: [runLine(run, `scale ${name} ${decimal(percent)}%`)],
				},
				changed: withRunChanges(plan, run, [change]),
			},
		]
	})
}
