import type { CountRange, Exact, ExactRange, Mass } from './quantities.ts'
import type { Name, Span } from './text.ts'

/** What one set asks for, beside the load. */
export type Work =
	| { readonly kind: 'reps'; readonly reps: CountRange; readonly toFailure: boolean; readonly orMore: boolean }
	/** `60 s for reps`: as many as possible in that time; how many is not known before. */
	| { readonly kind: 'reps-in-time'; readonly seconds: ExactRange }
	| { readonly kind: 'hold'; readonly seconds: ExactRange }
	/** `20 m`; `20 m for time` is as fast as possible. */
	| { readonly kind: 'carry'; readonly metres: ExactRange; readonly forTime: boolean }
	| { readonly kind: 'time'; readonly seconds: ExactRange }

/** What a percent is a percent of. `undefined`: what the block's `percents of` line says, the best by default. */
export type PercentBase = 'best' | 'base' | 'top-set'

/** The load that is asked for, as it is written. */
export type LoadTarget =
	| { readonly kind: 'percent'; readonly percent: ExactRange; readonly of: PercentBase | undefined; readonly span: Span }
	| { readonly kind: 'mass'; readonly from: Mass; readonly to: Mass; readonly span: Span }
	/** `at bodyweight`, `at bodyweight + 10 kg`, `at bodyweight - 10 kg` (added is negative, the lifter is assisted). */
	| { readonly kind: 'bodyweight'; readonly added: Mass | undefined; readonly span: Span }
	/** `at 50% of bodyweight`. */
	| { readonly kind: 'of-bodyweight'; readonly percent: ExactRange; readonly span: Span }
	| { readonly kind: 'rm'; readonly reps: number; readonly span: Span }

/** `rpe 8`, `rir 2`; `atMost` is a ceiling beside a percent. */
export interface Effort {
	readonly scale: 'rpe' | 'rir'
	readonly value: ExactRange
	readonly atMost: boolean
	readonly span: Span
}

/** `in clusters of 2 resting 20 s`: the set is cut into pieces with a short rest between them. */
export interface Clusters {
	/** Reps of one piece; the last may be shorter. */
	readonly reps: number
	readonly restSeconds: Exact
	readonly span: Span
}

/** Seconds of each part; `'x'` is as fast as possible and counts as 1 s. */
export interface Tempo {
	readonly lowering: number
	readonly pause: number
	readonly lifting: number | 'x'
	readonly top: number
	readonly text: string
}

/** `4 x 5 at 70% tempo 3-1-1-0 rest 3 min`: one part of a prescription. */
export interface SetGroup {
	readonly span: Span
	/** `4 x 5` alone, without the clauses. */
	readonly dose: Span
	readonly sets: CountRange
	readonly work: Work
	readonly load: LoadTarget | undefined
	/** `ramp 4 x 4 from 60% to 78%`: evenly spaced, both ends included. */
	readonly ramp: { readonly from: Exact; readonly to: Exact; readonly span: Span } | undefined
	readonly effort: Effort | undefined
	/** `until rpe 9`: no set follows one that was as hard as that. */
	readonly until: Effort | undefined
	readonly clusters: Clusters | undefined
	readonly tempo: Tempo | undefined
	readonly restSeconds: Exact | undefined
	readonly eachSide: boolean
}

export interface Prescription {
	readonly span: Span
	readonly groups: readonly SetGroup[]
}

export type ChangeUnit = 'kg' | 'lb' | '%' | 's' | 'm' | 'reps' | 'sets' | 'rpe'

/** So much more, or less: `amount` is negative for `take`. */
export interface ChangeStep {
	readonly amount: Exact
	readonly unit: ChangeUnit
}

/** `each week add 2.5 kg`, `each session add 2.5 kg`. */
export interface Change extends ChangeStep {
	readonly span: Span
	readonly each: 'week' | 'session'
}

/** `once 3 x 12 reached add 2.5 kg`: the next step waits for what was reached, not for the calendar. */
export interface Milestone {
	readonly span: Span
	readonly reached: SetGroup
	readonly then:
		| ({ readonly kind: 'change' } & ChangeStep)
		/** `move to weighted-plank 3 x 30 s`. */
		| { readonly kind: 'move'; readonly movement: Name; readonly prescription: Prescription | undefined }
}
