import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'

export interface PdfPage {
	/** In points. */
	readonly width: number
	readonly height: number
	/** Words in the order in which the file has them, with single spaces. */
	readonly text: string
}

export interface Pdf {
	readonly pages: readonly PdfPage[]
	readonly title: string
	readonly author: string
	readonly language: string | null
	readonly outline: readonly string[]
}

/** Reads a PDF with a reader that had no part in writing it. */
export async function readPdf(bytes: Uint8Array): Promise<Pdf> {
	// The reader takes the bytes for itself.
	const task = getDocument({ data: new Uint8Array(bytes), verbosity: 0 })
	const document = await task.promise
	try {
		const pages: PdfPage[] = []
		for (let number = 1; number <= document.numPages; number++) {
			const page = await document.getPage(number)
			const { width, height } = page.getViewport({ scale: 1 })
			const { items } = await page.getTextContent()
			const text = items.map(item => ('str' in item ? item.str + (item.hasEOL ? ' ' : '') : '')).join('')
			pages.push({ width, height, text: text.replace(/\s+/g, ' ').trim() })
		}
		const { info } = await document.getMetadata()
		const { Title, Author, Language } = info as { Title?: string; Author?: string; Language?: string }
		const outline = (await document.getOutline()) ?? []
		return { pages, title: Title ?? '', author: Author ?? '', language: Language ?? null, outline: outline.map(one => one.title) }
	} finally {
		await task.destroy()
	}
}
