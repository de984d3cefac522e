import type { Block, Item, Run, Session } from '../../model/definitions.ts'
import type { Exact, Weekday } from '../../model/quantities.ts'
import type { ScheduledItem } from '../../model/schedule.ts'
import { hundred, share } from '../exact.ts'

/** How a plan has touched an item. */
type ItemChange = Pick<ScheduledItem, 'changedBy' | 'insteadOf'>

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

/** The run's changes, one after the other as they are written: what a swap brings in, a later line can drop. */
export function changedBlock(block: Block, run: Run): ChangedBlock {
	const itemChanges = new Map<Item, ItemChange>()
	const scales = new Map<string, Exact>()
	const moves = new Map<string, Weekday>()
	let sessions = block.sessions
	for (const change of run.changes) {
		switch (change.kind) {
			case 'swap':
				sessions = mapItems(sessions, item => {
					if (item.movement.text !== change.from.text) return [item]
					const swapped = { ...item, movement: change.to }
					const before = itemChanges.get(item)
					itemChanges.set(swapped, { changedBy: 'swap', insteadOf: before?.insteadOf ?? item.movement })
					return [swapped]
				})
				break
			case 'drop':
				sessions = mapItems(sessions, item => (item.movement.text === change.movement.text ? [] : [item]))
				break
			case 'add':
				itemChanges.set(change.item, { changedBy: 'add', insteadOf: undefined })
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
		}
	}
	return { block: sessions === block.sessions ? block : { ...block, sessions }, itemChanges, scales, moves }
}

function mapItems(sessions: readonly Session[], map: (item: Item) => readonly Item[]): readonly Session[] {
	return sessions.map(session => ({ ...session, items: session.items.flatMap(map) }))
}
