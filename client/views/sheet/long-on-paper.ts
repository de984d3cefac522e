import type { SheetSession } from '../../../language/reports/load-sheet.ts'
import { foldSets } from './fold.ts'

/** In millimetres, measured in a browser that printed by `print.css`. */
const heights = {
	/** The heading and the columns' titles. */
	head: 14,
	/** The heading of a session, and the line to write on. */
	session: 29,
	/** A line of sets with its boxes. */
	line: 8.2,
	/** A warm-up's line has no boxes. */
	warmUp: 4.1,
}

/** Boxes that stand beside each other. */
const boxesInLine = 4

/** What a Letter page holds below the plan's own heading, with some room for other fonts. */
const room = 232

/** Is a week too long for one page at full size? A style sheet cannot know. */
export function isLongOnPaper(sessions: readonly { readonly session: Pick<SheetSession, 'items'> }[]): boolean {
	const tall = sessions.map(({ session }) => {
		const lines = session.items.map(({ role, sets }) => {
			const folds = foldSets(sets)
			if (role === 'warm-up') return Math.max(1, folds.length) * heights.warmUp
			const rows = folds.reduce((sum, { firm, optional }) => sum + Math.ceil((firm + optional) / boxesInLine), 0)
			return Math.max(1, rows) * heights.line
		})
		return heights.session + lines.reduce((sum, line) => sum + line, 0)
	})
	return tall.reduce((sum, height) => sum + height, heights.head) > room
}
