import { compare, decimal, exact, zero } from '../../compute/exact.ts'
import { rangeText } from '../../compute/loads/wording.ts'
import { inUnit, massText } from '../../compute/mass.ts'
import { lastTrainingWeek } from '../../compute/outline.ts'
import type { Block, Lifter, Movement } from '../../model/definitions.ts'
import type { Work } from '../../model/prescription.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { Exact, ExactRange, Mass, Unit } from '../../model/quantities.ts'
import type { PlannedSet, ScheduledSet } from '../../model/schedule.ts'
import { titleOfItem } from '../common/exposures.ts'
import { groupedBy } from '../common/groups.ts'
import { withoutLoneDeloads } from '../common/lone-deloads.ts'
import { originOf } from '../common/origins.ts'
import type { DatedSession, PlacedSession } from '../common/placed-sessions.ts'
import { distinctPlaces, placeOfItem } from '../common/places.ts'
import { findingsOn, type PlanFinding } from '../common/run-findings.ts'
import { blockWeeks, calendarWeeks } from '../common/week-rows.ts'
import { weeksInWords } from '../common/weeks.ts'
import type { Rule } from '../rule.ts'
import page from './load-before-position.md'

export const loadBeforePosition: Rule = {
	code: 'load-before-position',
	area: 'breakdowns',
	level: 'warning',
	summary: 'A stability movement gets heavier before its position and its time are there.',
	source: 'common practice: position, then time under tension, then load',
	fix: 'none',
	since: '0.1.0',
	page,
	check: {
		block: (block, programme) => inBlock(block, programme).map(one => findingInBlock(one, block, programme)),
		plan: (plan, programme) => findingsOn(plan, programme, ofLifter),
	},
}

/** The heaviest work of a movement in a week. */
interface Top<S extends PlacedSession> {
	readonly session: S
	readonly item: S['items'][number]
	/** Kilograms, on the bar or added; and as they are written, which rounding does not move. */
	readonly load: Exact
	readonly asked: Exact
	readonly mass: Mass
	readonly work: Work
	readonly sets: number
}

interface Week<S extends PlacedSession> {
	readonly week: number
	readonly deload: boolean
	readonly hasWork: boolean
	/** By movement. */
	readonly tops: ReadonlyMap<string, Top<S>>
}

interface Rise<S extends PlacedSession> {
	readonly movement: Movement
	readonly now: Top<S>
	readonly before: Top<S>
	/** "while its hold goes up too (30 to 35 s)" */
	readonly why: string
	readonly isUnder: boolean
}

type Rises<S extends PlacedSession> = readonly [Rise<S>, ...Rise<S>[]]

type MassOf = (set: PlannedSet | ScheduledSet) => { readonly load: Mass; readonly asked: Mass } | undefined

function rises<S extends PlacedSession>(weeks: readonly Week<S>[]): readonly Rise<S>[] {
	return weeks.flatMap(week => {
		const last = week.deload ? undefined : lastTrainingWeek(weeks, week.week)
		return [...week.tops].flatMap(([name, now]): Rise<S>[] => {
			const before = last?.tops.get(name)
			const { movement } = now.item
			if (before === undefined || movement === undefined) return []
			const heavier = compare(now.load, before.load) > 0 && compare(now.asked, before.asked) > 0
			const under = heavier ? underRange(now, movement) : undefined
			const up = heavier ? goesUp(now, before) : undefined
			const why = under ?? up
			return why === undefined ? [] : [{ movement, now, before, why, isUnder: under !== undefined }]
		})
	})
}

/** What is under its own range, at the high end of what the coach left open. */
function underRange({ work, sets }: Top<PlacedSession>, movement: Movement): string | undefined {
	const fewer = (what: string, has: ExactRange, range: ExactRange, unit: string) =>
		compare(has.to, range.from) < 0
			? `while its ${what}, ${rangeText(has)}${unit}, is under its range of ${rangeText(range)}${unit}`
			: undefined
	const counts = (from: number, to: number): ExactRange => ({ from: exact(from), to: exact(to) })
	const range = movement.sets?.value
	const inSets = range && fewer('number of sets', counts(sets, sets), counts(range.from, range.to), '')
	return (
		inSets ??
		(work.kind === 'hold' && movement.holdSeconds ? fewer('hold', work.seconds, movement.holdSeconds.value, ' s') : undefined) ??
		(work.kind === 'carry' && movement.carryMetres ? fewer('carry', work.metres, movement.carryMetres.value, ' m') : undefined) ??
		(work.kind === 'reps' && movement.reps
			? fewer(
					'number of reps',
					counts(work.reps.from, work.reps.to),
					counts(movement.reps.value.from, movement.reps.value.to),
					'',
				)
			: undefined)
	)
}

/** What goes up beside the load, by its low end. */
function goesUp(now: Top<PlacedSession>, before: Top<PlacedSession>): string | undefined {
	const more = (what: string, was: Exact, is: Exact, unit: string) =>
		compare(is, was) > 0 ? `while its ${what} goes up too (${decimal(was)} to ${decimal(is)}${unit})` : undefined
	const [work, last] = [now.work, before.work]
	return (
		(work.kind === 'hold' && last.kind === 'hold' ? more('hold', last.seconds.from, work.seconds.from, ' s') : undefined) ??
		(work.kind === 'carry' && last.kind === 'carry' ? more('carry', last.metres.from, work.metres.from, ' m') : undefined) ??
		(work.kind === 'reps' && last.kind === 'reps'
			? more('number of reps', exact(last.reps.from), exact(work.reps.from), '')
			: undefined) ??
		more('number of sets', exact(before.sets), exact(now.sets), '')
	)
}

/** The heaviest set of each stability movement; none where any of its loads is not known. */
function topsOf<S extends PlacedSession>(sessions: readonly S[], massOf: MassOf): ReadonlyMap<string, Top<S>> {
	const tops = new Map<string, Top<S>>()
	const unknown = new Set<string>()
	for (const session of sessions) {
		for (const item of session.items as readonly S['items'][number][]) {
			const name = item.movementName.text
			if (!item.working || item.movement?.trains?.value[0] !== 'stability') continue
			const sure = (item.sets as readonly PlannedSet[]).filter(set => !set.optional)
			for (const set of sure) {
				const mass = massOf(set)
				if (mass === undefined) {
					unknown.add(name)
					continue
				}
				const load = inUnit(mass.load, 'kg')
				const top = tops.get(name)
				if (top !== undefined && compare(load, top.load) <= 0) continue
				const asked = inUnit(mass.asked, 'kg')
				tops.set(name, { session, item, load, asked, mass: mass.load, work: set.work, sets: sure.length })
			}
		}
	}
	for (const name of unknown) tops.delete(name)
	return tops
}

/** In a block a load is known where it is written as a mass. */
function writtenMass({ load }: PlannedSet): ReturnType<MassOf> {
	if (load.kind !== 'mass' && load.kind !== 'bodyweight') return undefined
	const first = load.kind === 'mass' ? load.from : (load.extra ?? { amount: zero, unit: unitOf(load.added) })
	const amount = load.added.reduce((sum, mass) => sum.add(inUnit(mass, first.unit)), first.amount.mul(load.share))
	const mass = { amount, unit: first.unit }
	return { load: mass, asked: mass }
}

function unitOf(masses: readonly Mass[]): Unit {
	return masses[0]?.unit ?? 'kg'
}

/** In a plan, by what is loaded. With bodyweight it is what is added that counts. */
function loadedMass(set: PlannedSet | ScheduledSet): ReturnType<MassOf> {
	if (!('computed' in set)) return undefined
	if (set.load.kind === 'bodyweight') return writtenMass(set)
	const { load, exact: asked, unit } = set.computed
	return load && asked && { load: { amount: load, unit }, asked: { amount: asked, unit } }
}

/** By movement, the rises of a block. */
function inBlock(block: Block, programme: Programme): readonly Rises<PlacedSession>[] {
	return programme.derived(block, workOutBlock)
}

function workOutBlock(block: Block, programme: Programme): readonly Rises<PlacedSession>[] {
	const weeks = blockWeeks(block, programme).map(({ sessions, ...week }): Week<PlacedSession> => {
		return { ...week, tops: topsOf(sessions, writtenMass) }
	})
	return groupedBy(rises(weeks), one => one.movement.name.text)
}

function findingInBlock(found: Rises<PlacedSession>, block: Block, programme: Programme): Finding {
	const [{ now, before }] = found
	const [item, last] = [now.item.item, before.item.item]
	const place = {
		definition: block,
		span: last.movement.span,
		message: `${massText(before.mass)} in week ${before.session.runWeek}.`,
	}
	return {
		span: item.movement.span,
		message: messageOf(found, programme),
		source: 'common practice',
		related: last === item ? [] : [place],
	}
}

/** Where a plan's own loads, changes or borders between blocks make it so. */
function ofLifter(lifter: Lifter, programme: Programme): readonly PlanFinding[] {
	const weeks = withoutLoneDeloads(calendarWeeks(lifter, programme)).map(({ sessions, ...week }): Week<DatedSession> => {
		return { ...week, tops: topsOf(sessions, loadedMass) }
	})
	const found = rises(weeks).filter(one => !isBlocksOwn(one, programme))
	const place = ({ now, movement }: Rise<DatedSession>) =>
		`${now.session.plan.name.text} ${now.session.run.run.span.start} ${movement.name.text}`
	return groupedBy(found, place).map(same => {
		const { plan, run } = same[0].now.session
		const places = same.map(({ now }) => placeOfItem(now.item, now.session, `${massText(now.mass)} on ${now.session.date}.`))
		const span = run.run.header
		const related = distinctPlaces(places)
		return { plan, finding: { span, message: messageOf(same, programme), source: 'common practice', related } }
	})
}

function isBlocksOwn({ now, movement }: Rise<DatedSession>, programme: Programme): boolean {
	const { run, blockWeek } = now.session
	const own = inBlock(run.block, programme).find(([one]) => one.movement === movement)
	return own?.some(one => one.now.session.blockWeek === blockWeek) ?? false
}

function messageOf(found: Rises<PlacedSession>, programme: Programme): string {
	const [{ now, before, why, isUnder, movement }, ...others] = found
	const more = others.length > 0 ? ` (and again in ${weeksInWords(others.map(one => one.now.session.runWeek))})` : ''
	const source = isUnder ? ` (${originOf(movement, programme)})` : ''
	return `${titleOfItem(now.item)} goes from ${massText(before.mass)} to ${massText(now.mass)} in week ${now.session.runWeek}${more}, ${why}${source}. First position, then time under tension, then load: one at a time.`
}
