import { toBytes } from 'pdfkit/output'
import PDFDocument from '../../../node_modules/pdfkit/js/pdfkit.browser.mjs'
import { faces, unknownLetter } from './faces.ts'
import { type Line, type Measure, type Style, setLines } from './typesetting.ts'

/** Width and height in points, of 1/72 inch. */
export const papers = {
	a4: { name: 'A4', width: 595.28, height: 841.89 },
	letter: { name: 'Letter', width: 612, height: 792 },
} as const

export type PaperName = keyof typeof papers

/** What a document says of itself. */
export interface AboutDocument {
	readonly title: string
	readonly author: string
	/** The only moment in a document; nothing asks the clock, so that the same plan gives the same bytes. */
	readonly made: Date
}

/** A text in lines, with its style. */
export interface SetText {
	readonly lines: readonly Line[]
	readonly style: Style
	/** From the first line's top to the last one's foot. */
	readonly height: number
}

/** Lines stand so far apart, in sizes of the letters: letters of every script have room. */
const lineHeight = 1.36
/** From a line's top to the foot of its letters. */
const foot = 1.02

/** Pages to write on, from the top left corner, in points. */
export class Paper {
	readonly width: number
	readonly height: number
	/** Has anything that was set a letter that no font has? Whoever asks sets it back. */
	holdsUnknownLetters = false
	private readonly document: PDFKit.PDFDocument
	/** The part of the document's structure that is being written. */
	private part: PDFKit.PDFStructureElement | undefined
	private telling = false
	private readonly measured = new Map<string, number>()

	constructor(paper: PaperName, { title, author, made }: AboutDocument) {
		const { width, height } = papers[paper]
		this.width = width
		this.height = height
		this.document = new PDFDocument({
			size: [width, height],
			margin: 0,
			autoFirstPage: false,
			pdfVersion: '1.7',
			lang: 'en',
			// For who hears a page: which words belong together, and in which order.
			tagged: true,
			displayTitle: true,
			// No font of its own: what is not embedded may be drawn by another.
			font: null as unknown as string,
			info: { Title: title, Author: author, Creator: 'Barstave', Producer: 'Barstave', CreationDate: made },
		})
		for (const face of [...faces.regular, ...faces.bold]) this.document.registerFont(face.name, face.bytes as Buffer)
	}

	/** Begins a page; with a name it begins a part of the document, and stands in its outline. */
	begin(name?: string): void {
		this.document.addPage()
		if (name !== undefined) this.document.outline.addItem(name)
		if (name === undefined && this.part !== undefined) return
		this.part?.end()
		this.part = this.document.struct('Sect')
		this.document.addStructure(this.part)
	}

	/** What is written meanwhile is told as one piece; what only helps the eye stands outside of it. */
	tell(as: 'H1' | 'H2' | 'P', write: () => void): void {
		const content = this.document.markStructureContent(as)
		this.telling = true
		write()
		this.telling = false
		this.document.endMarkedContent()
		this.part?.add(this.document.struct(as, {}, content))
	}

	/** @param most lines; what is more is left out, with an ellipsis for it. */
	set(text: string, style: Style, width: number, most = Number.POSITIVE_INFINITY): SetText {
		const whole = setLines(text, style, width, this.measure)
		const lines = whole.length > most ? [...whole.slice(0, most - 1), this.withEllipsis(whole[most - 1]!, style)] : whole
		if (lines.some(line => line.runs.some(run => run.text.includes(unknownLetter)))) this.holdsUnknownLetters = true
		return { lines, style, height: lines.length * style.size * lineHeight }
	}

	/** A text line by line, for where it may go on on the next page. */
	linesOf({ lines, style }: SetText): SetText[] {
		return lines.map(line => ({ lines: [line], style, height: style.size * lineHeight }))
	}

	private withEllipsis(line: Line, { size, weight }: Style): Line {
		const face = faces[weight][0]!
		const ellipsis = { face, text: '…', width: this.measure('…', face, size) }
		const runs = line.fromRight ? [ellipsis, ...line.runs] : [...line.runs, ellipsis]
		return { ...line, runs, width: line.width + ellipsis.width }
	}

	/**
	 * Writes a text. Where its paragraph begins on the right, as names of some scripts do, it stands on the right of its width.
	 * @param align `end`: on the other side.
	 */
	write(text: SetText, x: number, y: number, width: number, align: 'start' | 'end' = 'start'): void {
		if (this.telling) this.draw(text, x, y, width, align)
		else this.tell('P', () => this.draw(text, x, y, width, align))
	}

	private draw({ lines, style }: SetText, x: number, y: number, width: number, align: 'start' | 'end'): void {
		for (const [index, { runs, width: taken, fromRight }] of lines.entries()) {
			const base = y + index * style.size * lineHeight + foot * style.size
			let at = fromRight === (align === 'start') ? x + width - taken : x
			for (const run of runs) {
				this.document.font(run.face.name, style.size).fillColor(style.colour)
				// An empty list of features makes it take the run as one piece: else the order of words would be its own.
				this.document.text(run.text, at, base, { lineBreak: false, baseline: 'alphabetic', features: [] })
				at += run.width
			}
		}
	}

	rule(x: number, y: number, width: number, colour: string, thickness: number): void {
		this.document.markContent('Artifact', { type: 'Layout' })
		this.document.rect(x, y, width, thickness).fill(colour)
		this.document.endMarkedContent()
	}

	/** A frame to write into. */
	box(x: number, y: number, width: number, height: number, colour: string): void {
		this.document.markContent('Artifact', { type: 'Layout' })
		this.document.lineWidth(0.7).roundedRect(x, y, width, height, 1.6).stroke(colour)
		this.document.endMarkedContent()
	}

	/** The whole document; nothing can be written after. */
	bytes(): Promise<Uint8Array> {
		const bytes = toBytes(this.document)
		this.document.end()
		return bytes
	}

	private readonly measure: Measure = (text, face, size) => {
		const key = `${face.name} ${size} ${text}`
		let width = this.measured.get(key)
		if (width === undefined) {
			width = this.document.font(face.name, size).widthOfString(text, { features: [] })
			this.measured.set(key, width)
		}
		return width
	}
}
