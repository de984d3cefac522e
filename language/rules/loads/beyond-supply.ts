import { compare, rounded } from '../../compute/exact.ts'
import { massText } from '../../compute/mass.ts'
import type { Plan } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import { titleOfItem } from '../common/exposures.ts'
import { groupedBy } from '../common/groups.ts'
import { type DatedSet, itemPlaces, runWeeks, workingSetsOf } from '../common/plan-sets.ts'
import type { Rule } from '../rule.ts'
import page from './beyond-supply.md'

export const beyondSupply: Rule = {
	code: 'beyond-supply',
	area: 'loads',
	level: 'error',
	summary: 'The gym does not have the discs, dumbbells or implements for a load.',
	source: 'what the gym states that it has',
	fix: 'none',
	since: '0.1.0',
	page,
	check: { plan: checkPlan },
}

function checkPlan(plan: Plan, programme: Programme): Finding[] {
	const beyond = workingSetsOf(plan, programme).filter(({ set }) => set.computed.beyond && set.computed.exact !== undefined)
	const cause = ({ session, item }: DatedSet) =>
		`${session.run.monday} ${item.movementName.text} ${session.scheduled.gym?.name.text}`
	return groupedBy(beyond, cause).map(same => {
		const [{ session, item, set }] = same
		const { gym } = session.scheduled
		const { unit } = set.computed
		const wanted = same.flatMap(one => one.set.computed.exact ?? []).sort(compare)
		const most = massText({ amount: rounded(set.computed.load ?? wanted[0]!, 2), unit })
		const hands = (item.movement?.hands ?? 1) > 1 ? ' in each hand' : ''
		const place = gym?.title?.text ?? gym?.name.text ?? 'the gym'
		return {
			span: session.run.run.header,
			message: `${titleOfItem(item)} is asked for with ${wanted[0]!.equals(wanted.at(-1)!) ? '' : 'up to '}${massText({ amount: rounded(wanted.at(-1)!, 2), unit })}${hands} in ${runWeeks(same)}; the most that ${place} has for it is ${most}${hands}.`,
			source: gym ? `gym ${gym.name.text}` : undefined,
			related: [
				...itemPlaces(same, 'Its load is asked for here.'),
				...(gym ? [{ definition: gym, span: gym.header, message: 'What the gym has stands here.' }] : []),
			],
		}
	})
}
