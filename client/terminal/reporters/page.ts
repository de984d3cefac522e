import type { Picture } from '../../../language/reports/preview.ts'

/** Which parts of a page are wanted. */
export interface PageParts {
	/** The load sheet, of one week of the plan or of all. */
	readonly sheet: boolean
	readonly week?: number | undefined
	readonly volume: boolean
}

/** A plan or a block as one HTML file that needs nothing else: the picture that the editor's preview shows. */
export async function pageOf(picture: Picture, parts: PageParts): Promise<string> {
	// Loaded only here: its charts are the heaviest part of the program.
	const { renderPage } = await import('../../views/page.tsx')
	return renderPage({ ...only(picture, parts), locale: null })
}

function only(picture: Picture, { sheet, week, volume }: PageParts): Picture {
	const sessions = picture.sheet?.sessions.filter(session => week === undefined || session.planWeek === week)
	return {
		...picture,
		sheet: sheet && picture.sheet && sessions ? { ...picture.sheet, sessions } : null,
		// One week's sheet is for the bar: the plan around it stays away.
		calendar: sheet && week === undefined ? picture.calendar : null,
		blockSheet: null,
		asks: null,
		volume: volume ? picture.volume : null,
	}
}
