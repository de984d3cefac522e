import type { CalendarDate } from '../model/quantities.ts'

/**
 * What a block or a plan adds up to, week by week. The shape is the JSON that `volume --format json` prints, version 1: it is stable.
 * Figures are strings where they are not whole numbers.
 */
export interface WeeklyVolume {
	readonly version: 1
	/** Name of the block or plan. */
	readonly of: string
	readonly weeks: readonly VolumeWeek[]
}

export interface VolumeWeek {
	/** Week of the plan, or of the block where there is no plan. */
	readonly week: number
	readonly block: string
	readonly blockWeek: number
	/** Monday; `null` for a block without a plan. */
	readonly from: CalendarDate | null
	readonly deload: boolean
	readonly sessions: number
	/** Low end of the estimated length of the week's sessions. */
	readonly minutes: number
	/** Every movement with working sets. */
	readonly lifts: Readonly<Record<string, LiftVolume>>
	/** Hard sets a muscle, by its shares. */
	readonly muscles: Readonly<Record<string, string>>
	/** By the first link of each movement. */
	readonly links: Readonly<Record<'stability' | 'drive', { readonly sets: string; readonly seconds: number }>>
	/** Sets whose load or length cannot be known: left out of the totals above, never counted as 0. */
	readonly excludedSets: number
}

export interface LowHigh<T> {
	readonly low: T
	readonly high: T
}

export interface LiftVolume {
	readonly title: string
	/** Dates with a working item of it. */
	readonly sessions: number
	readonly sets: number
	readonly reps: LowHigh<number>
	/** In the plan's unit; `null` for a block without a lifter. */
	readonly tonnage: LowHigh<string> | null
	/** Sets × reps × percent, for a block without a lifter. */
	readonly relative: LowHigh<string> | null
	readonly averagePercent: string | null
	readonly topPercent: string | null
}
