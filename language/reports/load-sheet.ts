import type { CalendarDate, Unit, Weekday } from '../model/quantities.ts'
import type { Role } from '../model/vocabulary.ts'

/** The plan as a lifter needs it. The shape is the JSON that `sheet --format json` prints, version 1: it is stable. */
export interface LoadSheet {
	readonly version: 1
	readonly plan: string
	readonly lifter: string
	readonly unit: Unit
	readonly sessions: readonly SheetSession[]
}

export interface SheetSession {
	readonly date: CalendarDate
	readonly weekday: Weekday
	readonly block: string
	/** Week of the block. */
	readonly week: number
	readonly session: string
	readonly minutes: number
	readonly items: readonly SheetItem[]
}

export interface SheetItem {
	readonly movement: string
	readonly title: string
	readonly role: Role
	readonly sets: readonly SheetSet[]
	readonly notes: readonly string[]
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
	readonly metres: SheetRange<number> | null
	readonly eachSide: boolean
	readonly percent: SheetRange<string> | null
	readonly of: string | null
	readonly rpe: SheetRange<string> | null
	readonly rir: SheetRange<string> | null
	readonly exact: string | null
	readonly load: string | null
	readonly loadTo: string | null
	readonly unit: Unit
	readonly perSide: readonly string[] | null
	readonly reason: string | null
	readonly tempo: string | null
	readonly restSeconds: number | null
}
