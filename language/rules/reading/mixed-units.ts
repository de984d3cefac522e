import type { Best, Lifter } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Rule } from '../rule.ts'
import page from './mixed-units.md'

export const mixedUnits: Rule = {
	code: 'mixed-units',
	area: 'reading',
	level: 'warning',
	summary: 'Bests of one lift of one lifter stand in kilograms and in pounds.',
	source: 'common practice',
	fix: 'none',
	since: '0.1.0',
	page,
	check: { lifter: checkLifter },
}

function* checkLifter(lifter: Lifter): Iterable<Finding> {
	const byMovement = new Map<string, Best[]>()
	for (const best of lifter.bests) {
		const name = best.movement.text
		byMovement.set(name, [...(byMovement.get(name) ?? []), best])
	}
	for (const [movement, [first, ...others]] of byMovement) {
		const other = others.find(best => best.mass.unit !== first?.mass.unit)
		if (!first || !other) continue
		yield {
			span: other.span,
			message: `The bests of ${movement} are in ${first.mass.unit} and in ${other.mass.unit}: one of the units is most likely a slip. Write them all in the unit of the bar.`,
			source: 'common practice',
			related: [{ definition: lifter, span: first.span, message: `In ${first.mass.unit} here.` }],
		}
	}
}
