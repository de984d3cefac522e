import { implementFor } from '../../compute/implement.ts'
import type { Plan } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import { titleOfItem } from '../common/exposures.ts'
import { groupedBy } from '../common/groups.ts'
import { type DatedItem, itemPlaces, itemsOf, nextItemsOf, runWeeks } from '../common/plan-sets.ts'
import { inWords } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import page from './no-equipment.md'

export const noEquipment: Rule = {
	code: 'no-equipment',
	area: 'loads',
	level: 'error',
	summary: 'A movement needs equipment that is not in the gym where the lifter trains that day.',
	source: 'the `equipment` of the movement, and what the gym states that it has',
	fix: 'none',
	since: '0.1.0',
	page,
	check: { plan: checkPlan },
}

interface Unequipped extends DatedItem {
	/** "North Hall has no cambered bar". */
	readonly reason: string
}

function checkPlan(plan: Plan, programme: Programme): Finding[] {
	const found = [...itemsOf(plan, programme), ...nextItemsOf(plan, programme)].flatMap(unequipped)
	return groupedBy(found, one => `${one.session.run.monday} ${one.reason}`).map(same => {
		const [{ session, reason }] = same
		const { gym } = session.scheduled
		const movements = [...new Set(same.map(({ item }) => titleOfItem(item)))]
		const needs = movements.length === 1 ? 'needs it' : 'need it'
		return {
			span: session.run.run.header,
			message: `${reason}; ${inWords(movements)} ${needs} in ${runWeeks(same)}. Swap the movement in this plan, or write the equipment into the gym.`,
			source: gym ? `gym ${gym.name.text}` : undefined,
			related: [
				...itemPlaces(same, 'It is prescribed here.'),
				...(gym ? [{ definition: gym, span: gym.header, message: 'What the gym has stands here.' }] : []),
			],
		}
	})
}

function unequipped(one: DatedItem): Unequipped[] {
	const { item, session } = one
	const unit = item.sets[0]?.computed.unit ?? 'kg'
	const implement = item.movement && implementFor(item.movement, session.scheduled.gym, unit, session.scheduled.uses)
	if (implement === undefined || !('missing' in implement) || implement.missing !== 'equipment') return []
	return [{ ...one, reason: implement.reason }]
}
