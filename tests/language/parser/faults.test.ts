import { readFileSync } from 'node:fs'
import path from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { definitionKinds } from '../../../language/model/definitions.ts'
import type { Fault } from '../../../language/model/reading.ts'
import { exampleLines } from '../../../language/parser/examples.ts'
import { type TextFile, TextReader } from '../../../language/workspace/text-file.ts'
import { textsBelow } from '../../support/texts.ts'

const reader = new TextReader()
const read = (text: string) => reader.read('a.stave', text)
const faultsOf = (file: TextFile): Fault[] => file.parts.flatMap(part => [...part.faults])
const syntaxOf = (text: string) => faultsOf(read(text)).filter(fault => fault.code === 'syntax')

/** Words that a parser uses and a coach does not. */
const jargon =
	/token|expecting|alternative|EOF|EarlyExit|mismatch|viable|redundant|lexer|parser|identifier|keyword|-->|undefined/i

const block = (number: number) => `block b${number} "Block ${number}"
  weeks 4
  targets deadlift
  session a on monday
    main deadlift 4 x 5 at 70%
    accessory plank 3 x 30 s

`
const all = textsBelow('examples/club')
const club = Object.values(all).join('\n')

describe('a fault stays where it is', () => {
	it('250 blocks, the first header misspelt: all are there, with one message', () => {
		const text = Array.from({ length: 250 }, (_, index) => block(index)).join('')
		const file = read(text.replace('block b0', 'blokc b0'))
		expect(file.parts.map(part => part.definition?.kind)).toEqual(Array(250).fill('block'))
		expect(file.parts[0]!.definition).toMatchObject({ name: { text: 'b0' }, sessions: [{ items: [{}, {}] }] })
		const faults = faultsOf(file)
		expect(faults).toHaveLength(1)
		expect(faults[0]!.message).toContain('Did you mean "block"?')
	})

	it.each(['base', 'week', 'hold'])('a misspelt header is found where its name, %s, is a word of the language too', name => {
		const file = read(`blok ${name} "Base"\n  weeks 1\n\n${block(1)}blok ${name} "Base"\n  weeks 2\n`)
		expect(file.parts.map(part => part.definition?.name.text)).toEqual([name, 'b1', name])
		expect(faultsOf(file).map(fault => fault.message)).toEqual(
			Array(2).fill('"blok" does not begin a definition. Did you mean "block"?'),
		)
	})

	it('a note behind a misspelt word begins no definition', () => {
		const file = read('block a "A"\n  weeks 1\n  session s on monday\n    acessory blocks note "One."\n    main plank 3 x 30 s\n')
		expect(file.parts.map(part => part.definition?.kind)).toEqual(['block'])
	})

	it('an exception in a log is told where it can stand', () => {
		const faults = faultsOf(
			read('log ann\n  on 2026-10-05\n    did plank 30 s\n    allow missed-work because "camp"\n  on 2026-10-06\n'),
		)
		expect(faults.map(fault => fault.message)).toEqual([expect.stringContaining('item, session, block, run, plan or lifter')])
	})

	it.each(definitionKinds)('%s with a capital, as a telephone writes it, is the definition all the same', kind => {
		const written = `${kind[0]!.toUpperCase()}${kind.slice(1)}`
		const file = read(
			`${block(1)}${written} first${kind === 'log' ? '' : ' "First"'}${kind === 'plan' ? ' for ann' : ''}\n  note "One."\n`,
		)
		expect(file.parts.map(part => part.definition?.kind)).toEqual(['block', kind])
		expect(faultsOf(file).map(({ code, message }) => `${code}: ${message}`)).toEqual([
			`old-spelling: This reads, but it is written otherwise: ${kind}, not ${written}.`,
		])
	})

	it('any one token broken: at most 3 messages, in words that a coach uses, and the other definitions whole', () => {
		const sample = Object.values(all).filter(text => text.length < 3000)
		const counts = new Map<number, number>()
		for (const text of sample.slice(0, 14)) {
			const whole = read(text).parts.length
			const { tokens } = reader.tokenize(text)
			for (const [index, token] of tokens.entries()) {
				if (index % 3 !== 0) continue
				for (const instead of ['', 'zzz', '@', '7', '"']) {
					const broken = text.slice(0, token.startOffset) + instead + text.slice(token.endOffset! + 1)
					const file = read(broken)
					const syntax = faultsOf(file).filter(fault => fault.code === 'syntax')
					expect(syntax.length, broken.slice(Math.max(0, token.startOffset - 40), token.startOffset + 40)).toBeLessThanOrEqual(3)
					counts.set(syntax.length, (counts.get(syntax.length) ?? 0) + 1)
					for (const fault of syntax) expect(fault.message).not.toMatch(jargon)
					expect(file.parts.filter(part => part.definition).length).toBeGreaterThanOrEqual(whole - 1)
				}
			}
		}
		// The test would be empty if nothing was ever reported.
		expect((counts.get(1) ?? 0) + (counts.get(2) ?? 0)).toBeGreaterThan(100)
	})

	it('a half-typed line swallows nothing', () => {
		for (const half of [
			'run',
			'run\n',
			'main',
			'week 1:',
			'week 1: 4 x',
			'swap plank for',
			'requires',
			'"',
			'accessory plank 3 x 30 s at',
		]) {
			const text = `${block(1)}${half.startsWith('run') || half.startsWith('swap') ? 'plan p for ann\n  start 2026-10-05\n' : block(2)}    ${half}\n\n${block(3)}`
			const names = read(text).parts.map(part => part.definition?.name.text)
			expect(names, half).toContain('b1')
			expect(names, half).toContain('b3')
		}
	})

	it('a word that begins a definition is no name, and begins nothing there', () => {
		const file = read('plan p for ann\n  start 2026-10-05\n  run block steps\n  meet 2026-12-01\n')
		expect(file.parts.map(part => part.definition?.kind)).toEqual(['plan'])
		expect(faultsOf(file)[0]!.message).toContain('"block" begins a definition, so it cannot be a name')
	})

	it('a misspelt line is read as the nearest one', () => {
		const file = read(block(1).replace('targets', 'tragets').replace('accessory', 'acessory'))
		expect(file.parts[0]!.definition).toMatchObject({
			targets: [{ text: 'deadlift' }],
			sessions: [{ items: [{}, { movement: { text: 'plank' } }] }],
		})
		expect(faultsOf(file)).toHaveLength(2)
	})
})

describe('what is pasted from elsewhere', () => {
	it('an unclosed comment is one fault, and the text after it is read', () => {
		const file = read(`/* my notes\n${block(1)}`)
		expect(file.parts.some(part => part.definition?.kind === 'block')).toBe(true)
		expect(faultsOf(file)).toHaveLength(1)
	})

	it('a text without its closing quote ends with its line', () => {
		const file = read('block a "A\n  weeks 4\n  targets deadlift\n')
		expect(file.parts[0]!.definition).toMatchObject({ title: { text: 'A' }, weeks: { value: 4 } })
		expect(faultsOf(file)).toHaveLength(1)
	})

	it.each([
		['bodyweight 72,5 kg', 'bad-number', '72.5'],
		['best deadlift 160 kg on 5.10.2026', 'bad-date', '2026-10-05'],
		['best Deadlift 160 kg', 'old-spelling', 'deadlift'],
		['note “soft quotes”', 'old-spelling', '"soft quotes"'],
		['bodyweight ７２ kg', 'old-spelling', '72'],
		['available munday', 'unknown-name', 'monday'],
		['bodyweight 72', 'bad-number', '72 kg'],
	])('%s costs one message with its correction', (line, code, correction) => {
		const file = read(`lifter ann "Ann"\n  ${line}\n`)
		const faults = faultsOf(file)
		expect(faults.map(fault => fault.code)).toEqual([code])
		expect(faults[0]!.corrections[0]!.edits[0]!.text).toBe(correction)
	})

	it.each(['\u00A0', '\u2028', '\u3000', '\uFEFF'])('white space %j is white space', space => {
		expect(faultsOf(read(block(1).replaceAll(' ', space)))).toEqual([])
	})

	it('a list is no decimal comma', () => {
		const file = read('block a "A"\n  weeks 1\n  session s on monday\n    main deadlift 1 x 3,3 x 3\n')
		expect(faultsOf(file)).toEqual([])
	})

	it('a long stretch of characters that mean nothing costs a few messages', () => {
		const file = read('@#$%^'.repeat(4900))
		expect(faultsOf(file).length).toBeLessThanOrEqual(3)
		const mixed = read('x@ 1# "a" $ % ^ '.repeat(2000))
		expect(faultsOf(mixed).length).toBeLessThanOrEqual(20)
	})

	it('10,000 items in one session and one very long line are read', () => {
		const many = `block a "A"\n  weeks 1\n  session s on monday\n${'    accessory plank 3 x 30 s\n'.repeat(10_000)}`
		expect(read(many).parts[0]!.definition).toMatchObject({ sessions: [{ items: { length: 10_000 } }] })
		const pasted = `block a "A"\n  weeks 1\n  session s on monday\n${'    - accessory plank (3x30") @8\n'.repeat(1000)}`
		expect(faultsOf(read(pasted))).toHaveLength(1)
		const long = `block a "A" weeks 1 note "${'long '.repeat(200_000)}"`
		expect(faultsOf(read(long))).toEqual([])
	})
})

describe('whatever the text', () => {
	it('nothing throws, and every fault lies in its part', () => {
		const pieces = reader.tokenize(club).tokens.map(token => token.image)
		const piece = fc.oneof(
			fc.constantFrom(...pieces),
			fc.constantFrom('\n', '"', '/*', '*/', '//', '“', '72,5', '×', '-', '@', '\\', '\uD83D', 'Ä', '5.10.2026'),
			fc.string({ unit: 'grapheme', maxLength: 5 }),
		)
		fc.assert(
			fc.property(fc.array(piece, { maxLength: 60 }), words => {
				const text = words.join(' ')
				for (const part of read(text).parts) {
					for (const fault of part.faults) {
						expect(fault.span.start).toBeGreaterThanOrEqual(0)
						expect(fault.span.end).toBeLessThanOrEqual(part.text.length)
						expect(fault.span.start).toBeLessThanOrEqual(fault.span.end)
						expect(fault.message).not.toMatch(jargon)
					}
				}
			}),
			{ numRuns: 300 },
		)
	})
})

describe('the example lines that messages show', () => {
	const grammar = readFileSync(path.resolve(import.meta.dirname, '../../../language/grammar/barstave.langium'), 'utf8')
	const rules = [...grammar.matchAll(/^([A-Z]\w+)(?: returns string)?:/gm)].map(match => match[1]!)

	const contextsOf = (example: string) => [
		example,
		...[
			'movement m "M"',
			'breakdown b "B"',
			'progression p "P"',
			'limits l',
			'gym g "G"',
			'lifter l "L"',
			'team t "T"',
			'block b "B"',
		].map(header => `${header}\n  ${example}`),
		...[
			'plan p for l\n  start 2026-10-05\n ',
			'plan p for l\n  run b\n ',
			'log l\n ',
			'log l\n  on 2026-10-05\n ',
			'rules r\n ',
		].map(header => `${header} ${example}`),
		`block b "B"\n  session s\n  ${example}`,
		`block b "B"\n  session s\n  main deadlift ${example}`,
		`block b "B"\n  session s\n  main deadlift 4 x 5 ${example}`,
		`lifter l "L"\n  passed ${example}`,
		`lifter l "L"\n  bodyweight ${example}`,
		`lifter l "L"\n  fails deadlift with back-rounding ${example}`,
		`movement m "M"\n  sets ${example}`,
		`block b "B"\n  session s\n  main deadlift 4 x 5 rest ${example}`,
	]

	it('with a reserved word in place of a name keep their definition whole', () => {
		for (const [rule, { example }] of Object.entries(exampleLines)) {
			// What stands first on its line, or after another name, may begin the next definition.
			const { tokens } = reader.tokenize(example)
			const isName = (index: number) => tokens[index]?.tokenType.name === 'ID'
			const names = tokens.filter((_, index) => index > 0 && isName(index) && !isName(index - 1))
			for (const name of names) {
				const before = contextsOf(example).find(text => syntaxOf(text).length === 0)!
				const at = before.lastIndexOf(example) + name.startOffset
				const text = `${before.slice(0, at)}log${before.slice(at + name.image.length)}`
				const kinds = read(before).parts.map(part => part.definition?.kind)
				expect(
					read(text).parts.map(part => part.definition?.kind),
					`${rule}: ${text}`,
				).toEqual(kinds)
			}
		}
	})

	it('are there for every line of the grammar', () => {
		const lines = rules.filter(
			rule =>
				/(Line|Limit|Clause)$/.test(rule) &&
				!/^(Movement|Breakdown|Progression|Limits|Gym|Lifter|Block|Session|Item|Plan|Run|RunChange|Member|Log|Entry|Team|RuleLevels)Line$/.test(
					rule,
				),
		)
		const groups = new Set(['SideClause', 'Clause', 'LoggedClause'])
		expect(lines.filter(rule => !(rule in exampleLines) && !groups.has(rule))).toEqual([])
	})

	it.each(Object.entries(exampleLines))('%s reads where it stands', (rule, { example }) => {
		expect(
			contextsOf(example).some(text => syntaxOf(text).length === 0),
			`${rule}: ${example}`,
		).toBe(true)
	})
})
