/** Fonts are taken in as bytes; the build and the tests load them so. */
declare module '*.woff' {
	const bytes: Uint8Array
	export default bytes
}

/** The build of PDFKit that asks nothing of Node: the one with the types is for Node alone. */
declare module '*/pdfkit/js/pdfkit.browser.mjs' {
	export { default } from 'pdfkit'
}

declare module 'pdfkit/output' {
	/** What a document comes to, once it is ended. */
	export function toBytes(document: PDFKit.PDFDocument): Promise<Uint8Array>
}

declare module 'linebreak' {
	/** Finds where a text may be broken (Unicode Standard Annex 14). */
	export default class LineBreaker {
		constructor(text: string)
		/** `position` is the index after the break's white space; `required`: a line break in the text. */
		nextBreak(): { readonly position: number; readonly required: boolean } | null
	}
}

declare module 'bidi-js' {
	/** The Unicode Bidirectional Algorithm (Unicode Standard Annex 9). */
	interface Bidi {
		getEmbeddingLevels(
			text: string,
			direction?: 'ltr' | 'rtl' | 'auto',
		): {
			/** A level for each UTF-16 unit: an odd one runs from right to left. */
			readonly levels: Uint8Array
			readonly paragraphs: readonly { readonly start: number; readonly end: number; readonly level: number }[]
		}
		/** The character's mirror image, such as `)` for `(`; `null` where it has none. */
		getMirroredCharacter(character: string): string | null
		/** Its bidirectional class, such as `L`, `R`, `AL`, `EN`. */
		getBidiCharTypeName(character: string): string
	}
	export default function bidiFactory(): Bidi
}
