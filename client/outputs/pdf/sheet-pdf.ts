import type { LoadSheet } from '../../../language/reports/load-sheet.ts'
import { type Reader, readerOf } from '../../views/reader/reader.ts'
import { weeksOf } from '../../views/sheet/weeks.ts'
import { ofWeek, type SheetContent } from '../content.ts'
import { Paper, type PaperName } from './paper.ts'
import { styles, WeekPages } from './week-pages.ts'

export interface SheetPdfOptions {
	readonly paper: PaperName
	/** Only this week of the plan. */
	readonly week?: number | undefined
	/** BCP 47; `null` writes ISO dates and decimal points. */
	readonly locale: string | null
}

/**
 * The load sheet to print and to write on: one week a page, further pages only where a week is too long for one. The letters are in the
 * file, so that it looks and prints the same everywhere; what no font of ours has is marked, and the page says so.
 */
export function sheetPdf(content: SheetContent, { paper: name, week, locale }: SheetPdfOptions): Promise<Uint8Array> {
	const { title, lifterTitle } = content
	const sheet = ofWeek(content.sheet, week)
	const paper = new Paper(name, {
		title: lifterTitle === null ? title : `${title} – ${lifterTitle}`,
		author: lifterTitle ?? '',
		made: madeOn(content.sheet),
	})
	const weeks = sheet === null ? [] : weeksOf(sheet)
	const reader: Reader = readerOf(locale)
	const lastWeek = Math.max(0, ...(content.sheet?.sessions ?? []).map(session => session.planWeek))
	for (const one of weeks) new WeekPages(paper, one, { content, reader, lastWeek }).write()
	if (weeks.length === 0) writeNothing(paper, content)
	return paper.bytes()
}

/** The first moment of the plan's first day. */
function madeOn(sheet: LoadSheet | null): Date {
	return new Date(`${sheet?.sessions[0]?.date ?? '2000-01-01'}T00:00:00Z`)
}

function writeNothing(paper: Paper, { title, lifterTitle }: SheetContent): void {
	const margin = 40
	const width = paper.width - 2 * margin
	paper.begin()
	const heading = paper.set(lifterTitle === null ? title : `${title} – ${lifterTitle}`, styles.title, width)
	paper.tell('H1', () => paper.write(heading, margin, margin, width))
	const words = paper.set('There is nothing to do: no session of this plan has a date yet.', styles.plain, width)
	paper.write(words, margin, margin + heading.height + 8, width)
}
