import { compare } from '../../compute/exact.ts'
import { limitsFor } from '../../compute/limits.ts'
import { rangeText } from '../../compute/loads/wording.ts'
import type { Movement } from '../../model/definitions.ts'
import type { Finding, ShownLevel } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { Exact, ExactRange } from '../../model/quantities.ts'
import type { Correction, TextEdit } from '../../model/reading.ts'
import type { PlannedItem, PlannedSet } from '../../model/schedule.ts'
import type { Fact, Span } from '../../model/text.ts'
import type { Estimator } from '../../model/vocabulary.ts'
import { type ItemFault, itemChecks, type SeenFaults } from '../common/item-checks.ts'
import { originOf } from '../common/origins.ts'
import type { PlacedSession } from '../common/placed-sessions.ts'
import { weeksInWords } from '../common/weeks.ts'
import type { CheckByKind } from '../rule.ts'

/** One dose fact of a movement, and how what is prescribed is measured by it. */
export interface DoseFact {
	/** What the definition allows. */
	readonly rangeOf: (movement: Movement) => Fact<ExactRange> | undefined
	/** The allowed range in words, where it is more than the range. */
	readonly allowedInWords?: (movement: Movement) => string | undefined
	/** What lies outside in one session. */
	readonly outside: (session: PlacedSession, estimator: Estimator) => readonly Outside[]
	/** "is held", before the number. */
	readonly verb: string
	/** A number or a range of it in words: "45 s", "3-5 sets a session". */
	readonly amount: (number: string) => string
	/** What to do where it is too much, and where it is too little. */
	readonly remedies: Readonly<Record<Side, string>>
	readonly levelUnder?: ShownLevel
	readonly spanOf: (one: Outside) => Span
	/** The change of one faulty set's text to the nearest bound; `undefined` where it is not there to be changed. */
	readonly edit: (one: Outside, range: ExactRange) => TextEdit | undefined
}

type Side = 'over' | 'under'

export interface Outside extends ItemFault {
	readonly movement: Movement
	readonly cause: Side
	/** The end that lies outside: the low end of too much, the high end of too little. */
	readonly value: Exact
	/** The written set group is all that the value is made of: changing it there changes the whole. */
	readonly isWhole: boolean
}

/** The checks of a dose fact. */
export function doseChecks(fact: DoseFact): CheckByKind {
	return itemChecks<Outside>({
		faultsIn: (session, lifter, programme) => {
			const estimator = limitsFor(lifter, programme).estimator?.value ?? 'epley'
			// A deload week is meant to hold less.
			return fact.outside(session, estimator).filter(one => one.cause === 'over' || !session.deload)
		},
		finding: (same, _lifter, programme) => findingOf(same, fact, programme),
		spanOf: fact.spanOf,
		corrections: same => correctionsOf(same, fact),
	})
}

function findingOf(same: SeenFaults<Outside>, fact: DoseFact, programme: Programme): Omit<Finding, 'span'> {
	const [{ movement, cause }] = same
	const title = movement.title?.text ?? movement.name.text
	const origin = originOf(movement, programme)
	const allowed = fact.rangeOf(movement)
	const values = same.map(one => one.value).sort(compare)
	const from = values[0]
	const to = values.at(-1)
	const prescribed = from && to ? fact.amount(rangeText({ from, to })) : ''
	const when = weeksInWords(same.map(one => one.session.blockWeek))
	const range = fact.allowedInWords?.(movement) ?? (allowed ? fact.amount(rangeText(allowed.value)) : '')
	return {
		message: `${title} ${fact.verb} ${prescribed} in ${when}; its range is ${range} (${origin}). ${fact.remedies[cause]}`,
		source: origin,
		related: allowed ? [{ definition: movement, span: allowed.span, message: 'Its range stands here.' }] : [],
		...(cause === 'under' && fact.levelUnder ? { level: fact.levelUnder } : {}),
	}
}

/** Changes for every faulty set group, or none at all where one of them cannot be changed in its place. */
function correctionsOf(same: SeenFaults<Outside>, fact: DoseFact): Correction[] {
	const [{ movement, cause }] = same
	const range = fact.rangeOf(movement)?.value
	if (range === undefined) return []
	const edits = new Map<number, TextEdit>()
	for (const one of same) {
		// A number that the weeks have moved on, or a deload line has made, is not the one that is written.
		const isWritten = one.isWhole && one.item.changeCount === 0 && one.item.from !== 'deload-fill'
		const edit = isWritten ? fact.edit(one, range) : undefined
		if (edit === undefined) return []
		edits.set(edit.span.start, edit)
	}
	const bound = cause === 'over' ? range.to : range.from
	const title = `Bring it to ${fact.amount(rangeText({ from: bound, to: bound }))}`
	return [{ title, edits: [...edits.values()] }]
}

/** What each working set of a session has, against the range of its movement. Tests ask for what a lifter can, not for a dose. */
export function setsOutside(
	session: PlacedSession,
	rangeOf: DoseFact['rangeOf'],
	/** What a set has at least, and at most; `undefined` where it has none of it, or nobody can know. */
	measure: (set: PlannedSet, item: PlannedItem) => { readonly least: Exact | undefined; readonly most: Exact | undefined },
): readonly Outside[] {
	return session.items.flatMap(item => {
		const { movement } = item
		const range = movement && rangeOf(movement)?.value
		if (movement === undefined || range === undefined || !item.working || item.role === 'test') return []
		return item.sets.flatMap((set): Outside[] => {
			const { least, most } = measure(set, item)
			if (least !== undefined && least.compare(range.to) > 0)
				return [{ item, set, movement, cause: 'over', value: least, isWhole: true }]
			if (most !== undefined && most.compare(range.from) < 0)
				return [{ item, set, movement, cause: 'under', value: most, isWhole: true }]
			return []
		})
	})
}
