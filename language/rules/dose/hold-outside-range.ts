import { clamped } from '../common/dose-text.ts'
import type { Rule } from '../rule.ts'
import { type DoseFact, doseChecks, setsOutside } from './dose-range.ts'
import page from './hold-outside-range.md'

const hold: DoseFact = {
	rangeOf: movement => movement.holdSeconds,
	outside: session =>
		setsOutside(session, hold.rangeOf, ({ work }) =>
			// `3 x 1 min` of a movement that is held is a hold too.
			work.kind === 'hold' || work.kind === 'time'
				? { least: work.seconds.from, most: work.seconds.to }
				: { least: undefined, most: undefined },
		),
	verb: 'is held',
	amount: number => `${number} s`,
	remedies: {
		over: 'Past it, load or a harder movement trains more than time does.',
		under: 'A hold this short is over before position is tested.',
	},
	levelUnder: 'info',
	spanOf: ({ set }) => set.group.dose,
	into: (group, range) => {
		const { work } = group
		if (work.kind !== 'hold' && work.kind !== 'time') return undefined
		return { ...group, work: { kind: 'hold', seconds: clamped(work.seconds, range) } }
	},
}

const code = 'hold-outside-range'

export const holdOutsideRange: Rule = {
	code,
	area: 'dose',
	level: 'warning',
	summary: 'A hold is longer or shorter than the range of its movement; shorter is a remark only.',
	source: 'the `hold` of the movement',
	fix: 'to confirm',
	since: '0.1.0',
	page,
	check: doseChecks(code, hold),
}
