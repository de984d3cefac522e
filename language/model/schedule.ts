import type { Best, Block, Gym, Item, Lifter, Movement, Plan, Run, Session, SessionDay } from './definitions.ts'
import type { ChangeStep, Clusters, Effort, PercentBase, SetGroup, Tempo, Work } from './prescription.ts'
import type { CalendarDate, Exact, ExactRange, Mass, PartOfDay, Unit, Weekday } from './quantities.ts'
import type { Name } from './text.ts'
import type { Role } from './vocabulary.ts'

/**
 * What a block asks for week by week, and what a plan makes of it: first without a lifter (`BlockOutline`), then dated and with loads
 * (`Schedule`).
 */

/** The load of one set before anyone's numbers are put in. Progression lines and deload shares are already worked in. */
export type PlannedLoad =
	/** `share × reference + added`; a percent of the top set waits for that set's load on the bar. */
	| { readonly kind: 'percent'; readonly percent: ExactRange; readonly of: PercentBase; readonly added: readonly Mass[] }
	/** Masses times `share` (1 but for deload fills), plus what progression lines have added. */
	| { readonly kind: 'mass'; readonly from: Mass; readonly to: Mass; readonly share: Exact; readonly added: readonly Mass[] }
	| { readonly kind: 'bodyweight'; readonly extra: Mass | undefined; readonly share: Exact; readonly added: readonly Mass[] }
	/** A percent of the lifter's bodyweight. */
	| { readonly kind: 'of-bodyweight'; readonly percent: ExactRange; readonly added: readonly Mass[] }
	| { readonly kind: 'rm'; readonly reps: number; readonly share: Exact; readonly added: readonly Mass[] }
	/** An effort alone gives the load. */
	| { readonly kind: 'effort'; readonly share: Exact; readonly added: readonly Mass[] }
	/** A computed warm-up: a share (1 is the whole) of the first working load of the session's first main item. */
	| { readonly kind: 'warm-up'; readonly share: Exact }
	| { readonly kind: 'none' }

/** One set as the block asks for it. */
export interface PlannedSet {
	readonly group: SetGroup
	/** `3-4 x 8` gives a fourth that is optional. */
	readonly optional: boolean
	readonly work: Work
	readonly load: PlannedLoad
	readonly effort: Effort | undefined
	readonly until: Effort | undefined
	readonly clusters: Clusters | undefined
	readonly tempo: Tempo | undefined
	readonly restSeconds: Exact
	readonly eachSide: boolean
}

/** What a block has on top of what is written, because it is not run for the first time. */
export interface AddedByTimes {
	readonly step: ChangeStep
	/** How often it was run before. */
	readonly times: number
}

export interface PlannedItem {
	readonly item: Item
	readonly role: Role
	readonly movementName: Name
	readonly movement: Movement | undefined
	/** Why these sets: a line of that week, the line for every week, the deload line, or nothing at all. */
	readonly from: 'week-line' | 'every-week' | 'deload-fill' | 'skip' | 'computed-warm-up' | 'none'
	/** How often `each week …` has acted on these sets. */
	readonly changeCount: number
	/** How often `each session …` has acted on them. */
	readonly sessionChangeCount: number
	/** `undefined` where the block is run for the first time, or no time adds anything. */
	readonly addedByTimes: AddedByTimes | undefined
	/** The training week that a deload week was filled from. */
	readonly filledFrom: number | undefined
	readonly sets: readonly PlannedSet[]
	/** Main, accessory or test with sets: what counts for caps, needs and volume. */
	readonly working: boolean
}

/** A session on one of its days in a week. */
export interface PlannedSession {
	readonly session: Session
	/** The one of its days that it is, or that its turn gives it; `undefined` where it has none. */
	readonly day: SessionDay | undefined
	readonly items: readonly PlannedItem[]
}

export interface PlannedWeek {
	/** From 1. */
	readonly week: number
	readonly deload: boolean
	/** Has any working item. */
	readonly hasWork: boolean
	readonly sessions: readonly PlannedSession[]
}

export interface BlockOutline {
	readonly block: Block
	readonly weeks: readonly PlannedWeek[]
}

/** One step of how a number came about, in words, with the numbers in them. */
export interface Step {
	readonly text: string
	/** Of a formula or a fact, where there is one. */
	readonly source?: string
}

/** How a number came about. It is put into words when somebody asks: most are never asked for, and the words are more than the numbers. */
export type Steps = () => readonly Step[]

/** The max that a load refers to: the latest best of the movement that `percent of` names, known on the run's first day. */
export interface LoadReference {
	/** The movement whose best it is. */
	readonly movementName: string
	readonly best: Best
	/** Reps to failure of the best; 1 where it was lifted as a single. */
	readonly repsToFailure: Exact
	/** Is it an estimate from reps or an effort? */
	readonly estimated: boolean
	/** From more than 10 reps to failure. */
	readonly uncertain: boolean
	/** One-rep max of `movementName`; of a lift on top of bodyweight, what is added. */
	readonly max: Exact
	/** The bodyweight that is lifted with it, in `unit`: 0 where the load is all that is lifted, `undefined` where it is not known. */
	readonly body: Exact | undefined
	/** Percent of `max` that `percent of` takes; 100 where nothing is said. */
	readonly share: Exact
	/** What a percent is a percent of: `share` of `max`. */
	readonly amount: Exact
	/** Of `max` and `amount`. */
	readonly unit: Unit
}

/** A load with its way. */
export interface ComputedLoad {
	/** Before rounding; for a range its low end. `undefined` where it cannot be known. */
	readonly exact: Exact | undefined
	/** On the bar (for each hand where there are two); for a range its low end. */
	readonly load: Exact | undefined
	/** High end of a range, else `undefined`. */
	readonly loadTo: Exact | undefined
	readonly exactTo: Exact | undefined
	readonly unit: Unit
	/** Discs a side, heaviest first; `undefined` where no bar is loaded. */
	readonly perSide: readonly Exact[] | undefined
	readonly reference: LoadReference | undefined
	/** The exact load as a percent of the reference, however it is written; `undefined` where no best is known. */
	readonly percent: ExactRange | undefined
	/** What is on the bar as a percent of the reference; `undefined` where no best is known. */
	readonly percentOfBest: Exact | undefined
	/** Why a load cannot be known, in a coach's words. */
	readonly reason: string | undefined
	readonly missing: MissingFact | undefined
	/** More than the gym can load: `load` is the most that it can. */
	readonly beyond: boolean
	/** Less than the empty bar or the lightest implement: `load` is that. */
	readonly under: boolean
	readonly steps: Steps
}

/**
 * What a load lacks: a best, a base, a bodyweight, a lifter at all, the equipment, a mass that can be loaded, a top set to refer to, or a
 * load of its own, after a swap (the one in the block was meant for another movement) and in clusters (an effort gives none).
 */
export type MissingFact = 'best' | 'base' | 'bodyweight' | 'lifter' | 'equipment' | 'loadable' | 'top-set' | 'own-load'

export interface ScheduledSet extends PlannedSet {
	readonly computed: ComputedLoad
}

export interface ScheduledItem extends Omit<PlannedItem, 'sets'> {
	readonly sets: readonly ScheduledSet[]
	/** The plan put it in, or put it in place of another. */
	readonly changedBy: 'add' | 'swap' | undefined
	/** Where `changedBy` is `swap`: the movement that the block names. */
	readonly insteadOf: Name | undefined
	/** In whose text its sets stand. */
	readonly prescribedIn: 'block' | 'plan'
}

export interface ScheduledSession {
	readonly date: CalendarDate
	readonly weekday: Weekday
	/** `undefined`: at no time in particular. */
	readonly part: PartOfDay | undefined
	readonly run: ScheduledRun
	/** The day for which it was meant before pauses moved it on. */
	readonly meant: CalendarDate
	/** The day from which a line of the plan moves it to this one. */
	readonly movedFrom: CalendarDate | undefined
	/** Week of the block, from 1. */
	readonly blockWeek: number
	/** Week of the run, from 1: counted through where the block is run several times. */
	readonly runWeek: number
	/** Week of the plan, from 1: calendar weeks since the first. */
	readonly planWeek: number
	readonly deload: boolean
	readonly session: Session
	/** Where the lifter trains on that date; `undefined`: nowhere in particular, with everything there. */
	readonly gym: Gym | undefined
	/** What the lifter takes in place of what a movement asks for. */
	readonly uses: Lifter['uses']
	readonly items: readonly ScheduledItem[]
}

export interface ScheduledRun {
	readonly run: Run
	readonly block: Block
	/** The later of its monday and the plan's start: bests, gates and ages are taken at this date. */
	readonly firstDay: CalendarDate
	/** The monday of its week 1. */
	readonly monday: CalendarDate
	/** All of them, where the block is run several times. */
	readonly weeks: number
	/** Of the block, run once. */
	readonly blockWeeks: number
	/** By week, pauses included; where a pause tears a week apart, the monday of its first part. */
	readonly mondays: readonly CalendarDate[]
	/** Calendar weeks that hold only a part of a week of the run, the rest being before or after a pause. */
	readonly tornMondays: readonly CalendarDate[]
	/** The sunday of its last week. */
	readonly lastDay: CalendarDate
}

/**
 * A session without a date: its `day N` has no weekday in the plan, it falls before the start, or a pause would move it into a later run that
 * has a day of its own.
 */
export interface LeftOutSession {
	readonly run: ScheduledRun
	readonly session: Session
	readonly day: SessionDay | undefined
	readonly blockWeek: number
	readonly runWeek: number
	readonly why: 'no-day' | 'before-start' | 'overrun'
}

export interface Schedule {
	readonly plan: Plan
	readonly lifter: Lifter | undefined
	readonly unit: Unit
	readonly runs: readonly ScheduledRun[]
	/** By date and part of the day, then in the order of the block. */
	readonly sessions: readonly ScheduledSession[]
	readonly leftOut: readonly LeftOutSession[]
}
