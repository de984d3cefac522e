import { compare, decimal } from '../../compute/exact.ts'
import { limitsFor } from '../../compute/limits.ts'
import { leastPercent } from '../../compute/percents.ts'
import type { Exact } from '../../model/quantities.ts'
import { titleOfItem } from '../common/exposures.ts'
import { liftOf } from '../common/heavy.ts'
import { type ItemFault, itemChecks } from '../common/item-checks.ts'
import { titleOf } from '../common/titles.ts'
import { weeksInWords } from '../common/weeks.ts'
import type { Rule } from '../rule.ts'
import page from './above-limit.md'
import { loadSpan } from './rep-max.ts'

interface AboveLimit extends ItemFault {
	readonly percent: Exact
}

export const aboveLimit: Rule = {
	code: 'above-limit',
	area: 'dose',
	level: 'warning',
	summary: 'A set is above the highest percent that the limits allow.',
	source: 'the `no set above …%` of the limits',
	fix: 'none',
	since: '0.1.0',
	page,
	check: itemChecks<AboveLimit>({
		faultsIn: (session, whose, programme) => {
			const { noSetAbove, estimator } = limitsFor(whose, programme)
			if (noSetAbove === undefined) return []
			return (
				session.items
					// A test is there to go past what is known.
					.filter(item => item.role === 'main' || item.role === 'accessory')
					.flatMap(item =>
						item.sets.flatMap((set): AboveLimit[] => {
							const percent = leastPercent(set, item, estimator?.value ?? 'epley')
							return percent && percent.compare(noSetAbove.value) > 0 ? [{ item, set, cause: '', percent }] : []
						}),
					)
			)
		},
		finding: (same, whose, programme) => {
			const { noSetAbove } = limitsFor(whose, programme)
			const highest = same.reduce((most, one) => (compare(one.percent, most.percent) > 0 ? one : most))
			const weeks = weeksInWords(same.map(one => one.session.runWeek))
			const lift = titleOf('movement', liftOf(highest.item), programme)
			const of = lift === titleOfItem(highest.item) ? 'the best' : `the best of ${lift}`
			const origin = noSetAbove?.origin ?? ''
			return {
				message: `${titleOfItem(highest.item)} goes to ${decimal(highest.percent, 1)}% of ${of} in ${weeks}; no set goes above ${noSetAbove ? decimal(noSetAbove.value) : ''}% (${origin}). Lower it, or write down the better best first.`,
				source: origin,
				related: noSetAbove
					? [{ definition: noSetAbove.definition, span: noSetAbove.span, message: 'The limit stands here.' }]
					: [],
			}
		},
		spanOf: loadSpan,
	}),
}
