import { createContext } from 'preact'
import type { LoadSheet, SheetSet } from '../../language/reports/load-sheet.ts'
import type { Ways } from '../../language/reports/preview.ts'

/** How the load of each set of a sheet came about, line by line. */
export type WayOfSet = ReadonlyMap<SheetSet, readonly string[]>

/** Empty on a page that does not say. */
export const WaysContext = createContext<WayOfSet>(new Map())

/** The ways of a picture by the sets of its sheet. */
export function waysOfSets(sheet: LoadSheet | null, ways: Ways | null): WayOfSet {
	const found = new Map<SheetSet, readonly string[]>()
	for (const { block, date, session, items } of ways?.ofSessions ?? []) {
		const shown = sheet?.sessions.find(one => one.block === block && one.date === date && one.session === session)
		for (const [itemIndex, item] of (shown?.items ?? []).entries()) {
			for (const [setIndex, set] of item.sets.entries()) {
				const lines = ways!.texts[items[itemIndex]?.[setIndex] ?? -1]
				if (lines && lines.length > 0) found.set(set, lines)
			}
		}
	}
	return found
}
