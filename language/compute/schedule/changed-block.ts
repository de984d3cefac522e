import type { Block, Item, Run, RunChange, Session } from '../../model/definitions.ts'
import type { CountRange, Exact, Weekday } from '../../model/quantities.ts'
import type { ScheduledItem } from '../../model/schedule.ts'
import { hundred, share } from '../exact.ts'
import { covers } from '../outline/week-choice.ts'

/** How a plan has touched an item. */
export type ItemChange = Pick<ScheduledItem, 'changedBy' | 'insteadOf' | 'prescribedIn'>

/** Of an item that is as the block has it. */
export const unchanged: ItemChange = { changedBy: undefined, insteadOf: undefined, prescribedIn: 'block' }

/** A block as one run of it is: with its swaps, additions and drops, and what the run says of days and loads. */
export interface ChangedBlock {
	/** The block itself where the run changes no item. */
	readonly block: Block
	readonly itemChanges: ReadonlyMap<Item, ItemChange>
	/** Percent by movement. */
	readonly scales: ReadonlyMap<string, Exact>
	/** Weekday by session. */
	readonly moves: ReadonlyMap<string, Weekday>
}

/**
 * The run's changes, one after the other as they are written: what a swap brings in, a later line can drop. Where the block is run several
 * times, `weeksBefore` of the run are over before this time.
 */
export function changedBlock(block: Block, run: Run, weeksBefore: number, blockWeeks: number): ChangedBlock {
	const itemChanges = new Map<Item, ItemChange>()
	const scales = new Map<string, Exact>()
	const moves = new Map<string, Weekday>()
	let sessions = block.sessions
	for (const change of run.changes) {
		switch (change.kind) {
			case 'swap':
				sessions = mapItems(sessions, item => {
					const weeks = weeksOfTime(change, weeksBefore, blockWeeks)
					if (item.movement.text !== change.from.text || weeks?.length === 0) return [item]
					const before = itemChanges.get(item)
					const swapped = swappedItem(item, change, weeks)
					const prescribedIn = change.prescription === undefined ? (before?.prescribedIn ?? 'block') : 'plan'
					itemChanges.set(swapped, { changedBy: 'swap', insteadOf: before?.insteadOf ?? item.movement, prescribedIn })
					if (weeks === undefined) return [swapped]
					const rest = { ...item, notInWeeks: [...(item.notInWeeks ?? []), ...weeks] }
					if (before) itemChanges.set(rest, before)
					return [rest, swapped]
				})
				break
			case 'drop':
				sessions = mapItems(sessions, item => (item.movement.text === change.movement.text ? [] : [item]))
				break
			case 'add':
				itemChanges.set(change.item, { changedBy: 'add', insteadOf: undefined, prescribedIn: 'plan' })
				sessions = sessions.map(session =>
					session.name.text === change.session.text ? { ...session, items: [...session.items, change.item] } : session,
				)
				break
			case 'scale':
				scales.set(change.movement.text, share(change.share, scales.get(change.movement.text) ?? hundred))
				break
			case 'move':
				moves.set(change.session.text, change.to)
				break
			case 'move-day':
				// One day alone is the calendar's.
				break
		}
	}
	return { block: sessions === block.sessions ? block : { ...block, sessions }, itemChanges, scales, moves }
}

type Swap = RunChange & { kind: 'swap' }

/** The weeks of the block in which a swap holds this time; `undefined`: in all of them. */
function weeksOfTime({ weeks }: Swap, weeksBefore: number, blockWeeks: number): readonly CountRange[] | undefined {
	if (weeks === undefined) return undefined
	const numbers = Array.from({ length: blockWeeks }, (_, index) => index + 1)
	return numbers.filter(week => covers(weeks, weeksBefore + week)).map(week => ({ from: week, to: week }))
}

/** What stands in an item's place: with the block's own sets, or with those that the plan gives it. */
function swappedItem(item: Item, { to: movement, prescription, span }: Swap, weeks: readonly CountRange[] | undefined): Item {
	const inWeeks = weeks === undefined ? {} : { inWeeks: weeks }
	if (prescription === undefined) return { ...item, movement, ...inWeeks }
	const written = { ...item, movement, changes: [], milestones: [], ...inWeeks }
	// What is given for certain weeks stands as it is written, in a lighter week too.
	return weeks === undefined
		? { ...written, everyWeek: prescription, weekLines: item.weekLines.filter(line => line.skip) }
		: { ...written, everyWeek: undefined, weekLines: [{ weeks, skip: false, prescription, span }] }
}

function mapItems(sessions: readonly Session[], map: (item: Item) => readonly Item[]): readonly Session[] {
	return sessions.map(session => ({ ...session, items: session.items.flatMap(map) }))
}
