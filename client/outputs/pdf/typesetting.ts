import bidiFactory from 'bidi-js'
import LineBreaker from 'linebreak'
import { type Face, faces, unknownLetter, type Weight } from './faces.ts'

/** How a text is set. */
export interface Style {
	/** In points. */
	readonly size: number
	readonly weight: Weight
	readonly colour: string
}

/** A piece of one line that one face draws in one direction. */
export interface Run {
	readonly face: Face
	/** As the face wants it: it sets letters of scripts that run from right to left in their order. */
	readonly text: string
	/** In points. */
	readonly width: number
}

/** One line of a text. */
export interface Line {
	/** From left to right as they stand on the paper. */
	readonly runs: readonly Run[]
	readonly width: number
	/** Does its paragraph begin on the right? */
	readonly fromRight: boolean
}

/** @returns the width of a text in points, set in a face. */
export type Measure = (text: string, face: Face, size: number) => number

/** No line holds more of one word than this, in UTF-16 units: what is longer need not be measured to know that it is too wide. */
const longest = 500

const bidi = bidiFactory()
const clusters = new Intl.Segmenter('en', { granularity: 'grapheme' })

/** Steers writing without being seen: no face needs to have it. */
const unseen = /^\p{Default_Ignorable_Code_Point}$/u

/**
 * A text in lines of at most `width` points: broken where its script allows it (UAX 14), each line in the order in which it is seen (UAX
 * 9), every letter from a face that has it. A word wider than a line is broken between letters.
 */
export function setLines(text: string, { size, weight }: Style, width: number, measure: Measure): Line[] {
	return clean(text)
		.split('\n')
		.flatMap(paragraph => new Paragraph(paragraph, faces[weight], size, measure).lines(width))
}

/** Line breaks stay, other control characters go; a tab is a space, and a letter with its marks is one where there is such a letter. */
function clean(text: string): string {
	return text
		.replace(/\r\n?|[\u2028\u2029\u0085\v\f]/g, '\n')
		.replaceAll('\t', ' ')
		.replace(/(?!\n)\p{Cc}/gu, '')
		.normalize('NFC')
}

class Paragraph {
	private readonly text: string
	/** By UTF-16 unit. */
	private readonly faceAt: readonly Face[]
	private readonly levels: Uint8Array
	private readonly level: number

	constructor(
		text: string,
		faces: readonly Face[],
		private readonly size: number,
		private readonly measure: Measure,
	) {
		const { text: drawable, faceAt } = withFaces(text, faces)
		this.text = drawable
		this.faceAt = faceAt
		const { levels, paragraphs } = bidi.getEmbeddingLevels(drawable, 'auto')
		this.levels = levels
		this.level = paragraphs[0]?.level ?? 0
	}

	lines(width: number): Line[] {
		const lines: Line[] = []
		let start = 0
		let end = 0
		const flush = (at: number) => {
			lines.push(this.line(start, at))
			start = at
		}
		for (const next of this.breaks()) {
			if (end > start && this.widthOf(start, Math.min(next, end + longest)) > width) flush(end)
			while (this.widthOf(start, Math.min(next, start + longest)) > width) {
				const fits = this.fitting(start, Math.min(next, start + longest), width)
				if (fits === next) break
				flush(fits)
			}
			end = next
		}
		lines.push(this.line(start, this.text.length))
		return lines
	}

	/** The places where a line may end, the last of them the end of the text. */
	private breaks(): number[] {
		const breaker = new LineBreaker(this.text)
		const places: number[] = []
		for (let next = breaker.nextBreak(); next !== null; next = breaker.nextBreak()) places.push(next.position)
		return places
	}

	/** How far a word that is too wide fits: one letter at least. */
	private fitting(start: number, end: number, width: number): number {
		let fits = start
		for (const { index, segment } of clusters.segment(this.text.slice(start, end))) {
			const next = start + index + segment.length
			if (fits > start && this.widthOf(start, next) > width) break
			fits = next
		}
		return fits
	}

	private widthOf(start: number, end: number): number {
		return this.runs(start, end).reduce((sum, run) => sum + run.width, 0)
	}

	private line(start: number, end: number): Line {
		const runs = inSight(this.runs(start, end))
		return { runs, width: runs.reduce((sum, run) => sum + run.width, 0), fromRight: this.level % 2 === 1 }
	}

	/** The runs of a line in the order in which they are read, without the white space at its end. */
	private runs(start: number, end: number): LevelRun[] {
		let last = end
		while (last > start && this.text[last - 1] === ' ') last--
		const runs: LevelRun[] = []
		for (let from = start; from < last; ) {
			let to = from + 1
			while (to < last && this.levels[to] === this.levels[from] && this.faceAt[to] === this.faceAt[from]) to++
			const level = this.levels[from]!
			const face = this.faceAt[from]!
			const written = this.text.slice(from, to)
			const text = level % 2 === 1 ? fromRight(written) : written
			runs.push({ level, face, text, width: this.measure(text, face, this.size) })
			from = to
		}
		return runs
	}
}

interface LevelRun extends Run {
	readonly level: number
}

/** Turns round what runs from right to left, from the deepest level up (UAX 9, rule L2). */
function inSight(runs: LevelRun[]): LevelRun[] {
	const levels = runs.map(run => run.level)
	const highest = Math.max(0, ...levels)
	let seen = runs
	for (let level = highest; level >= 1; level--) {
		const turned: LevelRun[] = []
		let stretch: LevelRun[] = []
		for (const run of seen) {
			if (run.level >= level) stretch.unshift(run)
			else {
				turned.push(...stretch, run)
				stretch = []
			}
		}
		seen = [...turned, ...stretch]
	}
	return seen
}

/**
 * A stretch that runs from right to left, as a face wants it. The face turns round what has letters of such a script; a stretch of marks
 * alone it would leave as it is.
 */
function fromRight(text: string): string {
	const mirrored = [...text].map(character => bidi.getMirroredCharacter(character) ?? character)
	const hasLetters = mirrored.some(character => ['R', 'AL'].includes(bidi.getBidiCharTypeName(character)))
	return (hasLetters ? mirrored : mirrored.reverse()).join('')
}

/** Finds a face for each letter; one that no face has is replaced by the mark that stands for such. */
function withFaces(text: string, faces: readonly Face[]): { text: string; faceAt: Face[] } {
	const drawn: string[] = []
	const faceAt: Face[] = []
	let last = faces[0]!
	for (const { segment } of clusters.segment(text)) {
		const letters = [...segment].filter(letter => !unseen.test(letter))
		const hasAll = (face: Face) => letters.every(letter => face.has(letter.codePointAt(0)!))
		// A space or a full stop goes with what stands before it, so that words are set whole.
		const face = hasAll(last) ? last : faces.find(hasAll)
		const part = face ? segment : unknownLetter
		last = face ?? faces[0]!
		drawn.push(part)
		for (let unit = 0; unit < part.length; unit++) faceAt.push(last)
	}
	return { text: drawn.join(''), faceAt }
}
