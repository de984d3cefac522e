import type { PlannedItem } from '../../model/schedule.ts'
import type { PlacedSession } from './placed-sessions.ts'

/** A day on which a movement is trained: its working items there, be it in one session or two. */
export interface Exposure<S extends PlacedSession> {
	readonly dayKey: string
	readonly items: readonly { readonly session: S; readonly item: S['items'][number] }[]
	/** Of the day's first session. */
	readonly session: S
}

/** The exposures of each movement by name, in the order of the sessions. `counts` leaves out items that are not meant. */
export function exposuresOf<S extends PlacedSession>(
	sessions: readonly S[],
	counts: (item: S['items'][number], session: S) => boolean = () => true,
): ReadonlyMap<string, readonly Exposure<S>[]> {
	const found = new Map<string, Map<string, { dayKey: string; items: { session: S; item: S['items'][number] }[]; session: S }>>()
	for (const session of sessions) {
		for (const item of session.items as readonly S['items'][number][]) {
			if (!item.working || !counts(item, session)) continue
			const days = found.get(item.movementName.text) ?? new Map()
			found.set(item.movementName.text, days)
			const day = days.get(session.dayKey) ?? { dayKey: session.dayKey, items: [], session }
			days.set(session.dayKey, day)
			day.items.push({ session, item })
		}
	}
	return new Map([...found].map(([movement, days]) => [movement, [...days.values()]]))
}

/** What people see of an item's movement. */
export function titleOfItem({ movement, movementName }: Pick<PlannedItem, 'movement' | 'movementName'>): string {
	return movement?.title?.text ?? movementName.text
}
