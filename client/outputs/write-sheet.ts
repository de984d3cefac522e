import type { BeginTime } from './begin-times.ts'
import { calendar } from './calendar.ts'
import { ofWeek, type SheetContent } from './content.ts'
import type { PaperName } from './pdf/paper.ts'
import { sheetCsv } from './sheet-csv.ts'

export interface SheetOptions {
	readonly format: 'csv' | 'ics' | 'pdf'
	/** Only this week of the plan. */
	readonly week?: number | undefined
	readonly paper: PaperName
	/** When sessions begin, for a calendar; else they take the whole day. */
	readonly begin?: readonly BeginTime[] | undefined
	/** BCP 47, for what people read; `null` writes as the language does. A table for programs is the same for every reader. */
	readonly locale: string | null
}

/** A plan's sheet as a file, text or bytes. The same plan gives the same file: nothing here asks the clock, or where it runs. */
export async function writeSheet(content: SheetContent, options: SheetOptions): Promise<string | Uint8Array> {
	const { format, week, paper, begin, locale } = options
	switch (format) {
		case 'csv':
			return sheetCsv({ ...content, sheet: ofWeek(content.sheet, week) })
		case 'ics':
			return calendar({ ...content, sheet: ofWeek(content.sheet, week) }, locale, begin)
		case 'pdf': {
			// Fonts are opened for this alone.
			const { sheetPdf } = await import('./pdf/sheet-pdf.ts')
			return sheetPdf(content, { paper, week, locale })
		}
	}
}
