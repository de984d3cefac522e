import { clamped } from '../common/dose-text.ts'
import type { Rule } from '../rule.ts'
import page from './carry-outside-range.md'
import { type DoseFact, doseChecks, setsOutside } from './dose-range.ts'

const carry: DoseFact = {
	rangeOf: movement => movement.carryMetres,
	outside: session =>
		setsOutside(session, carry.rangeOf, ({ work }) =>
			work.kind === 'carry' ? { least: work.metres.from, most: work.metres.to } : { least: undefined, most: undefined },
		),
	verb: 'goes',
	amount: number => `${number} m`,
	remedies: {
		over: 'Farther than that it becomes conditioning: add load instead.',
		under: 'A carry this short is over before position is tested.',
	},
	levelUnder: 'info',
	spanOf: ({ set }) => set.group.dose,
	into: (group, range) =>
		group.work.kind === 'carry' ? { ...group, work: { ...group.work, metres: clamped(group.work.metres, range) } } : undefined,
}

const code = 'carry-outside-range'

export const carryOutsideRange: Rule = {
	code,
	area: 'dose',
	level: 'warning',
	summary: 'A carry is longer or shorter than the range of its movement; shorter is a remark only.',
	source: 'the `carry` of the movement',
	fix: 'to confirm',
	since: '0.1.0',
	page,
	check: doseChecks(code, carry),
}
