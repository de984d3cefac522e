import type { BlockSheetSet } from '../../../language/reports/block-sheet.ts'
import type { SheetSet } from '../../../language/reports/load-sheet.ts'

/** A set of a load sheet, or of a block's own. */
type ShownSet = SheetSet & Partial<Pick<BlockSheetSet, 'asked'>>

/** Sets that are done alike, one after the other: one line of the sheet. */
export interface FoldedSets {
	/** Index of the first of them in the item. */
	readonly first: number
	readonly set: ShownSet
	/** Sets that must be done. */
	readonly firm: number
	/** Sets on top that may be done. */
	readonly optional: number
}

/** Folds neighbours that differ in nothing; optional ones join the firm ones before them. Order is kept. */
export function foldSets(sets: readonly ShownSet[]): FoldedSets[] {
	const folded: FoldedSets[] = []
	let last: { fold: FoldedSets; key: string } | undefined
	for (const [index, set] of sets.entries()) {
		const key = JSON.stringify({ ...set, optional: false })
		// A firm set after optional ones begins a new line: what must be done is said first.
		if (last?.key === key && (set.optional || last.fold.optional === 0)) {
			const { fold } = last
			const joined = set.optional ? { ...fold, optional: fold.optional + 1 } : { ...fold, firm: fold.firm + 1 }
			folded[folded.length - 1] = joined
			last = { fold: joined, key }
			continue
		}
		const fold = { first: index, set, firm: set.optional ? 0 : 1, optional: set.optional ? 1 : 0 }
		folded.push(fold)
		last = { fold, key }
	}
	return folded
}
