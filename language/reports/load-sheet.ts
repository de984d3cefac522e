import { sessionSeconds } from '../compute/duration.ts'
import { decimal } from '../compute/exact.ts'
import { inUnit } from '../compute/mass.ts'
import type { Effort, PercentBase } from '../model/prescription.ts'
import type { Programme } from '../model/programme.ts'
import type { CalendarDate, Exact, ExactRange, Mass, PartOfDay, Unit, Weekday } from '../model/quantities.ts'
import type {
	ComputedLoad,
	PlannedItem,
	PlannedLoad,
	PlannedSet,
	Schedule,
	ScheduledItem,
	ScheduledSession,
	ScheduledSet,
} from '../model/schedule.ts'
import type { Role } from '../model/vocabulary.ts'
import { milestoneText } from './set-text.ts'

/** The plan as a lifter needs it. The shape is the JSON that `sheet --format json` prints, version 1: it is stable. */
export interface LoadSheet {
	readonly version: 1
	readonly plan: string
	readonly lifter: string
	readonly unit: Unit
	readonly sessions: readonly SheetSession[]
}

export interface SheetSession {
	/**
	 * Which session of the plan it is, by the names in the text and by nothing that is worked out: it stays what it is when loads, days or
	 * what else the plan holds change.
	 */
	readonly id: string
	readonly date: CalendarDate
	readonly weekday: Weekday
	/** `null`: at no time in particular. */
	readonly part: PartOfDay | null
	readonly block: string
	/** Week of the block; counted through where the block is run several times. */
	readonly week: number
	readonly planWeek: number
	readonly session: string
	readonly title: string | null
	/** Where the lifter trains that day. */
	readonly gym: string | null
	readonly deload: boolean
	/** Low end of the estimated length. */
	readonly minutes: number
	readonly notes: readonly string[]
	readonly items: readonly SheetItem[]
}

export interface SheetItem {
	readonly movement: string
	readonly title: string
	readonly role: Role
	/** Title of the movement that the plan has swapped for this one. */
	readonly insteadOf: string | null
	/** Back to back with the item before. */
	readonly withItemAbove: boolean
	/** Implements carried at once: the loads are for each. */
	readonly hands: number
	/** The loads are on top of bodyweight. */
	readonly loadAdded: boolean
	readonly sets: readonly SheetSet[]
	readonly notes: readonly string[]
	/** The next steps that wait for what is reached: "once 3 x 12 reps are reached: add 2.5 kg". */
	readonly milestones: readonly string[]
}

/** Whole numbers from–to; equal where one number is written. */
export interface SheetRange<T> {
	readonly from: T
	readonly to: T
}

/** One set, in the order done. Loads and percents are decimal strings. */
export interface SheetSet {
	readonly optional: boolean
	readonly reps: SheetRange<number> | null
	readonly openEnded: boolean
	readonly seconds: SheetRange<number> | null
	/** As many reps as those seconds hold. */
	readonly forReps: boolean
	readonly metres: SheetRange<number> | null
	/** As fast as possible over those metres. */
	readonly forTime: boolean
	/** Reps of a cluster, where the set is cut into such, and the rest between two. */
	readonly clusterReps: number | null
	readonly clusterRestSeconds: number | null
	readonly eachSide: boolean
	/** As it is asked for, with what progression and deload lines have made of it. */
	readonly percent: SheetRange<string> | null
	readonly of: PercentBase | 'bodyweight' | null
	readonly rpe: SheetRange<string> | null
	readonly rir: SheetRange<string> | null
	/** The effort is a ceiling. */
	readonly effortAtMost: boolean
	/** No set follows one that was as hard as that. */
	readonly untilRpe: string | null
	readonly untilRir: string | null
	readonly exact: string | null
	readonly load: string | null
	readonly loadTo: string | null
	readonly unit: Unit
	readonly perSide: readonly string[] | null
	readonly reason: string | null
	readonly tempo: string | null
	readonly restSeconds: number | null
}

/**
 * A plan as its lifter needs it: every session with its sets, the loads that go on the bar and the discs a side. `week` keeps one week of
 * the plan.
 */
export function loadSheet(
	schedule: Schedule,
	programme: Programme,
	{ week }: { readonly week?: number | undefined } = {},
): LoadSheet {
	const { plan, lifter, unit } = schedule
	return {
		version: 1,
		plan: plan.name.text,
		lifter: lifter?.name.text ?? plan.lifter.text,
		unit,
		sessions: sheetSessions(schedule, programme, week),
	}
}

function sheetSessions(schedule: Schedule, programme: Programme, week: number | undefined): readonly SheetSession[] {
	const ids = sessionIds(schedule)
	return sessionsOnSheet(schedule, week).map(session => sheetSession(session, ids.get(session)!, programme))
}

/**
 * `mara-autumn.hinge-rebuild-1.week-2.heavy-pull`: the first time that the plan runs that block, its second week. Where a week has a
 * session of that name more than once, the later ones are counted: `heavy-pull.2`.
 */
export function sessionIds({ plan, runs, sessions }: Schedule): ReadonlyMap<ScheduledSession, string> {
	const blocks = new Map(runs.map((run, index) => [run, blockOfRun(runs, index)]))
	const seen = new Map<string, number>()
	return new Map(
		sessions.map(session => {
			const id = [plan.name.text, blocks.get(session.run), `week-${session.runWeek}`, session.session.name.text].join('.')
			const number = (seen.get(id) ?? 0) + 1
			seen.set(id, number)
			return [session, number === 1 ? id : `${id}.${number}`]
		}),
	)
}

/** The name of a run's block, with how often the plan has run it by then. */
function blockOfRun(runs: Schedule['runs'], index: number): string {
	const name = runs[index]!.block.name.text
	return `${name}-${runs.slice(0, index + 1).filter(run => run.block.name.text === name).length}`
}

/** The sessions that have anything to do, in the order of the sheet. */
export function sessionsOnSheet(schedule: Schedule, week?: number): readonly ScheduledSession[] {
	return schedule.sessions.filter(
		session => (week === undefined || session.planWeek === week) && itemsOnSheet(session).length > 0,
	)
}

/** The items that have anything to do that day, in the order of the sheet: those with sets, and warm-ups that need no numbers. */
export function itemsOnSheet(session: ScheduledSession): readonly ScheduledItem[] {
	return session.items.filter(item => item.sets.length > 0 || item.from === 'computed-warm-up')
}

function sheetSession(session: ScheduledSession, id: string, programme: Programme): SheetSession {
	return {
		id,
		date: session.date,
		weekday: session.weekday,
		part: session.part ?? null,
		block: session.run.block.name.text,
		week: session.runWeek,
		planWeek: session.planWeek,
		session: session.session.name.text,
		title: session.session.title?.text ?? null,
		gym: session.gym?.name.text ?? null,
		deload: session.deload,
		minutes: Math.round(sessionSeconds(session.items).from.valueOf() / 60),
		notes: session.session.notes.map(note => note.text),
		items: itemsOnSheet(session).map(item => sheetItem(item, programme)),
	}
}

function sheetItem(item: ScheduledItem, programme: Programme): SheetItem {
	const instead = item.insteadOf?.text
	return {
		...itemFacts(item, programme),
		insteadOf: instead === undefined ? null : (programme.find('movement', instead)?.title?.text ?? instead),
		sets: item.sets.map(set => ({ ...setFacts(set), ...changedPercent(set), ...computedFacts(set) })),
	}
}

/** An item of a block without a lifter: a load stands there only where it is written as a mass. */
export function plannedSheetItem(item: PlannedItem, programme: Programme): SheetItem {
	return {
		...itemFacts(item, programme),
		insteadOf: null,
		sets: item.sets.map(set => ({ ...setFacts(set), ...writtenFacts(set.load) })),
	}
}

function itemFacts(item: PlannedItem, programme: Programme): Omit<SheetItem, 'insteadOf' | 'sets'> {
	// What leads up to a test has the test's words beside the test alone.
	const isWritten = item.role === item.item.role
	return {
		movement: item.movementName.text,
		title: item.movement?.title?.text ?? item.movementName.text,
		role: item.role,
		withItemAbove: item.item.withItemAbove,
		hands: item.movement?.hands ?? 1,
		loadAdded: item.movement?.loadAdded ?? false,
		notes: isWritten ? item.item.notes.map(note => note.text) : [],
		milestones: isWritten ? item.item.milestones.map(one => milestoneText(one, programme)) : [],
	}
}

type LoadFacts = Pick<SheetSet, 'exact' | 'load' | 'loadTo' | 'unit' | 'perSide' | 'reason'>

function setFacts(set: PlannedSet): Omit<SheetSet, keyof LoadFacts> {
	const { optional, work, load, effort, until, clusters, tempo, restSeconds, eachSide } = set
	const untilOf = (scale: Effort['scale']) => (until?.scale === scale ? decimal(until.value.from) : null)
	const scaled = (scale: Effort['scale']) => (effort?.scale === scale ? decimals(effort.value) : null)
	return {
		optional,
		reps: work.kind === 'reps' ? { from: work.reps.from, to: work.reps.to } : null,
		openEnded: work.kind === 'reps' && (work.orMore || work.toFailure),
		seconds: 'seconds' in work ? numbers(work.seconds) : null,
		forReps: work.kind === 'reps-in-time',
		metres: work.kind === 'carry' ? numbers(work.metres) : null,
		forTime: work.kind === 'carry' && work.forTime,
		clusterReps: clusters?.reps ?? null,
		clusterRestSeconds: clusters?.restSeconds.valueOf() ?? null,
		eachSide,
		percent: 'percent' in load ? decimals(load.percent) : null,
		of: load.kind === 'percent' ? load.of : load.kind === 'of-bodyweight' ? 'bodyweight' : null,
		rpe: scaled('rpe'),
		rir: scaled('rir'),
		effortAtMost: effort?.atMost ?? false,
		untilRpe: untilOf('rpe'),
		untilRir: untilOf('rir'),
		tempo: tempo?.text ?? null,
		restSeconds: restSeconds.valueOf(),
	}
}

/** `70%` that the plan scales, or to which the weeks have added 5 lb, is no 70% any more: what it is then, to a tenth. */
function changedPercent({ load, computed: { percent } }: ScheduledSet): Partial<Pick<SheetSet, 'percent'>> {
	if (load.kind !== 'percent' || load.of !== 'best' || percent === undefined || percent.from.equals(load.percent.from)) return {}
	return { percent: { from: decimal(percent.from, 1), to: decimal(percent.to, 1) } }
}

function computedFacts({ load, computed }: ScheduledSet): LoadFacts {
	return {
		exact: decimalOrNull(computed.exact),
		load: decimalOrNull(computed.load),
		loadTo: decimalOrNull(computed.loadTo),
		unit: computed.unit,
		perSide: computed.perSide?.map(disc => decimal(disc)) ?? null,
		reason: asksForLoad(load, computed) ? (computed.reason ?? null) : null,
	}
}

/**
 * Is something missing where there is no load? An effort alone asks for all that it means: whom no best is known of finds the load at the
 * bar; that no formula gives a load for it is said. A warm-up that the tool makes goes without numbers then; what it waits for is said at
 * the set that it leads up to.
 */
function asksForLoad(load: PlannedLoad, { missing }: ComputedLoad): boolean {
	if (missing === 'equipment' || missing === 'loadable') return true
	return load.kind === 'effort' ? missing === 'own-load' : load.kind !== 'warm-up'
}

function writtenFacts(load: PlannedLoad): LoadFacts {
	const unknown: LoadFacts = { exact: null, load: null, loadTo: null, unit: 'kg', perSide: null, reason: null }
	if (load.kind !== 'mass') return unknown
	const { unit } = load.from
	const { from, to } = writtenMass(load, unit)
	return { ...unknown, unit, load: decimal(from), loadTo: from.equals(to) ? null : decimal(to) }
}

/** With what progression lines have added and a deload's share has left. */
function writtenMass({ from, to, share, added }: PlannedLoad & { readonly kind: 'mass' }, unit: Unit): ExactRange {
	const withAll = (mass: Mass) => added.reduce((sum, each) => sum.add(inUnit(each, unit)), inUnit(mass, unit).mul(share))
	return { from: withAll(from), to: withAll(to) }
}

function decimals(range: ExactRange): SheetRange<string> {
	return { from: decimal(range.from), to: decimal(range.to) }
}

function numbers(range: ExactRange): SheetRange<number> {
	return { from: range.from.valueOf(), to: range.to.valueOf() }
}

function decimalOrNull(value: Exact | undefined): string | null {
	return value === undefined ? null : decimal(value)
}
