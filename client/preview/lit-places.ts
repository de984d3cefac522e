import type { Place, Position } from '../../language/reports/preview.ts'
import type { Cursor } from './messages.ts'

/** The places that the cursor is in, by their index. */
export function litPlaces(places: readonly Place[], cursor: Cursor | null): ReadonlySet<number> {
	const lit = new Set<number>()
	if (cursor === null) return lit
	for (const [index, { uri, range }] of places.entries()) {
		if (uri === cursor.uri && !before(cursor, range.start) && !before(range.end, cursor)) lit.add(index)
	}
	return lit
}

function before(a: Position, b: Position): boolean {
	return a.line < b.line || (a.line === b.line && a.character < b.character)
}
