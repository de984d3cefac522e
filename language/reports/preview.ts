import type { CalendarDate } from '../model/quantities.ts'
import type { Level, Link } from '../model/vocabulary.ts'
import type { LoadSheet } from './load-sheet.ts'
import type { WeeklyVolume } from './weekly-volume.ts'

/** What the server answers when a preview asks (`barstave/preview`): data alone, never markup or code. */
export interface PreviewData {
	readonly version: 1
	/** Every plan of the workspace folder, in the order of the picker. */
	readonly plans: readonly PlanChoice[]
	/** Name of the plan in `picture`; `null` where there is none to show. */
	readonly chosen: string | null
	readonly picture: Picture | null
	readonly stale: Stale | null
}

/** What a preview asks with: the plan that was picked, else the file from which the server picks the nearest plan. */
export interface PreviewQuestion {
	readonly plan?: string
	readonly uri?: string
	/** The plan that is on show: it stays as long as the file belongs to it too. */
	readonly shown?: string
}

export interface PlanChoice {
	readonly name: string
	/** The plan's title, its name where it has none. */
	readonly title: string
	readonly lifterTitle: string
}

/**
 * Part of the text cannot be read at the moment. Whoever shows the picture keeps what it last showed of the parts named here, and says
 * so.
 */
export interface Stale {
	/** What is broken and where, in a coach's words. */
	readonly message: string
	/** Names of the blocks that cannot be read; `null` where it is the plan or the lifter, so that nothing new can be shown. */
	readonly blocks: readonly string[] | null
}

/** All that a page about one plan or block shows. */
export interface Picture {
	/** The plan's (or block's) title, its name where it has none. */
	readonly title: string
	/** The lifter's title; `null` for a block. */
	readonly lifterTitle: string | null
	/** `null` where there is no lifter to load for. */
	readonly sheet: LoadSheet | null
	readonly volume: WeeklyVolume | null
	/** One entry for each of `volume.weeks`; `null` for a part week, on which needs are silent. */
	readonly needs: readonly (WeekNeeds | null)[]
	readonly titles: Titles
	readonly meets: readonly PreviewMeet[]
	readonly problems: readonly PreviewProblem[]
	/** Of the breakdowns that the lifter has: pain or symptoms. Always shown. */
	readonly cautions: readonly string[]
	/** How each load came about; `null` where a page does not say. */
	readonly ways: Ways | null
	/** Where each set is written; `null` where a page leads to no text. */
	readonly written: WrittenSets | null
}

/** Titles of what the load sheet only names; a name without an entry has no title. */
export interface Titles {
	readonly blocks: Readonly<Record<string, string>>
	readonly gyms: Readonly<Record<string, string>>
}

export interface PreviewMeet {
	readonly date: CalendarDate
	/** Empty where the plan gives none. */
	readonly title: string
}

/** What the lifter's declared breakdowns need in one week. */
export interface WeekNeeds {
	readonly links: Readonly<Partial<Record<Link, NeededWork>>>
	/** By muscle; only muscles that a breakdown names. */
	readonly muscles: Readonly<Record<string, NeededWork>>
}

export interface NeededWork {
	/** Sets a week, a decimal string; `null` where only sessions are asked for. */
	readonly sets: string | null
	readonly sessions: number | null
	/** What the week holds of it: sets and dates of the movements that answer, and of no other. */
	readonly answeringSets: string
	readonly answeringSessions: number
	/** Titles of the breakdowns that ask for it. */
	readonly because: readonly string[]
}

/** A problem as `check --format json` prints it, with the place to go to. */
export interface PreviewProblem {
	/** Path from the workspace folder, with `/`. */
	readonly file: string
	/** From 1. */
	readonly line: number
	readonly column: number
	readonly code: string
	readonly level: Exclude<Level, 'off'>
	readonly message: string
	readonly source: string | null
	readonly place: Place
}

/** A stretch of a document: lines and UTF-16 columns from 0, as editors count. */
export interface Place {
	readonly uri: string
	readonly range: { readonly start: Position; readonly end: Position }
}

export interface Position {
	readonly line: number
	readonly character: number
}

/** How loads came about, line by line: what the hover and `why` say too. Each way stands once, however many sets have it. */
export interface Ways {
	readonly texts: readonly (readonly string[])[]
	readonly ofSessions: readonly WaysOfSession[]
}

export interface WaysOfSession {
	readonly block: string
	readonly date: CalendarDate
	readonly session: string
	/** By item and set of the sheet's session: an index into `texts`. */
	readonly items: readonly (readonly number[])[]
}

/** The load sheet's sets by the text that asks for them; beside the sheet, whose own shape is published and stays as it is. */
export interface WrittenSets {
	/** Each set group's text once, however many sets come of it. */
	readonly places: readonly Place[]
	/** By session, item and set of the sheet: an index into `places`; `null` for a set that no text asks for, such as a computed warm-up. */
	readonly ofSets: readonly (readonly (readonly (number | null)[])[])[]
}
