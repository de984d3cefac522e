import { compare } from '../../compute/exact.ts'
import { limitsFor } from '../../compute/limits.ts'
import { rangeText } from '../../compute/loads/wording.ts'
import type { Block, Movement } from '../../model/definitions.ts'
import type { SetGroup } from '../../model/prescription.ts'
import type { Finding, ShownLevel } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { Exact, ExactRange } from '../../model/quantities.ts'
import type { TextEdit } from '../../model/reading.ts'
import type { PlannedItem, PlannedSet } from '../../model/schedule.ts'
import type { Fact, Span } from '../../model/text.ts'
import type { Estimator } from '../../model/vocabulary.ts'
import { doseText } from '../common/dose-text.ts'
import { type ItemFault, itemChecks, type SeenFaults } from '../common/item-checks.ts'
import { originOf } from '../common/origins.ts'
import type { PlacedSession } from '../common/placed-sessions.ts'
import { type Proposal, soundOnes, withGroups } from '../common/proposals.ts'
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
	/** A set group brought to the nearest bound; `undefined` where what is outside is not written there. */
	readonly into: (group: SetGroup, range: ExactRange) => SetGroup | undefined
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
export function doseChecks(code: string, fact: DoseFact): CheckByKind {
	return itemChecks<Outside>({
		faultsIn: (session, whose, programme) => {
			const estimator = limitsFor(whose, programme).estimator?.value ?? 'epley'
			// A deload week is meant to hold less.
			return fact.outside(session, estimator).filter(one => one.cause === 'over' || !session.deload)
		},
		finding: (same, _whose, programme) => findingOf(same, fact, programme),
		spanOf: fact.spanOf,
		corrections: (same, block, programme) => soundOnes(code, block, programme, () => corrected(same, fact, block)),
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
	const when = weeksInWords(same.map(one => one.session.runWeek))
	const range = fact.allowedInWords?.(movement) ?? (allowed ? fact.amount(rangeText(allowed.value)) : '')
	return {
		message: `${title} ${fact.verb} ${prescribed} in ${when}; its range is ${range} (${origin}). ${fact.remedies[cause]}`,
		source: origin,
		related: allowed ? [{ definition: movement, span: allowed.span, message: 'Its range stands here.' }] : [],
		...(cause === 'under' && fact.levelUnder ? { level: fact.levelUnder } : {}),
	}
}

/** The nearest bound for every faulty set group, or nothing at all where one of them cannot be changed in its place. */
function corrected(same: SeenFaults<Outside>, fact: DoseFact, block: Block): Proposal<Block>[] {
	const [{ movement, cause }] = same
	const range = fact.rangeOf(movement)?.value
	if (range === undefined) return []
	if (same.some(one => !one.isWhole)) return []
	const groups = new Map<SetGroup, SetGroup>()
	for (const { item, set } of same) {
		const group = isAsWritten(item) ? fact.into(set.group, range) : undefined
		if (group) groups.set(set.group, group)
	}
	// What `each week …` has brought outside is not corrected by another beginning.
	if (same.some(({ set }) => !groups.has(set.group))) return []
	const bound = cause === 'over' ? range.to : range.from
	return [
		{
			correction: {
				title: `Bring it to ${fact.amount(rangeText({ from: bound, to: bound }))}`,
				edits: [...groups].map(([before, after]) => editOf(before, after)),
			},
			changed: withGroups(block, group => groups.get(group) ?? group),
		},
	]
}

/** Has nothing moved its numbers on, neither `each week …` and `each session …` nor a deload line? */
function isAsWritten({ item, from, changeCount, sessionChangeCount }: PlannedItem): boolean {
	if (from === 'deload-fill') return false
	return item.changes.length === 0 || (changeCount === 0 && sessionChangeCount === 0)
}

/** A set group's change in the text: its dose, or its percent. */
function editOf(before: SetGroup, after: SetGroup): TextEdit {
	if (after.load?.kind === 'percent' && after.load !== before.load) {
		return { span: after.load.span, text: `at ${rangeText(after.load.percent)}%` }
	}
	return { span: before.dose, text: doseText(after.sets, after.work) }
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
