import type { CalendarDate } from '../model/quantities.ts'
import type { Level, Link } from '../model/vocabulary.ts'
import type { BlockAsks } from './block-asks.ts'
import type { BlockSheet } from './block-sheet.ts'
import type { PlanCalendar } from './calendar.ts'
import type { CappedMovement } from './cap-exposures.ts'
import type { GateOnTimeline } from './gate-timeline.ts'
import type { LoadSheet } from './load-sheet.ts'
import type { PlannedAgainstDone } from './planned-against-done.ts'
import type { TeamOverview } from './team-overview.ts'
import type { WeeklyVolume } from './weekly-volume.ts'

/** What the server answers when a preview asks (`barstave/preview`): data alone, never markup or code. */
export interface PreviewData {
	readonly version: 1
	/** What can be shown of the workspace folder, in the order of the picker. */
	readonly choices: readonly PreviewChoice[]
	/** What is shown; `null` where there is nothing to show. One of the three below is there then, by its kind. */
	readonly chosen: Subject | null
	/** Of a plan or a block. */
	readonly picture: Picture | null
	readonly team: TeamOverview | null
	readonly log: PlannedAgainstDone | null
	readonly stale: Stale | null
}

/** What a preview can be about. A log is named by its lifter. */
export interface Subject {
	readonly kind: 'plan' | 'block' | 'team' | 'log'
	readonly name: string
}

export interface PreviewChoice extends Subject {
	/** The title, the name where there is none. */
	readonly title: string
	/** Title of the lifter whose plan it is; `null` for what belongs to nobody. */
	readonly lifterTitle: string | null
}

/**
 * What a preview asks with: what it holds, else the place in the text from which the server picks. The request `barstave/previewSubject`
 * asks with the same what would be shown (`Subject | null`), and is answered quickly.
 */
export interface PreviewQuestion {
	/** What the coach has picked: it stays, wherever the cursor is. */
	readonly held?: Subject
	readonly uri?: string
	/** Where the cursor is in the file. */
	readonly at?: Position
	/** What is on show: a plan stays as long as the place belongs to it too, and anything while its text cannot be read. */
	readonly shown?: Subject
	/**
	 * The open problems may be the last ones that were given: who types sees the new loads before the rules have looked at them, and asks
	 * once more.
	 */
	readonly problemsMayBeOld?: boolean
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
	/** Names of the blocks that cannot be read; `null` where it is the subject itself or its lifter, so that nothing new can be shown. */
	readonly blocks: readonly string[] | null
}

/** All that a page about one plan or block shows. */
export interface Picture {
	readonly kind: 'plan' | 'block'
	/** The plan's (or block's) title, its name where it has none. */
	readonly title: string
	/** The lifter's title; `null` for a block. */
	readonly lifterTitle: string | null
	/** `null` where there is no lifter to load for. */
	readonly sheet: LoadSheet | null
	/** Of a block: its weeks in percents. */
	readonly blockSheet: BlockSheet | null
	/** Of a block: what it asks of a lifter. */
	readonly asks: BlockAsks | null
	/** Of a plan. */
	readonly calendar: PlanCalendar | null
	/** Of a plan, in the order in which they are needed. */
	readonly gates: readonly GateOnTimeline[]
	/** Movements with a cap, one number for each of `volume.weeks`. */
	readonly caps: readonly CappedMovement[]
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
	/** The session's on the sheet. */
	readonly id: string
	readonly block: string
	/** By item and set of the sheet's session: an index into `texts`. */
	readonly items: readonly (readonly number[])[]
}

/** The sets of the load sheet (of a block's own sheet) by the text that asks for them; beside the sheet, whose own shape is published and stays as it is. */
export interface WrittenSets {
	/** Each set group's text once, however many sets come of it. */
	readonly places: readonly Place[]
	/** By session, item and set of the sheet: an index into `places`; `null` for a set that no text asks for, such as a computed warm-up. */
	readonly ofSets: readonly (readonly (readonly (number | null)[])[])[]
}
