import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { SemanticTokens, SemanticTokensDelta } from 'vscode-languageserver/node'
import { tokenModifiers, tokenTypes } from '../../../server/semantic/legend.ts'
import { Editor, makeFolder, uriOf } from '../support/editor.ts'

const text = `/* 😀😀 漢 é
 two lines */ block week "Week 😀" // 😀 "漢"
  weeks 2
  targets deadlift
  requires plank held 30 s
  allow frequency-cap because "camp"
  session main "😀😀漢é" on monday /* é */
    main deadlift 4 x 5 at 72.5% tempo 3-1-x-0 rest 2 min, 1 x 3 at 100 kg
    accessory rest-row 3 x 8-10 rpe 8
movement rest-row "Row" pattern row
plan x-plan for ann start 2026-10-05 run week
  move main to tuesday
lifter ann "Ann"
rules house
  frequency-cap error
`

let editor: Editor
let uri: string
beforeAll(async () => {
	const folder = await makeFolder({})
	uri = uriOf(folder, 'a.stave')
	editor = await Editor.start([folder])
	await editor.openText(uri, text)
	await editor.settled()
})
afterAll(() => editor.stop())

/** [line, word, type and modifiers], cut out of the text by UTF-16 columns. */
function decoded(data: readonly number[], of = text): [number, string, string][] {
	const lines = of.split('\n')
	let line = 0
	let character = 0
	return Array.from({ length: data.length / 5 }, (_, index) => {
		const [down, along, length, type, bits] = data.slice(5 * index, 5 * index + 5) as [number, number, number, number, number]
		line += down
		character = down > 0 ? along : character + along
		const modifiers = tokenModifiers.filter((_, bit) => bits & (1 << bit))
		return [line, lines[line]!.slice(character, character + length), [tokenTypes[type], ...modifiers].join('.')]
	})
}

const full = async () => await editor.request<SemanticTokens>('textDocument/semanticTokens/full', { textDocument: { uri } })

describe('words are coloured', () => {
	it('by what they are, in UTF-16 columns behind wide letters', async () => {
		const found = decoded((await full()).data)
		for (const [line, word, kind] of [
			[0, '/* 😀😀 漢 é', 'comment'],
			[1, ' two lines */', 'comment'],
			[1, 'block', 'keyword'],
			[1, 'week', 'class.declaration'],
			[1, '"Week 😀"', 'string'],
			[1, '// 😀 "漢"', 'comment'],
			[3, 'deadlift', 'function.defaultLibrary'],
			[4, '30', 'number'],
			[4, 's', 'keyword.unit'],
			[5, 'frequency-cap', 'decorator'],
			[6, 'main', 'method.declaration'],
			[6, 'monday', 'enumMember'],
			[6, '/* é */', 'comment'],
			[7, 'main', 'keyword.role'],
			[7, 'x', 'operator'],
			[7, '72.5', 'number'],
			[7, '%', 'keyword.unit'],
			[7, '3-1-x-0', 'number'],
			[7, 'kg', 'keyword.unit'],
			[8, 'rest-row', 'function'],
			[9, 'rest-row', 'function.declaration'],
			[10, 'x-plan', 'interface.declaration'],
			[10, 'ann', 'variable'],
			[10, '2026-10-05', 'number.date'],
			// A word of the language that is used as a name is a name.
			[10, 'week', 'class'],
			[11, 'main', 'method'],
			[14, 'frequency-cap', 'decorator'],
			[14, 'error', 'enumMember'],
		])
			expect(found).toContainEqual([line, word, kind])
	})

	it('once each, in their order', async () => {
		const found = decoded((await full()).data)
		// Every word, number and sign but for commas and colons.
		const words = text.replace(/\/\*[\s\S]*?\*\/|\/\/.*/g, '').match(/"[^"]*"|\d+(-(\d+|x))+|[a-z][a-z0-9-]*|\d+(\.\d+)?|%/g)!
		expect(found.filter(([, , kind]) => kind !== 'comment' && kind !== 'operator').map(([, word]) => word)).toEqual(
			words.flatMap(word => (word === 'x' ? [] : word === '8-10' ? ['8', '10'] : [word])),
		)
	})

	it('in a part of the text alone', async () => {
		const range = { start: { line: 7, character: 0 }, end: { line: 7, character: 40 } }
		const { data } = await editor.request<SemanticTokens>('textDocument/semanticTokens/range', { textDocument: { uri }, range })
		const all = decoded((await full()).data)
		expect(decoded(data)).toEqual(all.filter(([line]) => line === 7).slice(0, decoded(data).length))
		expect(decoded(data).at(-1)![1]).toBe('3-1-x-0')
	})

	it('after a key by what is new', async () => {
		const before = await full()
		const changed = text.replace('72.5', '75')
		await editor.change(uri, changed)
		const delta = await editor.request<SemanticTokensDelta>('textDocument/semanticTokens/full/delta', {
			textDocument: { uri },
			previousResultId: before.resultId,
		})
		const data = [...before.data]
		for (const { start, deleteCount, data: added = [] } of delta.edits) data.splice(start, deleteCount, ...added)
		expect(decoded(data, changed)).toEqual(decoded((await full()).data, changed))
		expect(delta.edits.reduce((sum, edit) => sum + (edit.data?.length ?? 0), 0)).toBeLessThan(20)
		await editor.change(uri, text)
	})

	it('also behind a fault on their line', async () => {
		const faulty = text.replace('rest 2 min, 1', 'rest 2 min @@@, 1')
		await editor.change(uri, faulty)
		const found = decoded((await full()).data, faulty)
		expect(found).toContainEqual([7, 'kg', 'keyword.unit'])
		expect(found).toContainEqual([8, 'rest-row', 'function'])
		await editor.change(uri, text)
	})
})
