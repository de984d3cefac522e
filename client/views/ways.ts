import type { LoadSheet } from '../../language/reports/load-sheet.ts'
import type { Ways } from '../../language/reports/preview.ts'

/** How the loads of a session came about, by item and set: line by line. */
export type WaysOfItems = readonly (readonly (readonly string[])[])[]

/** The ways of a picture by the sessions of its sheet; `null` for one that has none. */
export function waysOfSessions({ sessions }: LoadSheet, ways: Ways | null): readonly (WaysOfItems | null)[] {
	if (ways === null) return sessions.map(() => null)
	const known = new Map(ways.ofSessions.map(({ id, items }) => [id, items]))
	return sessions.map(({ id }) => known.get(id)?.map(sets => sets.map(index => ways.texts[index] ?? [])) ?? null)
}
