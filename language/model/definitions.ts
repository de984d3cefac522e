import type { Change, ChangeStep, Milestone, Prescription, Tempo } from './prescription.ts'
import type { CalendarDate, CountRange, Exact, ExactRange, Mass, PartOfDay, Weekday } from './quantities.ts'
import type { Fault, Reference } from './reading.ts'
import type { Fact, Name, QuotedText, Span } from './text.ts'
import type { Deviation, Estimator, Level, Link, Role } from './vocabulary.ts'

/**
 * The eleven kinds of definition, as plain immutable data. Each is read from its own text alone: names are names here, and what they
 * stand for is looked up in a `Programme`. A definition object is replaced when its text changes, and only then.
 */
export type Definition = Movement | Breakdown | Progression | Limits | Gym | Lifter | Block | Plan | Log | Team | RuleLevels

export const definitionKinds = [
	'movement',
	'breakdown',
	'progression',
	'limits',
	'gym',
	'lifter',
	'block',
	'plan',
	'log',
	'team',
	'rules',
] as const
export type DefinitionKind = (typeof definitionKinds)[number]

/** What every definition has. */
interface DefinitionBase {
	/** The name after the keyword; its text is empty where none could be read. For a log: the lifter's name. */
	readonly name: Name
	readonly title: QuotedText | undefined
	/** From the keyword to the last word of the definition. */
	readonly span: Span
	/** Keyword, name and title. */
	readonly header: Span
	readonly source: QuotedText | undefined
	readonly notes: readonly QuotedText[]
	readonly allows: readonly Allow[]
	/** What could not be read, or was read in a form that is not ours. */
	readonly faults: readonly Fault[]
	/** Every name in it that another definition gives, in the order of the text. */
	readonly references: readonly Reference[]
}

/** `allow RULE because "reason"`. */
export interface Allow {
	readonly rule: Name
	readonly because: QuotedText | undefined
	readonly span: Span
	/** The stretch of text whose problems it silences: its item, session, run or definition. */
	readonly scope: Span
	/** In a team's plan, below `for per-holst`: the member whose problems it silences, and no other's. */
	readonly member?: string
}

export interface MuscleShare {
	readonly muscle: string
	/** 1 direct, 0.5 assisting. */
	readonly share: Exact
	readonly span: Span
}

/** `at most 2 sessions a week from 75%`. */
export interface FrequencyCap {
	readonly sessions: number
	readonly fromPercent: Exact | undefined
	readonly span: Span
}

/** What a lifter must have shown. In `passed` lines the same shapes are the evidence. */
export type Gate = { readonly kind: 'sign-off'; readonly movement: Name | undefined; readonly span: Span } | DoneGate

/** A gate that work passes, not somebody's word. */
export type DoneGate = { readonly movement: Name; readonly span: Span; readonly often: HowOften } & (
	| { readonly kind: 'hold'; readonly seconds: Exact; readonly with: GateLoad | undefined }
	| { readonly kind: 'reps'; readonly reps: number; readonly at: GateLoad | undefined }
	| { readonly kind: 'load'; readonly at: GateLoad }
)

/** `x 3 in 2 sessions`: so many sets, all in one session, in each of so many sessions. Once in one, where nothing is said. */
export interface HowOften {
	readonly sets: number
	readonly sessions: number
}

/** A mass, or `1.5 x bodyweight`. */
export type GateLoad = Mass | { readonly bodyweights: Exact }

export interface Movement extends DefinitionBase {
	readonly kind: 'movement'
	readonly pattern: Fact<string> | undefined
	/** The first is the link it trains; a second is trained beside it. */
	readonly trains: Fact<readonly Link[]> | undefined
	readonly muscles: readonly MuscleShare[]
	/** Empty: any role. */
	readonly roles: Fact<readonly Role[]> | undefined
	readonly equipment: readonly Fact<string>[]
	readonly sets: Fact<CountRange> | undefined
	/** `reps 5-8 or one set of 12-15`. */
	readonly reps: (Fact<CountRange> & { readonly orOneSetOf: CountRange | undefined }) | undefined
	readonly holdSeconds: Fact<ExactRange> | undefined
	readonly carryMetres: Fact<ExactRange> | undefined
	readonly intensity: Fact<ExactRange> | undefined
	readonly caps: readonly FrequencyCap[]
	readonly apartDays: Fact<number> | undefined
	/** What `at 70%` refers to: that movement's best, or the share (percent) of it. */
	readonly percentOf: { readonly movement: Name; readonly share: Exact; readonly span: Span } | undefined
	readonly gates: readonly Gate[]
	readonly order: readonly { readonly side: 'before' | 'after'; readonly pattern: string; readonly span: Span }[]
	/** Implements carried at once; the written load is for each. */
	readonly hands: number
	/** The written load is on top of bodyweight. */
	readonly loadAdded: boolean
}

/** `needs stability 6 sets a week`. */
export interface Need {
	/** A link, or a muscle. */
	readonly what: string
	readonly amount: Exact
	readonly unit: 'sessions' | 'sets'
	readonly span: Span
}

/** How a lift fails, and what training must then hold. */
export interface Breakdown extends DefinitionBase {
	readonly kind: 'breakdown'
	/** The main one first. */
	readonly weakLinks: Fact<readonly Link[]> | undefined
	readonly needs: readonly Need[]
	/** Empty: every movement whose first link is the weak one. */
	readonly answeredBy: readonly Name[]
	readonly caution: QuotedText | undefined
}

export interface ProgressionStep {
	readonly movement: Name
	readonly after: Gate | undefined
	readonly span: Span
}

export interface Progression extends DefinitionBase {
	readonly kind: 'progression'
	readonly steps: readonly ProgressionStep[]
}

/** What holds over a whole week or block; facts merge, lifter over team over workspace over built-in. */
export interface Limits extends DefinitionBase {
	readonly kind: 'limits'
	/** The lifter or team that they are for; `undefined`: for all. */
	readonly owner: Name | undefined
	readonly loadRise: Fact<Exact> | undefined
	readonly volumeRise: Fact<Exact> | undefined
	readonly lighterWeekEvery: Fact<CountRange> | undefined
	readonly heavy: Fact<{ readonly fromPercent: Exact; readonly sessions: number }> | undefined
	readonly heavyHingeAndSquat: Fact<{ readonly sessions: number; readonly apartDays: number | undefined }> | undefined
	readonly sessionSeconds: Fact<Exact> | undefined
	readonly bestsWeeks: Fact<number> | undefined
	readonly gatesWeeks: Fact<number> | undefined
	readonly noSetAbove: Fact<Exact> | undefined
	/** `muscle sets 4-25 a week`. */
	readonly muscleSets: Fact<CountRange> | undefined
	readonly estimator: Fact<Estimator> | undefined
	readonly deviation: Fact<Deviation> | undefined
}

export interface Bar {
	readonly name: Name
	readonly mass: Mass
	readonly span: Span
}

export interface PlateSupply {
	readonly mass: Mass
	/** Single discs; without a count the supply is not limited. */
	readonly count: number | undefined
	readonly span: Span
}

export interface Gym extends DefinitionBase {
	readonly kind: 'gym'
	readonly bars: readonly Bar[]
	readonly plates: Fact<readonly PlateSupply[]> | undefined
	/** Mass of the pair. */
	readonly collars: Fact<Mass> | undefined
	readonly dumbbells: Fact<{ readonly from: Mass; readonly to: Mass; readonly by: Mass }> | undefined
	readonly stacks: readonly {
		readonly name: Name
		readonly from: Mass
		readonly to: Mass
		readonly by: Mass
		readonly span: Span
	}[]
	readonly fixed: readonly { readonly name: Name; readonly masses: readonly Mass[]; readonly span: Span }[]
	readonly equipment: readonly Fact<string>[]
	/** How an exact load becomes one that can be put on the bar; `nearest` has ties go down. */
	readonly round: 'nearest' | 'down' | 'up'
}

export interface TrainsAt {
	readonly gym: Name
	readonly from: CalendarDate | undefined
	readonly to: CalendarDate | undefined
	readonly span: Span
}

/** `best back-squat 112.5 kg x 3 rpe 9 on 2026-09-01`: with reps or an effort it is an estimate. */
export interface Best {
	readonly movement: Name
	readonly mass: Mass
	readonly reps: number | undefined
	/** Reps in reserve. */
	readonly reserve: Exact
	readonly on: CalendarDate | undefined
	readonly span: Span
}

/** `base deadlift 92.5%`: a share (percent) of the best, or a mass. */
export interface Base {
	readonly movement: Name
	readonly share: Exact | undefined
	readonly mass: Mass | undefined
	readonly span: Span
}

/** `fails deadlift with back-rounding above 80% from … until …`. */
export interface Fails {
	readonly movement: Name
	readonly breakdown: Name
	readonly above: Exact | undefined
	readonly from: CalendarDate | undefined
	readonly until: CalendarDate | undefined
	readonly span: Span
}

/** `keep deadlift to 82.5% until …`. */
export interface Keep {
	readonly movement: Name
	readonly to: Exact
	readonly from: CalendarDate | undefined
	readonly until: CalendarDate | undefined
	readonly because: QuotedText | undefined
	readonly span: Span
}

export interface Passed {
	/** The evidence in a gate's shape; its movement is always stated. */
	readonly gate: Gate
	readonly on: CalendarDate | undefined
	readonly because: QuotedText | undefined
	readonly span: Span
}

/** `avoid overhead-press until …`, `avoid pattern press`. */
export interface Avoid {
	readonly movement: Name | undefined
	readonly pattern: string | undefined
	readonly from: CalendarDate | undefined
	readonly until: CalendarDate | undefined
	readonly because: QuotedText | undefined
	readonly span: Span
}

/** `uses light-barbell as barbell`: what the lifter takes where a movement asks for the other. */
export interface Uses {
	readonly implement: Name
	readonly insteadOf: Name
	readonly span: Span
}

export interface Lifter extends DefinitionBase {
	readonly kind: 'lifter'
	readonly trainsAt: readonly TrainsAt[]
	readonly bodyweight: Fact<Mass> | undefined
	readonly bests: readonly Best[]
	readonly bases: readonly Base[]
	readonly fails: readonly Fails[]
	readonly keeps: readonly Keep[]
	readonly passed: readonly Passed[]
	readonly available: Fact<readonly Weekday[]> | undefined
	readonly avoids: readonly Avoid[]
	readonly uses: readonly Uses[]
}

export interface WeekLine {
	readonly weeks: readonly CountRange[]
	/** `week 3: skip`. */
	readonly skip: boolean
	readonly prescription: Prescription | undefined
	readonly span: Span
}

/** One movement in a session, with what to do in which week. */
export interface Item {
	readonly role: Role
	readonly movement: Name
	readonly everyWeek: Prescription | undefined
	readonly weekLines: readonly WeekLine[]
	readonly changes: readonly Change[]
	readonly milestones: readonly Milestone[]
	/** Back to back with the item above. */
	readonly withItemAbove: boolean
	readonly notes: readonly QuotedText[]
	readonly span: Span
	/** Weeks of the block outside of which a plan does not have it, since it stands in the place of another item there. */
	readonly inWeeks?: readonly CountRange[]
	/** Weeks in which a plan has another item in its place. */
	readonly notInWeeks?: readonly CountRange[]
}

/** A day that a session stands on, as it is written: `monday evening`, or the `3` of `on day 1, 3`. */
export interface SessionDay {
	readonly weekday: Weekday | undefined
	/** `on day 1`: the plan's `days` say which weekday. */
	readonly number: number | undefined
	/** `undefined`: at no time in particular. */
	readonly part: PartOfDay | undefined
	/** The weekday or the number, without the part of the day. */
	readonly span: Span
}

export interface Session {
	readonly name: Name
	readonly title: QuotedText | undefined
	/** In the order of the week, each day once; empty where the session has no day of its own. */
	readonly days: readonly SessionDay[]
	readonly items: readonly Item[]
	readonly notes: readonly QuotedText[]
	readonly header: Span
	readonly span: Span
}

/** `turn a, b over monday, wednesday, friday`: a, b, a in the first week, b, a, b in the second. */
export interface Turn {
	/** Names of the block's sessions, in the order in which they take turns. */
	readonly sessions: readonly Name[]
	/** In the order of the week, each day once. */
	readonly days: readonly SessionDay[]
	readonly span: Span
}

export interface Deload {
	readonly weeks: readonly CountRange[]
	/** Percent of the sets of the last training week; `undefined`: the items' own lines say it. */
	readonly sets: Exact | undefined
	/** Percent of the load. */
	readonly load: Exact | undefined
	readonly span: Span
}

export interface Block extends DefinitionBase {
	readonly kind: 'block'
	readonly weeks: Fact<number> | undefined
	readonly deload: Deload | undefined
	readonly targets: readonly Name[]
	readonly answers: readonly Name[]
	readonly percentsOf: Fact<'best' | 'base'> | undefined
	readonly requires: readonly Gate[]
	readonly turns: readonly Turn[]
	readonly sessions: readonly Session[]
}

/** What a plan changes in a block that it runs. */
export type RunChange =
	| {
			readonly kind: 'swap'
			readonly from: Name
			readonly to: Name
			/** What the new movement is done with; `undefined`: the block's own, as far as that means anything for it. */
			readonly prescription?: Prescription | undefined
			/** `in week 2-3`, counted through the run; absent: in all of its weeks. */
			readonly weeks?: readonly CountRange[] | undefined
			readonly because: QuotedText | undefined
			readonly span: Span
	  }
	| {
			readonly kind: 'add'
			readonly item: Item
			readonly session: Name
			readonly because: QuotedText | undefined
			readonly span: Span
	  }
	| { readonly kind: 'drop'; readonly movement: Name; readonly because: QuotedText | undefined; readonly span: Span }
	| {
			readonly kind: 'scale'
			readonly movement: Name
			/** Percent of the exact load. */
			readonly share: Exact
			readonly because: QuotedText | undefined
			readonly span: Span
	  }
	| {
			readonly kind: 'move'
			readonly session: Name
			readonly to: Weekday
			readonly because: QuotedText | undefined
			readonly span: Span
	  }
	| DayMove

/** `move heavy-pull from 2026-10-07 to 2026-10-09`: one session, once. */
export interface DayMove {
	readonly kind: 'move-day'
	readonly session: Name
	readonly from: CalendarDate
	readonly fromSpan: Span
	readonly to: CalendarDate
	readonly because: QuotedText | undefined
	readonly span: Span
}

export interface Run {
	readonly block: Name
	readonly from: CalendarDate | undefined
	/** How often the block is run, one time after the other. */
	readonly times: number
	/** `each time add 2.5 kg`: what each time has on top of the one before. */
	readonly eachTime: ChangeStep | undefined
	readonly changes: readonly RunChange[]
	readonly notes: readonly QuotedText[]
	/** The `run` line itself. */
	readonly header: Span
	readonly span: Span
	/** Below `for per-holst`: what holds in this run for one member of a team alone. */
	readonly members: readonly MemberRun[]
	/** Where lines for all can be added: behind those that there are. */
	readonly linesEnd: Span
	/** Where lines for one member can be added: behind everything that stands before the next run. */
	readonly tail: Span
	/** In a member's plan: lines that are added stand below `for per-holst`. */
	readonly forMember?: string
}

/** The lines of a run that hold for one member of a team. */
export interface MemberRun {
	readonly member: Name
	readonly changes: readonly RunChange[]
	readonly notes: readonly QuotedText[]
	readonly span: Span
}

/** `pause 2026-10-19 to 2026-11-01 because "flu"`: both days are part of it. */
export interface Pause {
	readonly from: CalendarDate
	readonly to: CalendarDate
	readonly because: QuotedText | undefined
	readonly span: Span
}

export interface Meet {
	readonly on: CalendarDate
	readonly title: QuotedText | undefined
	readonly span: Span
}

/** What a plan says about days, beside its runs. */
export interface PlanDays {
	/** The day itself, also where it is written as so many weeks before another one. */
	readonly start: Fact<CalendarDate> | undefined
	readonly days: Fact<readonly Weekday[]> | undefined
	readonly pauses: readonly Pause[]
	readonly meets: readonly Meet[]
	/** Moves of single sessions that stand below no run. */
	readonly moves: readonly DayMove[]
}

/** Below `for per-holst`: what a team's plan says for one member alone, what belongs to a run apart. */
export interface MemberDays extends PlanDays {
	readonly member: Name
	readonly notes: readonly QuotedText[]
	readonly span: Span
}

/**
 * A plan for one lifter; or, as it is written, for a team. `Programme.plansIn` makes a team's plan into the plans of its members, which are
 * what is scheduled and checked.
 */
export interface Plan extends DefinitionBase, PlanDays {
	readonly kind: 'plan'
	/** For whom it is: a lifter, or, as it is written, a team. */
	readonly lifter: Name
	readonly runs: readonly Run[]
	readonly members: readonly MemberDays[]
	/** Of a member's plan: the team's, in whose text all of it stands. */
	readonly teamPlan?: Plan
}

/** One set that was done. */
export interface LoggedSet {
	readonly reps: number | undefined
	readonly seconds: Exact | undefined
	readonly metres: Exact | undefined
	/** How long the distance took, or the time in which the reps were done. */
	readonly tookSeconds: Exact | undefined
	/** What was on the bar; `undefined` where none is stated. */
	readonly mass: Mass | undefined
	readonly bodyweight: boolean
	readonly rpe: Exact | undefined
	readonly rir: Exact | undefined
	readonly missed: number
	/** Position was lost. */
	readonly brokeWith: Name | undefined
	/** Reps without a rest, where the set was done in clusters. */
	readonly clusterReps: number | undefined
	readonly tempo: Tempo | undefined
	readonly eachSide: boolean
	readonly span: Span
}

export interface LoggedLift {
	readonly movement: Name
	readonly sets: readonly LoggedSet[]
	readonly span: Span
}

export interface LogEntry {
	readonly on: CalendarDate | undefined
	readonly session: Name | undefined
	readonly missed: boolean
	readonly because: QuotedText | undefined
	readonly lifts: readonly LoggedLift[]
	/** Rating 0–10 and length. */
	readonly felt: { readonly rating: Exact; readonly seconds: Exact; readonly span: Span } | undefined
	readonly hurt: readonly QuotedText[]
	readonly notes: readonly QuotedText[]
	readonly span: Span
}

export interface Cleared {
	readonly on: CalendarDate | undefined
	readonly because: QuotedText | undefined
	readonly span: Span
}

export interface Log extends DefinitionBase {
	readonly kind: 'log'
	readonly entries: readonly LogEntry[]
	readonly cleared: readonly Cleared[]
}

export interface Team extends DefinitionBase {
	readonly kind: 'team'
	readonly members: readonly Name[]
	readonly trainsAt: readonly TrainsAt[]
}

export interface RuleLevels extends DefinitionBase {
	readonly kind: 'rules'
	readonly levels: readonly { readonly rule: Name; readonly level: Level | undefined; readonly span: Span }[]
}

/** The definition of one kind. */
export type DefinitionOf<K extends DefinitionKind> = Extract<Definition, { kind: K }>
