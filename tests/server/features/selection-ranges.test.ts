import { afterAll, beforeAll, expect, it } from 'vitest'
import type { SelectionRange } from 'vscode-languageserver/node'
import { Editor, makeFolder, uriOf } from '../support/editor.ts'

const text = `// 😀😀 before
block pull "Pull 😀"
  weeks 2

  session a "😀" on monday
    main deadlift 4 x 5 at 70% rest 2 min, 1 x 3 at 80%
      week 2: 3 x 3 at 75-80% rpe at most 8
      note "Slow."
    accessory plank 3 x 30 s
`

let editor: Editor
let uri: string
beforeAll(async () => {
	const folder = await makeFolder({})
	uri = uriOf(folder, 'a.stave')
	editor = await Editor.start([folder])
	await editor.openText(uri, text)
})
afterAll(() => editor.stop())

async function stepsFrom(line: number, character: number): Promise<string[]> {
	const params = { textDocument: { uri }, positions: [{ line, character }] }
	const [found] = await editor.request<SelectionRange[]>('textDocument/selectionRange', params)
	const lines = text.split('\n')
	const offset = (at: { line: number; character: number }) =>
		lines.slice(0, at.line).reduce((sum, one) => sum + one.length + 1, 0) + at.character
	const steps: string[] = []
	for (let one: SelectionRange | undefined = found; one; one = one.parent)
		steps.push(text.slice(offset(one.range.start), offset(one.range.end)))
	return steps
}

const item = text.slice(text.indexOf('main'), text.indexOf('\n    accessory'))
const session = text.slice(text.indexOf('session'), text.length - 1)
const block = text.slice(text.indexOf('block'), text.length - 1)

it('goes from a word to its clause, set group, sets, line, item, session, definition and file', async () => {
	expect(await stepsFrom(5, 28)).toEqual([
		'70',
		'70%',
		'at 70%',
		'4 x 5 at 70% rest 2 min',
		'4 x 5 at 70% rest 2 min, 1 x 3 at 80%',
		'main deadlift 4 x 5 at 70% rest 2 min, 1 x 3 at 80%',
		item,
		session,
		block,
		text,
	])
})

it('knows the line of a week and the header of a session', async () => {
	expect(await stepsFrom(6, 33)).toEqual(
		expect.arrayContaining(['rpe at most 8', 'week 2: 3 x 3 at 75-80% rpe at most 8', item, session]),
	)
	expect(await stepsFrom(4, 11)).toEqual(['a', 'session a "😀" on monday', session, block, text])
})

it('widens in what does not read, and outside of all definitions', async () => {
	await editor.change(uri, '@@@ block\nblock b "B"\n  session a\n    main deadlift 4 x\n')
	const ranges = async (line: number, character: number) =>
		(
			await editor.request<SelectionRange[]>('textDocument/selectionRange', {
				textDocument: { uri },
				positions: [{ line, character }],
			})
		)[0]!
	for (const [line, character] of [
		[0, 1],
		[3, 21],
	] as const) {
		let outer = await ranges(line, character)
		while (outer.parent) outer = outer.parent
		expect(outer.range).toEqual({ start: { line: 0, character: 0 }, end: { line: 4, character: 0 } })
	}
	await editor.change(uri, text)
})
