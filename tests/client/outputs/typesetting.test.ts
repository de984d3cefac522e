import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Measure, setLines } from '../../../client/outputs/pdf/typesetting.ts'

/** Every letter is as wide as its size. */
const square: Measure = (text, _, size) => [...text].length * size

const style = { size: 1, weight: 'regular', colour: '#000' } as const
const linesOf = (text: string, width: number) => setLines(text, style, width, square)
/** What stands on a line from left to right, piece by piece. */
const pieces = (text: string, width = 1000) => linesOf(text, width).map(line => line.runs.map(run => run.text))

describe('a text in lines', () => {
	it('is broken at spaces, and within a word only where it is wider than a line', () => {
		expect(pieces('keep the bar close', 8)).toEqual([['keep the'], ['bar'], ['close']])
		expect(pieces('a bbbbbbb c', 3)).toEqual([['a'], ['bbb'], ['bbb'], ['b c']])
		expect(pieces('')).toEqual([[]])
	})

	it('stands in the order in which it is read, right to left where its script does', () => {
		const [line] = linesOf('שלום 12.5 kg', 1000)
		expect(line!.fromRight).toBe(true)
		// The number stands left of the name, and is itself read from the left; what follows it stands left of it (UAX 9, L2).
		expect(line!.runs.map(run => run.text.trim()).filter(text => text !== '')).toEqual(['kg', '12.5', 'שלום'])
		const [latin] = linesOf('Mara (מרה) 5', 1000)
		expect(latin!.fromRight).toBe(false)
		expect(latin!.runs.map(run => run.text).join('')).toBe('Mara (מרה) 5')
	})

	it('turns brackets that stand alone in a text from right to left', () => {
		const texts = linesOf('שלום (!)', 1000)[0]!.runs.map(run => run.text)
		expect(texts.join('')).toContain('(!)')
	})

	it('takes each letter from a face that has it', () => {
		const names = linesOf('aβжשج', 1000)[0]!.runs.map(run => run.face.name)
		expect(new Set(names)).toEqual(
			new Set(['latin regular', 'greek regular', 'cyrillic regular', 'hebrew regular', 'arabic regular']),
		)
	})

	it('has a mark for each letter without a face, one for what is seen as one', () => {
		expect(pieces('👩‍👩‍👧 a 深')).toEqual([['\ufffd a \ufffd']])
	})

	it('is never wider than it may be, and loses no letter', () => {
		const letter = fc.constantFrom(...'abc  é深🏋שלאم()5%'.split(/(?:)/u), 'e\u0301', '\u200f')
		fc.assert(
			fc.property(fc.array(letter, { maxLength: 60 }), fc.integer({ min: 3, max: 20 }), (letters, width) => {
				const text = letters.join('')
				const lines = linesOf(text, width)
				for (const line of lines) {
					const whole = line.runs.map(run => run.text).join('')
					// One letter with its marks may be as wide as it is.
					if ([...new Intl.Segmenter('en').segment(whole)].length > 1) expect(line.width).toBeLessThanOrEqual(width)
				}
				const count = (texts: string) =>
					[...texts.replace(/[ ]/g, '')]
						.filter(one => /[abcéשלאم5%]/.test(one))
						.sort()
						.join('')
				expect(count(lines.flatMap(line => line.runs.map(run => run.text)).join(''))).toBe(count(text.normalize('NFC')))
			}),
		)
	})
})
