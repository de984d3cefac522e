import { exact } from '../../compute/exact.ts'
import { countText } from '../../compute/loads/wording.ts'
import type { CountRange } from '../../model/quantities.ts'
import type { PlannedSet } from '../../model/schedule.ts'
import { clampedCount } from '../common/dose-text.ts'
import type { PlacedSession } from '../common/placed-sessions.ts'
import { counted } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import { type DoseFact, doseChecks, setsOutside } from './dose-range.ts'
import page from './reps-outside-range.md'

const reps: DoseFact = {
	rangeOf: movement => movement.reps && { span: movement.reps.span, value: exactly(movement.reps.value) },
	allowedInWords: ({ reps: stated }) =>
		stated?.orOneSetOf && `${countText(stated.value)} reps, or one set of ${countText(stated.orOneSetOf)}`,
	outside: session =>
		setsOutside(session, reps.rangeOf, (set, item) => {
			const { work } = set
			const other = item.movement?.reps?.orOneSetOf
			if (work.kind !== 'reps' || (other && isTheOne(set, other, session, item.movementName.text))) return nothing
			// `5 or more` has no high end.
			return { least: exact(work.reps.from), most: work.orMore ? undefined : exact(work.reps.to) }
		}),
	verb: 'is done for',
	amount: number => counted(number, 'rep'),
	remedies: {
		over: 'Take load up and reps down.',
		under: 'Take load down and reps up.',
	},
	spanOf: ({ set }) => set.group.dose,
	into: (group, range) => {
		const { work } = group
		if (work.kind !== 'reps') return undefined
		const into = { from: range.from.valueOf(), to: range.to.valueOf() }
		return { ...group, work: { ...work, reps: clampedCount(work.reps, into) } }
	},
}

const nothing = { least: undefined, most: undefined }

function exactly({ from, to }: CountRange) {
	return { from: exact(from), to: exact(to) }
}

/** `or one set of 12-15`: is it the session's only set of that kind? */
function isTheOne(set: PlannedSet, other: CountRange, session: PlacedSession, movement: string): boolean {
	const isOfKind = ({ work }: PlannedSet) => work.kind === 'reps' && work.reps.from <= other.to && work.reps.to >= other.from
	const all = session.items.filter(item => item.working && item.movementName.text === movement).flatMap(item => item.sets)
	return isOfKind(set) && all.filter(isOfKind).length === 1
}

const code = 'reps-outside-range'

export const repsOutsideRange: Rule = {
	code,
	area: 'dose',
	level: 'warning',
	summary: 'A set has more or fewer reps than the range of its movement.',
	source: 'the `reps` of the movement',
	fix: 'to confirm',
	since: '0.1.0',
	page,
	check: doseChecks(code, reps),
}
