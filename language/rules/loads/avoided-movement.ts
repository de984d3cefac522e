import type { Avoid, Plan } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import { titleOfItem } from '../common/exposures.ts'
import { groupedBy } from '../common/groups.ts'
import { type DatedItem, itemPlaces, itemsOf, nextItemsOf, runWeeks } from '../common/plan-sets.ts'
import { titleOf } from '../common/titles.ts'
import { inWords } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import page from './avoided-movement.md'

export const avoidedMovement: Rule = {
	code: 'avoided-movement',
	area: 'loads',
	level: 'error',
	summary: 'A plan uses a movement or a pattern that the lifter avoids at that date.',
	source: 'the `avoid` line of the lifter',
	fix: 'none',
	since: '0.1.0',
	page,
	check: { plan: checkPlan },
}

interface Avoided extends DatedItem {
	readonly avoid: Avoid
}

function checkPlan(plan: Plan, programme: Programme): Finding[] {
	const lifter = programme.find('lifter', plan.lifter.text)
	if (lifter === undefined || lifter.avoids.length === 0) return []
	const found = [...itemsOf(plan, programme), ...nextItemsOf(plan, programme)].flatMap((one): Avoided[] => {
		const avoid = lifter.avoids.find(each => isMeant(each, one))
		return avoid ? [{ ...one, avoid }] : []
	})
	return groupedBy(found, one => `${one.session.run.monday} ${one.avoid.span.start}`).map(same => {
		const [{ session, avoid }] = same
		const who = titleOf('lifter', lifter.name.text, programme)
		const movements = [...new Set(same.map(({ item }) => titleOfItem(item)))]
		const because = avoid.because ? ` (“${avoid.because.text}”)` : ''
		const avoids = avoid.pattern === undefined ? movements[0] : `the pattern ${avoid.pattern}`
		const has = avoid.pattern === undefined ? 'it' : inWords(movements)
		return {
			span: session.run.run.header,
			message: `${who} avoids ${avoids}${untilText(avoid)}${because}; this block has ${has} in ${runWeeks(same)}. Swap it or drop it in this plan.`,
			source: `lifter ${lifter.name.text}`,
			related: [
				{ definition: lifter, span: avoid.span, message: 'This line says so.' },
				...itemPlaces(same, 'It is prescribed here.'),
			],
		}
	})
}

/** From and until are days on which it holds. */
function isMeant(avoid: Avoid, { item, session: { date } }: DatedItem): boolean {
	const isNamed = avoid.movement !== undefined && avoid.movement.text === item.movementName.text
	const isOfPattern = avoid.pattern !== undefined && avoid.pattern === item.movement?.pattern?.value
	return (isNamed || isOfPattern) && (avoid.from ?? date) <= date && date <= (avoid.until ?? date)
}

function untilText({ from, until }: Avoid): string {
	return `${from === undefined ? '' : ` from ${from}`}${until === undefined ? '' : ` until ${until}`}`
}
