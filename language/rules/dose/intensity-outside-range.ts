import { leastPercent, mostPercent } from '../../compute/percents.ts'
import { clamped } from '../common/dose-text.ts'
import type { Rule } from '../rule.ts'
import { type DoseFact, doseChecks, setsOutside } from './dose-range.ts'
import page from './intensity-outside-range.md'

const intensity: DoseFact = {
	rangeOf: movement => movement.intensity,
	outside: (session, estimator) =>
		setsOutside(session, intensity.rangeOf, (set, item) => ({
			least: leastPercent(set, item, estimator),
			most: mostPercent(set, item, estimator),
		})),
	verb: 'is loaded to',
	amount: number => `${number}%`,
	remedies: {
		over: 'Heavier than that it becomes another exercise.',
		under: 'Lighter than that it does not train what it is there for.',
	},
	spanOf: ({ set: { group } }) => group.load?.span ?? group.ramp?.span ?? group.span,
	into: (group, range) => {
		const { load } = group
		if (load?.kind !== 'percent' || load.of !== undefined) return undefined
		return { ...group, load: { ...load, percent: clamped(load.percent, range) } }
	},
}

const code = 'intensity-outside-range'

export const intensityOutsideRange: Rule = {
	code,
	area: 'dose',
	level: 'warning',
	summary: 'A set is heavier or lighter, in percent of its reference, than the range of its movement.',
	source: 'the `intensity` of the movement',
	fix: 'to confirm',
	since: '0.1.0',
	page,
	check: doseChecks(code, intensity),
}
