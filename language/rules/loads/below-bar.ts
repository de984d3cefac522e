import { rounded } from '../../compute/exact.ts'
import { massText } from '../../compute/mass.ts'
import type { Plan } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import { titleOfItem } from '../common/exposures.ts'
import { groupedBy } from '../common/groups.ts'
import { type DatedSet, itemPlaces, runWeeks, workingSetsOf } from '../common/plan-sets.ts'
import type { Rule } from '../rule.ts'
import page from './below-bar.md'
import { isFarInPercent } from './rounding.ts'

export const belowBar: Rule = {
	code: 'below-bar',
	area: 'loads',
	level: 'warning',
	summary: 'A working load is under the empty bar.',
	source: 'the bars of the gym',
	fix: 'none',
	since: '0.1.0',
	page,
	check: { plan: checkPlan },
}

function checkPlan(plan: Plan, programme: Programme): Finding[] {
	const light = workingSetsOf(plan, programme).filter(isBelow)
	const cause = ({ session, item }: DatedSet) =>
		`${session.run.monday} ${item.movementName.text} ${session.scheduled.gym?.name.text}`
	return groupedBy(light, cause).map(same => {
		const lightest = same.reduce((least, one) => (amountOf(one).compare(amountOf(least)) < 0 ? one : least))
		const { session, item, set } = lightest
		const { gym } = session.scheduled
		const { unit, load } = set.computed
		const place = gym ? `in ${gym.title?.text ?? gym.name.text}` : 'without a gym of the lifter’s own'
		const varies = same.some(one => !amountOf(one).equals(amountOf(lightest)))
		const wanted = massText({ amount: rounded(amountOf(lightest), 2), unit })
		const bar = massText({ amount: rounded(load ?? amountOf(lightest), 2), unit })
		return {
			span: session.run.run.header,
			message: `${titleOfItem(item)} is asked for with ${varies ? 'as little as ' : ''}${wanted} in ${runWeeks(same)}, less than the empty bar, which is ${bar} ${place}. Take a lighter bar, another movement, or a higher load.`,
			source: gym ? `gym ${gym.name.text}` : 'common practice',
			related: itemPlaces(same, 'Its load is asked for here.'),
		}
	})
}

/** A load as near to the bar as any load is rounded is lifted with the bar. */
function isBelow({ set: { computed } }: DatedSet): boolean {
	const { under, perSide, exact: wanted, load } = computed
	return under && perSide !== undefined && wanted !== undefined && load !== undefined && isFarInPercent(load, wanted)
}

function amountOf({ set: { computed } }: DatedSet) {
	return computed.exact!
}
