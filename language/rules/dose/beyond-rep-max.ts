import { estimatorTitle } from '../../compute/estimates.ts'
import { compare, decimal } from '../../compute/exact.ts'
import { limitsFor } from '../../compute/limits.ts'
import { titleOfItem } from '../common/exposures.ts'
import { itemChecks } from '../common/item-checks.ts'
import { weeksInWords } from '../common/weeks.ts'
import { counted } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import page from './beyond-rep-max.md'
import { isBeyondRepMax, ofBothInWords, type RepSet, repSets } from './rep-max.ts'

export const beyondRepMax: Rule = {
	code: 'beyond-rep-max',
	area: 'dose',
	level: 'warning',
	summary: 'A set asks for more reps than its percent allows.',
	source: 'the formula of the limits (`estimate with …`)',
	fix: 'none',
	since: '0.1.0',
	page,
	check: itemChecks<RepSet>({
		faultsIn: (session, whose, programme) => repSets(session, whose, programme).filter(isBeyondRepMax),
		finding: (same, whose, programme) => {
			const { estimator } = limitsFor(whose, programme)
			const worst = same.reduce((most, one) => (compare(over(one), over(most)) > 0 ? one : most))
			const title = titleOfItem(worst.item)
			const weeks = weeksInWords(same.map(one => one.session.runWeek))
			const formula = estimatorTitle(estimator?.value ?? 'epley')
			const origin = estimator?.origin ?? 'common practice'
			return {
				message: `${title} has more reps than its percent allows in ${weeks}: ${counted(worst.reps, 'rep')}${clusterInWords(worst)} at ${decimal(worst.percent, 1)}%${ofBothInWords(worst)}, which allows ${decimal(worst.possible, 1)} (${formula}, ${origin}); one more than that is left to error. Take fewer reps or a lower percent.`,
				source: `${formula} (${origin})`,
			}
		},
		spanOf: ({ set }) => set.group.span,
	}),
}

/** " in a cluster", where the reps are those of one. */
function clusterInWords({ set }: RepSet): string {
	return set.clusters === undefined ? '' : ' in a cluster'
}

/** Reps past what is possible. */
function over({ reps, possible }: RepSet) {
	return possible.neg().add(reps)
}
