import { sessionSeconds } from '../compute/duration.ts'
import { outlineBlock } from '../compute/outline.ts'
import type { Block } from '../model/definitions.ts'
import type { Programme } from '../model/programme.ts'
import type { PartOfDay, Weekday } from '../model/quantities.ts'
import type { PlannedItem, PlannedLoad, PlannedSession } from '../model/schedule.ts'
import { plannedSheetItem, type SheetItem, type SheetSet } from './load-sheet.ts'
import { loadWords } from './set-text.ts'

/** A block as its coach wrote it, week by week: percents, efforts and written masses, without anyone's numbers. */
export interface BlockSheet {
	readonly block: string
	readonly weeks: readonly BlockSheetWeek[]
}

export interface BlockSheetWeek {
	/** From 1. */
	readonly week: number
	readonly deload: boolean
	/** Those that have anything to do. */
	readonly sessions: readonly BlockSheetSession[]
}

export interface BlockSheetSession {
	readonly session: string
	readonly title: string | null
	/** `null` where a plan must say which day it is. */
	readonly weekday: Weekday | null
	/** `on day 1`: which of the plan's days. */
	readonly day: number | null
	readonly part: PartOfDay | null
	/** Low end of the estimated length. */
	readonly minutes: number
	readonly notes: readonly string[]
	readonly items: readonly BlockSheetItem[]
}

export interface BlockSheetItem extends SheetItem {
	readonly sets: readonly BlockSheetSet[]
}

export interface BlockSheetSet extends SheetSet {
	/** "bodyweight + 10 kg", "8 rm": a load that is neither a bare percent nor a bare mass. */
	readonly asked: string | null
}

/** Every week of a block with what its sets ask for. */
export function blockSheet(block: Block, programme: Programme): BlockSheet {
	return {
		block: block.name.text,
		weeks: outlineBlock(block, programme).weeks.map(({ week, deload, sessions }) => ({
			week,
			deload,
			sessions: sessions.filter(session => itemsToDo(session).length > 0).map(session => blockSheetSession(session, programme)),
		})),
	}
}

/** The items of a session that have anything to do, in the order of the sheet. */
export function itemsToDo({ items }: PlannedSession): readonly PlannedItem[] {
	return items.filter(item => item.sets.length > 0 || item.from === 'computed-warm-up')
}

function blockSheetSession(planned: PlannedSession, programme: Programme): BlockSheetSession {
	const { session } = planned
	return {
		session: session.name.text,
		title: session.title?.text ?? null,
		weekday: planned.day?.weekday ?? null,
		day: planned.day?.number ?? null,
		part: planned.day?.part ?? null,
		minutes: Math.round(sessionSeconds(planned.items).from.valueOf() / 60),
		notes: session.notes.map(note => note.text),
		items: itemsToDo(planned).map(item => blockSheetItem(item, programme)),
	}
}

function blockSheetItem(item: PlannedItem, programme: Programme): BlockSheetItem {
	const { sets, ...facts } = plannedSheetItem(item, programme)
	return { ...facts, sets: sets.map((set, index) => ({ ...set, asked: askedOf(item.sets[index]?.load) })) }
}

function askedOf(load: PlannedLoad | undefined): string | null {
	const isBare = load === undefined || load.kind === 'mass' || (load.kind === 'percent' && load.added.length === 0)
	return isBare ? null : (loadWords(load) ?? null)
}
