import arabic from '@fontsource/ibm-plex-sans-arabic/files/ibm-plex-sans-arabic-arabic-400-normal.woff'
import arabicBold from '@fontsource/ibm-plex-sans-arabic/files/ibm-plex-sans-arabic-arabic-700-normal.woff'
import cyrillic from '@fontsource/noto-sans/files/noto-sans-cyrillic-400-normal.woff'
import cyrillicBold from '@fontsource/noto-sans/files/noto-sans-cyrillic-700-normal.woff'
import cyrillicExtended from '@fontsource/noto-sans/files/noto-sans-cyrillic-ext-400-normal.woff'
import cyrillicExtendedBold from '@fontsource/noto-sans/files/noto-sans-cyrillic-ext-700-normal.woff'
import devanagari from '@fontsource/noto-sans/files/noto-sans-devanagari-400-normal.woff'
import devanagariBold from '@fontsource/noto-sans/files/noto-sans-devanagari-700-normal.woff'
import greek from '@fontsource/noto-sans/files/noto-sans-greek-400-normal.woff'
import greekBold from '@fontsource/noto-sans/files/noto-sans-greek-700-normal.woff'
import greekExtended from '@fontsource/noto-sans/files/noto-sans-greek-ext-400-normal.woff'
import greekExtendedBold from '@fontsource/noto-sans/files/noto-sans-greek-ext-700-normal.woff'
import latin from '@fontsource/noto-sans/files/noto-sans-latin-400-normal.woff'
import latinBold from '@fontsource/noto-sans/files/noto-sans-latin-700-normal.woff'
import latinExtended from '@fontsource/noto-sans/files/noto-sans-latin-ext-400-normal.woff'
import latinExtendedBold from '@fontsource/noto-sans/files/noto-sans-latin-ext-700-normal.woff'
import vietnamese from '@fontsource/noto-sans/files/noto-sans-vietnamese-400-normal.woff'
import vietnameseBold from '@fontsource/noto-sans/files/noto-sans-vietnamese-700-normal.woff'
import hebrew from '@fontsource/noto-sans-hebrew/files/noto-sans-hebrew-hebrew-400-normal.woff'
import hebrewBold from '@fontsource/noto-sans-hebrew/files/noto-sans-hebrew-hebrew-700-normal.woff'
import { create, type Font } from 'fontkit'

export type Weight = 'regular' | 'bold'

/** One font file: the letters of some scripts in one weight. */
export interface Face {
	/** By which the document knows it. */
	readonly name: string
	readonly bytes: Uint8Array
	has(codePoint: number): boolean
}

/**
 * One family for all scripts, so that names of any of them stand well beside each other. The first that has a letter draws it. Arabic has
 * another: in its own the dots are glyphs by themselves, and what is copied out of the file would be other letters.
 */
const files: Readonly<Record<string, Readonly<Record<Weight, Uint8Array>>>> = {
	latin: { regular: latin, bold: latinBold },
	'latin-extended': { regular: latinExtended, bold: latinExtendedBold },
	greek: { regular: greek, bold: greekBold },
	'greek-extended': { regular: greekExtended, bold: greekExtendedBold },
	cyrillic: { regular: cyrillic, bold: cyrillicBold },
	'cyrillic-extended': { regular: cyrillicExtended, bold: cyrillicExtendedBold },
	vietnamese: { regular: vietnamese, bold: vietnameseBold },
	hebrew: { regular: hebrew, bold: hebrewBold },
	arabic: { regular: arabic, bold: arabicBold },
	devanagari: { regular: devanagari, bold: devanagariBold },
}

/** Stands for a letter that no face has; every document says what it means where it stands in one. */
export const unknownLetter = '\ufffd'

export const faces: Readonly<Record<Weight, readonly Face[]>> = { regular: facesOf('regular'), bold: facesOf('bold') }

function facesOf(weight: Weight): Face[] {
	return Object.entries(files).map(([script, { [weight]: bytes }]) => {
		let font: Font | undefined
		return {
			name: `${script} ${weight}`,
			bytes,
			// A face is opened when a letter is first looked for in it: most documents need the first alone.
			has(codePoint) {
				font ??= create(bytes as Buffer) as Font
				return font.hasGlyphForCodePoint(codePoint)
			},
		}
	})
}
