import { getDocument, type PDFPageProxy } from 'pdfjs-dist/legacy/build/pdf.mjs'

export interface PdfPage {
	/** In points. */
	readonly width: number
	readonly height: number
	/** Words in the order in which the file has them, with single spaces. */
	readonly text: string
	/** What a person hears, piece by piece; nothing where the file does not say. */
	readonly told: readonly { readonly as: string; readonly text: string }[]
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
			pages.push({ width, height, text: spaced(text), told: await toldOn(page) })
		}
		const { info } = await document.getMetadata()
		const { Title, Author, Language } = info as { Title?: string; Author?: string; Language?: string }
		const outline = (await document.getOutline()) ?? []
		return { pages, title: Title ?? '', author: Author ?? '', language: Language ?? null, outline: outline.map(one => one.title) }
	} finally {
		await task.destroy()
	}
}

function spaced(text: string): string {
	return text.replace(/\s+/g, ' ').trim()
}

interface StructNode {
	readonly role?: string
	readonly type?: string
	readonly id?: string
	readonly children?: readonly StructNode[]
}

async function toldOn(page: PDFPageProxy): Promise<PdfPage['told']> {
	const { items } = await page.getTextContent({ includeMarkedContent: true })
	const texts = new Map<string, string>()
	const open: (string | undefined)[] = []
	for (const item of items) {
		if ('str' in item) {
			const id = open.at(-1)
			if (id !== undefined) texts.set(id, `${texts.get(id) ?? ''}${item.str}${item.hasEOL ? ' ' : ''}`)
		} else if (item.type === 'endMarkedContent') open.pop()
		else open.push(item.id)
	}
	const pieces = (node: StructNode, as: string): PdfPage['told'] =>
		node.type === 'content'
			? [{ as, text: spaced(texts.get(node.id ?? '') ?? '') }]
			: (node.children ?? []).flatMap(child => pieces(child, node.role ?? as))
	const tree: StructNode | null = await page.getStructTree()
	return tree === null ? [] : pieces(tree, '')
}
