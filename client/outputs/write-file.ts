import type { Picture } from '../../language/reports/preview.ts'
import type { BeginTime } from './begin-times.ts'
import type { PaperName } from './pdf/paper.ts'
import { volumeCsv } from './volume-csv.ts'
import { writeSheet } from './write-sheet.ts'

/** What a picture is to be written as. All of it is data, so that it can be asked for in another thread. */
export interface FileRequest {
	readonly picture: Picture
	readonly format: 'html' | 'csv' | 'ics' | 'pdf' | 'volume-csv'
	readonly paper: PaperName
	/** When sessions begin, for a calendar; else they take the whole day. */
	readonly begin?: readonly BeginTime[]
	/** BCP 47; `null` writes as the language does. */
	readonly locale: string | null
}

/** A picture of the preview as a file that stands by itself. */
export async function writeFile({ picture, format, paper, begin, locale }: FileRequest): Promise<Uint8Array> {
	const content = await contentOf()
	return typeof content === 'string' ? new TextEncoder().encode(content) : content

	async function contentOf(): Promise<string | Uint8Array> {
		if (format === 'html') {
			// Charts are loaded for this alone.
			const { renderPage } = await import('../views/page.tsx')
			return renderPage({ ...picture, locale })
		}
		if (format === 'volume-csv') return picture.volume === null ? '' : volumeCsv(picture.volume, picture.titles)
		return writeSheet(picture, { format, paper, begin, locale })
	}
}
