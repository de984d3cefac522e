import { reserveOf } from '../../compute/effort.ts'
import { estimatorTitle } from '../../compute/estimates.ts'
import { compare, decimal, exact, smaller, zero } from '../../compute/exact.ts'
import { limitsFor } from '../../compute/limits.ts'
import { rangeText } from '../../compute/loads/wording.ts'
import type { Effort } from '../../model/prescription.ts'
import type { Exact } from '../../model/quantities.ts'
import { titleOfItem } from '../common/exposures.ts'
import { itemChecks } from '../common/item-checks.ts'
import { weeksInWords } from '../common/weeks.ts'
import { counted } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import page from './effort-disagrees.md'
import { isBeyondRepMax, ofBothInWords, type RepSet, repSets } from './rep-max.ts'

/** Reps by which the percent may be harder than the effort: nobody rates nearer than that (common practice). */
const tolerance = exact('1.5')

interface Disagreement extends RepSet {
	/** As it is written: `rpe 8`, `until rpe 9`. */
	readonly effort: Effort
	readonly isStop: boolean
	/** Reps that the percent leaves in reserve; the effort asks for more. */
	readonly left: Exact
	readonly asked: Exact
}

export const effortDisagrees: Rule = {
	code: 'effort-disagrees',
	area: 'dose',
	level: 'warning',
	summary: 'A percent is harder than the effort that stands beside it.',
	source: 'Zourdos et al. 2016, J Strength Cond Res 30(1):267-275, and the formula of the limits',
	fix: 'none',
	since: '0.1.0',
	page,
	check: itemChecks<Disagreement>({
		faultsIn: (session, whose, programme) =>
			repSets(session, whose, programme)
				// Where the reps alone are too many, that is said.
				.filter(one => !isBeyondRepMax(one))
				.flatMap(disagreement),
		finding: (same, whose, programme) => {
			const { estimator } = limitsFor(whose, programme)
			const worst = same.reduce((most, one) => (compare(gap(one), gap(most)) > 0 ? one : most))
			const { item, reps, percent, possible, effort, isStop, left, asked } = worst
			const weeks = weeksInWords(same.map(one => one.session.runWeek))
			const formula = estimatorTitle(estimator?.value ?? 'epley')
			const effortText = `${isStop ? 'until ' : ''}${effort.scale} ${effort.atMost ? 'at most ' : ''}${rangeText(effort.value)}`
			return {
				message: `${titleOfItem(item)} is asked for ${counted(reps, 'rep')} at ${decimal(percent, 1)}%${ofBothInWords(worst)} and ${effortText} in ${weeks}: the percent allows ${decimal(possible, 1)} reps (${formula}) and leaves ${decimal(left, 1)}, the effort asks to leave ${decimal(asked, 1)}; up to ${decimal(tolerance)} apart is no matter. Lower the percent, or allow more effort.`,
				source: `${formula} (${estimator?.origin ?? 'common practice'})`,
			}
		},
		spanOf: ({ effort }) => effort.span,
	}),
}

function disagreement(one: RepSet): Disagreement[] {
	const { load, until } = one.set
	// A stop that the first set is past already is no stop.
	const effort = one.set.effort ?? until
	if (effort === undefined || (load.kind !== 'percent' && load.kind !== 'rm')) return []
	// Of a range the harder end: the coach has left room for it.
	const asked = smaller(reserveOf({ ...effort, value: effort.value.from }), reserveOf({ ...effort, value: effort.value.to }))
	const left = one.possible.sub(exact(one.reps))
	if (asked.sub(left).compare(tolerance) <= 0) return []
	return [{ ...one, effort, isStop: effort === until, asked, left: left.compare(zero) < 0 ? zero : left }]
}

function gap({ asked, possible, reps }: Disagreement): Exact {
	return asked.sub(possible).add(exact(reps))
}
