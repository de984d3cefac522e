import { describe, expect, test } from 'vitest'
import { formatText } from '../../../language/formatting/format.ts'
import type { Definition } from '../../../language/model/definitions.ts'
import type { Correction } from '../../../language/model/reading.ts'
import page from '../../../language/reference/pasted.md'
import { TextReader } from '../../../language/workspace/text-file.ts'

/** The page "What is pasted from elsewhere" is what it says: each row of its tables is read, corrected and formatted. */
const reader = new TextReader()

interface Row {
	readonly pasted: string
	/** Our form; more than one where the coach must say. */
	readonly ours: readonly string[]
	/** A line of it in the page's own text above the table, and what stands instead of the dots. */
	readonly written: string
	readonly meant: readonly string[]
	/** For what has no form of ours: what the message asks, where there is no correction. */
	readonly asked: string | undefined
	/** Are there more corrections than the one that is shown? */
	readonly isFirst: boolean
}

const rows: Row[] = []
let around = ''
for (const [whole, fence, table] of page.matchAll(/```stave\n([\s\S]*?)```|((?:^\|.*\|\n)+)/gm)) {
	if (fence !== undefined) around = fence
	const [heading = '', , ...written] = (table ?? '').split('\n')
	for (const line of written) {
		const [pasted, ...ours] = [...line.matchAll(/`([^`]+)`/g)].map(match => match[1]!)
		if (pasted === undefined) continue
		const inText = (text: string) => around.replace('…', () => text)
		const asked = ours.length === 0 ? line.split('|')[2]!.trim() : undefined
		rows.push({ pasted, ours, written: inText(pasted), meant: ours.map(inText), asked, isFirst: heading.includes('Instead') })
	}
	if (whole.includes('…') && !around.includes('…')) throw new Error(`no place for a row in ${around}`)
}

const definitionsOf = (text: string) => reader.read('a.stave', text).parts.map(part => part.definition)
const problemsOf = (text: string) =>
	reader.read('a.stave', text).parts.flatMap(({ faults, start }) => faults.map(fault => ({ ...fault, partStart: start })))

/** What a definition says, without a place in it. */
function factsOf(text: string): unknown {
	const withoutPlaces = (key: string, value: unknown): unknown => {
		if (typeof value === 'bigint') return `${value}`
		if (key === 'faults') return undefined
		const keys = typeof value === 'object' && value !== null ? Object.keys(value) : []
		return keys.length === 2 && keys.includes('start') && keys.includes('end') ? undefined : value
	}
	return JSON.parse(JSON.stringify(definitionsOf(text) as readonly (Definition | undefined)[], withoutPlaces))
}

function corrected(text: string, { edits }: Correction, start: number): string {
	return [...edits]
		.reverse()
		.reduce((all, { span, text: by }) => all.slice(0, start + span.start) + by + all.slice(start + span.end), text)
}

test('the page has rows', () => {
	expect(rows.length).toBeGreaterThan(120)
})

/** Where a note goes, a line of its own: how far in it stands is for the formatter. */
const inOneLine = (text: string) => text.replace(/\s+/g, ' ')

describe.each(rows.filter(row => row.isFirst))('$pasted', ({ pasted, written, meant, asked }) => {
	test('costs one message, at its place, that says what to write instead', () => {
		const problems = problemsOf(written)
		expect(problems.map(({ code, message }) => `${code}: ${message}`)).toHaveLength(1)
		const { message, span, partStart, corrections } = problems[0]!
		const place = written.indexOf(pasted)
		expect(partStart + span.start).toBeGreaterThanOrEqual(place)
		expect(partStart + span.end).toBeLessThanOrEqual(place + pasted.length)
		if (asked === undefined) {
			const right = corrections.map(correction => corrected(written, correction, partStart))
			expect(inOneLine(right[0]!)).toBe(inOneLine(meant[0]!))
			for (const text of right) expect(problemsOf(text)).toEqual([])
		} else {
			expect(message).toContain(asked)
			expect(corrections).toEqual([])
		}
	})

	test('means after the formatter what it meant before', () => {
		const formatted = formatText(written, reader)
		expect(factsOf(formatted)).toEqual(factsOf(written))
		expect(formatText(formatted, reader)).toBe(formatted)
	})
})

describe.each(rows.filter(row => !row.isFirst))('$pasted', ({ pasted, ours, written, meant }) => {
	test('costs one message, at its place, with a correction that leaves none', () => {
		const problems = problemsOf(written)
		expect(problems.map(({ code, message }) => `${code}: ${message}`)).toHaveLength(1)
		const [problem] = problems
		const { span, partStart, corrections } = problem!
		const place = written.indexOf(pasted)
		expect(partStart + span.start).toBeGreaterThanOrEqual(place)
		expect(partStart + span.end).toBeLessThanOrEqual(place + pasted.length)
		expect(span.end).toBeGreaterThan(span.start)
		expect(corrections.map(correction => corrected(written, correction, partStart))).toEqual(meant)
		for (const text of meant) expect(problemsOf(text)).toEqual([])
	})

	test('is read as what it means', () => {
		// What has no unit is read in one, and what that is the message says.
		const readings = meant.map(factsOf)
		expect(readings).toContainEqual(factsOf(written))
		if (ours.length === 1) expect(factsOf(written)).toEqual(readings[0])
	})

	test('is written in our form by the formatter, where nothing is left to say', () => {
		const formatted = formatText(written, reader)
		const [problem] = problemsOf(written)
		if (problem?.code === 'old-spelling') expect(formatted).toBe(formatText(meant[0]!, reader))
		else expect(factsOf(formatted)).toEqual(factsOf(written))
		expect(formatText(formatted, reader)).toBe(formatted)
	})
})

test('ways of writing sets, and of writing what belongs to them, stand together in any pair', () => {
	const inSession = rows.filter(
		row =>
			!row.isFirst &&
			row.written.includes('main deadlift') &&
			row.ours.length === 1 &&
			row.written.startsWith('block first-steps'),
	)
	const isSets = (row: Row) => /^\d[\d-]* x \d[\d-]*( each side| or more)?$/.test(row.ours[0]!)
	const clauses = inSession.filter(row => /^4 ?x ?5[ ,@]/.test(row.pasted) && row.ours[0]!.startsWith('4 x 5 '))
	const wrong: string[] = []
	for (const sets of inSession.filter(isSets)) {
		for (const clause of clauses) {
			const pasted = `${sets.pasted}${clause.pasted.slice(clause.pasted.startsWith('4x5') ? 3 : 5)}`
			const ours = `${sets.ours[0]}${clause.ours[0]!.slice(5)}`
			const written = sets.written.replace(sets.pasted, () => pasted)
			const meant = sets.written.replace(sets.pasted, () => ours)
			const problems = problemsOf(written)
			const [problem] = problems
			const right = problem?.corrections[0] && corrected(written, problem.corrections[0], problem.partStart)
			if (problems.length !== 1 || right !== meant)
				wrong.push(`${pasted} → ${right?.split('main deadlift ')[1]?.trim()} (${problems.length})`)
		}
	}
	expect(clauses.length).toBeGreaterThan(20)
	expect(wrong).toEqual([])
})

describe('in titles, notes and comments nothing is read', () => {
	test.each(rows)('$pasted', ({ pasted }) => {
		const text = `block first-steps "${pasted.replaceAll('"', '″')}"\n  weeks 1\n  note "${pasted.replaceAll('"', '″')}"\n  // ${pasted}\n  /* ${pasted} */\n`
		expect(problemsOf(text)).toEqual([])
		expect(formatText(text, reader)).toContain(`// ${pasted}`)
	})
})
