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
	/** A movement's name, and a line of what is said below a name. */
	name: 5.5,
	remark: 3.8,
}

/** Letters in a line of a session's notes, and in one below a movement. */
const letters = { session: 66, movement: 27 }

/** Boxes that stand beside each other. */
const boxesInLine = 4

/** What a Letter page holds below the plan's own heading, with some room for other fonts. */
const room = 232

/** Is a week too long for one page at full size? A style sheet cannot know. */
export function isLongOnPaper(sessions: readonly { readonly session: Pick<SheetSession, 'items' | 'notes'> }[]): boolean {
	const tall = sessions.map(({ session }) => {
		const lines = session.items.map(({ role, sets, notes, milestones }) => {
			const said = remarks([...milestones, ...notes], letters.movement)
			const folds = foldSets(sets)
			if (role === 'warm-up') return Math.max(Math.max(1, folds.length) * heights.warmUp, heights.warmUp + said)
			const rows = folds.reduce((sum, { firm, optional }) => sum + Math.ceil((firm + optional) / boxesInLine), 0)
			return Math.max(Math.max(1, rows) * heights.line, heights.name + said)
		})
		return heights.session + remarks(session.notes, letters.session) + lines.reduce((sum, line) => sum + line, 0)
	})
	return tall.reduce((sum, height) => sum + height, heights.head) > room
}

/** The height of texts of so many letters a line. */
function remarks(texts: readonly string[], perLine: number): number {
	const lines = texts.flatMap(text => text.split('\n')).map(line => Math.max(1, Math.ceil(line.length / perLine)))
	return lines.reduce((sum, count) => sum + count, 0) * heights.remark
}
