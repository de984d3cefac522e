import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { formatText, layoutEdits } from '../../../language/formatting/format.ts'
import { readSections } from '../../../language/formatting/sections.ts'
import { reservedWords } from '../../../language/parser/words.ts'
import { TextReader } from '../../../language/workspace/text-file.ts'
import { textsBelow } from '../../support/texts.ts'

const reader = new TextReader()

// Texts ---------------------------------------------------------------------------------------------------------------------------------

const files = { ...textsBelow('examples'), ...textsBelow('language/library') }

/** Every definition of ours, each by itself, with the comments below it. */
const definitions = Object.values(files).flatMap(text => reader.read('file:///test.stave', text).parts.map(part => part.text))

interface Word {
	readonly image: string
	/** What stood between it and the word before. */
	readonly before: string
	readonly type: string
}

function wordsOf(text: string): Word[] {
	const { tokens } = reader.tokenize(text)
	return tokens.map(({ image, startOffset, tokenType }, index) => {
		const last = tokens[index - 1]
		return { image, type: tokenType.name, before: last ? text.slice(last.endOffset! + 1, startOffset) : '' }
	})
}

const lineBreak = fc.constantFrom('\n', '\r\n')
const space = fc.oneof(
	{ weight: 8, arbitrary: fc.constantFrom(' ', '  ', '\t', '\u00a0', '\u3000 ') },
	{ weight: 4, arbitrary: fc.tuple(lineBreak, fc.constantFrom('', '  ', '      ', '\t')).map(parts => parts.join('')) },
)
const comment = fc.constantFrom(
	' // plain\n',
	'\n// own line\n',
	'\n\n      // set in 💪🏽\r\n',
	' //木村 tight  \r\n',
	' /* inline */ ',
	'/**/',
	'\n  /* own\n   é\r\n two lines */\n',
	' /* a */ /* b */ // c\n\n',
)
const title = fc.constantFrom('"木村"', '"💪🏽💪"', '"e\u0301"', '"a // b"', '"/* \\" */"', '“curly”')

/** A text of the same words, with other white space and, if asked for, comments between them. */
function scrambled(words: readonly Word[], withComments: boolean): fc.Arbitrary<string> {
	const gaps = fc.array(withComments ? fc.oneof({ weight: 5, arbitrary: space }, { weight: 1, arbitrary: comment }) : space, {
		minLength: words.length,
		maxLength: words.length,
	})
	const titles = fc.array(fc.option(title, { freq: 3 }), { minLength: words.length, maxLength: words.length })
	return fc.tuple(gaps, titles, lineBreak).map(([between, instead, end]) => {
		const text = words.map(({ image, type, before }, index) => {
			const word = type === 'STRING' ? (instead[index] ?? image) : image
			if (index === 0) return word
			// What reads as one word only together stays together; a word that begins a definition stands on its own line.
			const gap = before === '' || image === 'most' || image === 'side' ? before : between[index]!
			return (reservedWords.has(type) && index > 0 ? `${gap}\n` : gap) + word
		})
		return text.join('') + end
	})
}

const someDefinitions = fc
	.array(fc.constantFrom(...definitions.filter(text => text.length < 700)), { minLength: 1, maxLength: 3 })
	.map(parts => parts.join('\n'))
const laidOutAnyhow = someDefinitions.chain(text => scrambled(wordsOf(text), true))

/** A text in which words are missing, doubled or swapped, or that is cut off, with signs that mean nothing. */
const mutated = someDefinitions.chain(text => {
	const words = wordsOf(text)
	const place = fc.nat(words.length - 1)
	const change = fc.oneof(
		fc.tuple(fc.constant('delete' as const), place, place),
		fc.tuple(fc.constant('double' as const), place, place),
		fc.tuple(fc.constant('swap' as const), place, place),
		fc.tuple(fc.constantFrom('@', '"', '/*', '*/', '//', '“', 'x', '72,5', 'Deadlift', '５', '\u2028', '%', '-'), place, place),
	)
	return fc
		.array(change, { minLength: 0, maxLength: 3 })
		.map(changes => changes.reduce<readonly Word[]>(mutate, words))
		.chain(changed => scrambled(changed, true))
})

function mutate(words: readonly Word[], [kind, at, other]: readonly [string, number, number]): readonly Word[] {
	const word = words[at]
	if (!word) return words
	if (kind === 'delete') return words.filter((_, index) => index !== at)
	if (kind === 'double') return words.toSpliced(at, 0, word)
	if (kind === 'swap') return words.map((one, index) => (index === at ? (words[other] ?? one) : index === other ? word : one))
	return words.toSpliced(at, 0, { image: kind, type: 'other', before: ' ' })
}

// What is looked at -----------------------------------------------------------------------------------------------------------------------

function commentsOf(text: string): string[] {
	const { hidden } = reader.tokenize(text)
	return hidden.filter(token => token.tokenType.name.endsWith('COMMENT')).map(({ image }) => image.trimEnd())
}

/** What a text says, without any place in it, and the words of the parts that do not read, with all that stands between them. */
function substanceOf(text: string) {
	const { parts } = reader.read('file:///test.stave', text)
	const { tokens } = reader.tokenize(text)
	const meanings = parts.map(({ definition, faults }) => [
		faults.map(fault => fault.code).filter(code => code !== 'old-spelling'),
		JSON.parse(JSON.stringify(definition ?? null, withoutPlaces)),
	])
	const faulty = parts.flatMap(({ text: own, faults, start }) => {
		if (!faults.some(fault => fault.code === 'syntax')) return []
		const last = tokens.findLast(token => token.startOffset >= start && token.startOffset < start + own.length)
		return last ? [text.slice(start, last.endOffset! + 1)] : []
	})
	return { meanings, faulty }
}

function withoutPlaces(key: string, value: unknown): unknown {
	if (typeof value === 'bigint') return `${value}`
	if (key === 'faults') return undefined
	const keys = typeof value === 'object' && value !== null ? Object.keys(value) : []
	return keys.length === 2 && keys.includes('start') && keys.includes('end') ? undefined : value
}

function expectRightly(text: string): string {
	const formatted = formatText(text, reader)
	expect(formatText(formatted, reader)).toBe(formatted)
	expect(commentsOf(formatted)).toEqual(commentsOf(text))
	expect(substanceOf(formatted)).toEqual(substanceOf(text))
	return formatted
}

function applied(text: string, within?: { start: number; end: number }): string {
	const edits = layoutEdits(text, readSections(text, reader), within)
	return edits.reduceRight((result, { span, text: by }) => result.slice(0, span.start) + by + result.slice(span.end), text)
}

// Properties ------------------------------------------------------------------------------------------------------------------------------

describe('every text of ours', () => {
	test.each(Object.entries(files))('%s', (_, text) => {
		expect(applied(expectRightly(text))).toBe(formatText(text, reader))
	})

	const examples = { ...textsBelow('examples/club'), ...textsBelow('examples/faults') }
	const shown = { ...examples, ...textsBelow('language/library'), ...textsBelow('client/starter') }
	// There the spelling is the fault that is shown.
	const laidOut = Object.entries(shown).filter(([file]) => !file.includes('old-spelling'))
	test.each(laidOut)('%s is laid out already', (_, text) => {
		expect(formatText(text, reader)).toBe(text)
	})

	test('a text that reads is laid out the same, whatever its white space was', () => {
		const oneDefinition = fc.constantFrom(...definitions.filter(text => substanceOf(text).faulty.length === 0))
		fc.assert(
			fc.property(
				oneDefinition.chain(text => {
					const plain = wordsOf(text)
						.map(({ image, before }) => (before === '' ? '' : ' ') + image)
						.join('')
					return fc.tuple(fc.constant(plain.trimStart()), scrambled(wordsOf(text).map(asOther), false))
				}),
				([plain, anyhow]) => {
					expect(formatText(anyhow, reader).replaceAll('\r\n', '\n')).toBe(formatText(plain, reader))
				},
			),
			{ numRuns: 1000 },
		)
	})

	test('formatting needs no second look: what it changes never changes the meaning', () => {
		fc.assert(
			fc.property(laidOutAnyhow, text => {
				expect(applied(text)).toBe(expectRightly(text))
			}),
			{ numRuns: 1500 },
		)
	})
})

test('a part of a text is laid out without a change of meaning', () => {
	fc.assert(
		fc.property(laidOutAnyhow, fc.nat(), fc.nat(200), (text, from, length) => {
			const start = from % (text.length + 1)
			const part = applied(text, { start, end: Math.min(start + length, text.length) })
			expect(commentsOf(part)).toEqual(commentsOf(text))
			expect(substanceOf(part)).toEqual(substanceOf(text))
		}),
		{ numRuns: 500 },
	)
})

/** Its titles are not exchanged. */
function asOther(word: Word): Word {
	return { ...word, type: word.type === 'STRING' ? 'other' : word.type }
}

test('any text: formatted twice is formatted once; comments, meaning and what does not read are kept', () => {
	fc.assert(
		fc.property(mutated, text => {
			expectRightly(text)
		}),
		{ numRuns: 10_000 },
	)
})

test('line breaks and the byte-order mark stay', () => {
	fc.assert(
		fc.property(mutated, fc.constantFrom('\n', '\r\n'), fc.constantFrom('', '\ufeff'), (text, ending, mark) => {
			const written = mark + text.replaceAll(/\r\n|\n/g, ending)
			const formatted = formatText(written, reader)
			expect(formatted.startsWith('\ufeff')).toBe(mark !== '')
			expect(formatted.match(/\r\n|\r|\n/g)?.every(one => one === ending)).toBe(true)
			expect(formatted.endsWith(ending) && !formatted.endsWith(ending + ending)).toBe(true)
		}),
		{ numRuns: 1000 },
	)
})

test('any characters at all', () => {
	fc.assert(
		fc.property(fc.string({ unit: 'binary', maxLength: 60 }), text => {
			const formatted = formatText(text, reader)
			expect(formatText(formatted, reader)).toBe(formatted)
		}),
		{ numRuns: 1000 },
	)
})
