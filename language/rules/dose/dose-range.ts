import { limitsFor } from '../../compute/limits.ts'
import { rangeText } from '../../compute/loads/wording.ts'
import type { Block, Movement, Plan } from '../../model/definitions.ts'
import type { Finding, RelatedPlace, ShownLevel } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { Exact, ExactRange } from '../../model/quantities.ts'
import type { TextEdit } from '../../model/reading.ts'
import type { PlannedItem, PlannedSet, ScheduledItem } from '../../model/schedule.ts'
import type { Fact, Span } from '../../model/text.ts'
import type { Estimator } from '../../model/vocabulary.ts'
import { groupedBy } from '../common/groups.ts'
import { originOf } from '../common/origins.ts'
import { blockSessions, type PlacedSession, planSessions } from '../common/placed-sessions.ts'
import { distinctPlaces, placeOfItem } from '../common/places.ts'
import { weeksInWords } from '../common/weeks.ts'
import type { CheckByKind } from '../rule.ts'

/** One dose fact of a movement, and how what is prescribed is measured by it. */
export interface DoseFact {
	/** What the definition allows. */
	readonly rangeOf: (movement: Movement) => Fact<ExactRange> | undefined
	/** What lies outside in one session; the places of the text are those of its first set. */
	/** The allowed range in words, where it is more than the range. */
	readonly allowedInWords?: (movement: Movement) => string | undefined
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

export interface Outside {
	readonly item: PlannedItem
	readonly set: PlannedSet
	readonly movement: Movement
	readonly side: Side
	/** The end that lies outside: the low end of too much, the high end of too little. */
	readonly value: Exact
	/** The written set group is all that the value is made of: changing it there changes the whole. */
	readonly isWhole: boolean
}

/** The checks of a fact in blocks, and in plans for what only their lifters, swaps, additions and scales bring out. */
export function doseChecks(fact: DoseFact): CheckByKind {
	const ofBlock = (block: Block, programme: Programme): readonly Placed<PlacedSession>[] => {
		const estimator = limitsFor(undefined, programme).estimator?.value ?? 'epley'
		return outsideIn(blockSessions(block, programme), fact, estimator)
	}
	return {
		block: (block, programme) => {
			const found = programme.derived(block, ofBlock)
			return groupedBy(found, one => `${one.item.item.span.start} ${one.side}`).map(same => {
				const [one] = same
				const range = fact.rangeOf(one.movement)?.value
				const edits = range === undefined ? undefined : editsOf(same, range, fact)
				const corrections = edits && range ? [{ title: `Bring it to ${fact.amount(nearestBound(one.side, range))}`, edits }] : []
				return { ...findingOf(same, fact, programme), span: fact.spanOf(one), corrections }
			})
		},
		plan: (plan, programme) => checkPlan(plan, programme, fact, ofBlock),
	}
}

interface Placed<S extends PlacedSession> extends Outside {
	readonly session: S
}

function outsideIn<S extends PlacedSession>(sessions: readonly S[], fact: DoseFact, estimator: Estimator): readonly Placed<S>[] {
	return sessions.flatMap(session =>
		fact
			.outside(session, estimator)
			// A deload week is meant to hold less.
			.filter(one => one.side === 'over' || !session.deload)
			.map(one => ({ ...one, session })),
	)
}

function checkPlan(
	plan: Plan,
	programme: Programme,
	fact: DoseFact,
	ofBlock: (block: Block, programme: Programme) => readonly Placed<PlacedSession>[],
): Finding[] {
	const estimator = limitsFor(plan.lifter.text, programme).estimator?.value ?? 'epley'
	const found = outsideIn(planSessions(plan, programme), fact, estimator)
	const key = ({ session, movement, side }: Placed<PlacedSession>) =>
		`${session.session.name.text} ${session.blockWeek} ${movement.name.text} ${side}`
	// What a block holds whoever runs it is said there.
	const known = new Map(
		[...new Set(found.map(one => one.session.run.block))].map(block => [
			block,
			new Set(programme.derived(block, ofBlock).map(key)),
		]),
	)
	const own = found.filter(one => !known.get(one.session.run.block)?.has(key(one)))
	return groupedBy(own, one => `${one.session.run.monday} ${one.movement.name.text} ${one.side}`).map(same => {
		const finding = findingOf(same, fact, programme)
		const places = same.map(one => placeOfItem(one.item as ScheduledItem, one.session, 'It is prescribed here.'))
		return {
			...finding,
			span: same[0].session.run.run.header,
			related: [...distinctPlaces(places), ...(finding.related ?? [])],
		}
	})
}

function findingOf(
	same: readonly [Placed<PlacedSession>, ...Placed<PlacedSession>[]],
	fact: DoseFact,
	programme: Programme,
): Omit<Finding, 'span'> {
	const [{ movement, side }] = same
	const title = movement.title?.text ?? movement.name.text
	const origin = originOf(movement, programme)
	const allowed = fact.rangeOf(movement)
	const values = same.map(one => one.value).sort((a, b) => a.compare(b))
	const from = values[0]
	const to = values.at(-1)
	const prescribed = from && to ? fact.amount(rangeText({ from, to })) : ''
	const when = weeksInWords(same.map(one => one.session.blockWeek))
	const range = fact.allowedInWords?.(movement) ?? (allowed ? fact.amount(rangeText(allowed.value)) : '')
	const related: RelatedPlace[] = allowed ? [{ definition: movement, span: allowed.span, message: 'Its range stands here.' }] : []
	return {
		message: `${title} ${fact.verb} ${prescribed} in ${when}; its range is ${range} (${origin}). ${fact.remedies[side]}`,
		source: origin,
		related,
		...(side === 'under' && fact.levelUnder ? { level: fact.levelUnder } : {}),
	}
}

/** Changes for every faulty set group, or none at all where one of them cannot be changed in its place. */
function editsOf(same: readonly Placed<PlacedSession>[], range: ExactRange, fact: DoseFact): readonly TextEdit[] | undefined {
	const edits = new Map<number, TextEdit>()
	for (const one of same) {
		// A number that the weeks have moved on, or a deload line has made, is not the one that is written.
		const isWritten = one.isWhole && one.item.changeCount === 0 && one.item.from !== 'deload-fill'
		const edit = isWritten ? fact.edit(one, range) : undefined
		if (edit === undefined) return undefined
		edits.set(edit.span.start, edit)
	}
	return [...edits.values()]
}

function nearestBound(side: Side, range: ExactRange): string {
	const bound = side === 'over' ? range.to : range.from
	return rangeText({ from: bound, to: bound })
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
				return [{ item, set, movement, side: 'over', value: least, isWhole: true }]
			if (most !== undefined && most.compare(range.from) < 0)
				return [{ item, set, movement, side: 'under', value: most, isWhole: true }]
			return []
		})
	})
}
