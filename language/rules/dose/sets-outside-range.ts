import { exact } from '../../compute/exact.ts'
import type { Movement } from '../../model/definitions.ts'
import type { PlannedSet } from '../../model/schedule.ts'
import { clampedCount } from '../common/dose-text.ts'
import { groupedBy } from '../common/groups.ts'
import { counted } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import { type DoseFact, doseChecks, type Outside } from './dose-range.ts'
import page from './sets-outside-range.md'

const sets: DoseFact = {
	rangeOf: ({ sets: fact }) => fact && { span: fact.span, value: { from: exact(fact.value.from), to: exact(fact.value.to) } },
	outside: session => {
		const items = session.items.filter(item => item.working && item.role !== 'test')
		return groupedBy(items, item => item.movementName.text).flatMap((same): Outside[] => {
			const [item] = same
			const { movement } = item
			const range = movement?.sets?.value
			const all = same.flatMap(each => each.sets)
			const [set] = all
			if (movement === undefined || range === undefined || set === undefined || isOneSetOf(all, movement)) return []
			const sure = all.filter(each => !each.optional).length
			const isWhole = all.every(each => each.group === set.group)
			if (sure > range.to) return [{ item, set, movement, cause: 'over', value: exact(sure), isWhole }]
			if (all.length < range.from) return [{ item, set, movement, cause: 'under', value: exact(all.length), isWhole }]
			return []
		})
	},
	verb: 'is done for',
	amount: number => `${counted(number, 'set')} a session`,
	remedies: {
		over: 'Spread them over two days, or take some away.',
		under: 'Add what is missing, or leave it out that day.',
	},
	spanOf: ({ set }) => set.group.dose,
	into: (group, range) => {
		const into = { from: range.from.valueOf(), to: range.to.valueOf() }
		return { ...group, sets: clampedCount(group.sets, into) }
	},
}

/** `reps 5-8 or one set of 12-15`: a single set of the other kind is all that is asked for. */
function isOneSetOf(all: readonly PlannedSet[], movement: Movement): boolean {
	const other = movement.reps?.orOneSetOf
	const [set] = all
	if (other === undefined || all.length !== 1 || set?.work.kind !== 'reps') return false
	return set.work.reps.from <= other.to && set.work.reps.to >= other.from
}

const code = 'sets-outside-range'

export const setsOutsideRange: Rule = {
	code,
	area: 'dose',
	level: 'warning',
	summary: 'A session has more or fewer sets of a movement than its definition allows.',
	source: 'the `sets` of the movement',
	fix: 'to confirm',
	since: '0.1.0',
	page,
	check: doseChecks(code, sets),
}
