import type { LoadSheet } from '../../language/reports/load-sheet.ts'
import type { Picture } from '../../language/reports/preview.ts'

/** What a sheet is written from. */
export type SheetContent = Pick<Picture, 'title' | 'lifterTitle' | 'sheet' | 'titles' | 'meets' | 'cautions' | 'problems'>

/** The sessions of one week of the plan, or all of them. */
export function ofWeek(sheet: LoadSheet | null, week: number | undefined): LoadSheet | null {
	if (sheet === null || week === undefined) return sheet
	return { ...sheet, sessions: sheet.sessions.filter(session => session.planWeek === week) }
}
