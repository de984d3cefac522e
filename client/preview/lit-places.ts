import type { Place, Position } from '../../language/reports/preview.ts'
import type { Cursor } from './messages.ts'

/** The places that the cursor is in, by their index. */
export function litPlaces(places: readonly Place[], cursor: Cursor | null): readonly number[] {
	if (cursor === null) return []
	return places.flatMap(({ uri, range }, index) =>
		uri === cursor.uri && !before(cursor, range.start) && !before(range.end, cursor) ? [index] : [],
	)
}

function before(a: Position, b: Position): boolean {
	return a.line < b.line || (a.line === b.line && a.character < b.character)
}
