import { afterAll, beforeAll, expect, it } from 'vitest'
import { TextDocument, type TextEdit } from 'vscode-languageserver-textdocument'
import { Editor, makeFolder, uriOf } from '../support/editor.ts'

const written = `// 😀😀 漢 é
block rebuild “Rebuild 😀😀”   weeks 2 // 漢
  session heavy-pull on monday
      main deadlift 4x5 at 70 %

block faulty "Faulty"
      session   s on monday
  main deadlift 4 y 5
`

const ours = `// 😀😀 漢 é
block rebuild "Rebuild 😀😀"
  weeks 2 // 漢

  session heavy-pull on monday
    main deadlift 4 x 5 at 70%

block faulty "Faulty"
      session   s on monday
  main deadlift 4 y 5
`

let editor: Editor
let folder: string

beforeAll(async () => {
	folder = await makeFolder({ 'block.stave': written })
	editor = await Editor.start([folder])
})
afterAll(() => editor.stop())

const options = { tabSize: 8, insertSpaces: false }

async function formatted(uri: string, text: string, range?: unknown): Promise<string> {
	const method = range ? 'textDocument/rangeFormatting' : 'textDocument/formatting'
	const edits = await editor.request<TextEdit[]>(method, { textDocument: { uri }, options, range })
	return TextDocument.applyEdits(TextDocument.create(uri, 'barstave', 1, text), edits)
}

it('lays an open text out as it is now, whatever the tabs of the editor', async () => {
	const uri = await editor.open(folder, 'block.stave')
	expect(await formatted(uri, written)).toBe(ours)
	await editor.change(uri, ours)
	expect(await formatted(uri, ours)).toBe(ours)
	const more = `${ours}movement   press`
	await editor.change(uri, more)
	expect(await formatted(uri, more)).toBe(`${ours}\nmovement press\n`)
	await editor.close(uri)
})

it('changes nothing but what is selected', async () => {
	const uri = uriOf(folder, 'other.stave')
	await editor.openText(uri, written)
	const line = written.split('\n')[3]!
	const range = { start: { line: 3, character: 8 }, end: { line: 3, character: line.length } }
	expect(await formatted(uri, written, range)).toBe(
		written.replace('      main', '    main').replace('4x5', '4 x 5').replace('70 %', '70%'),
	)
	await editor.close(uri)
})

it.each([
	['LF', '\n'],
	['CR LF', '\r\n'],
])('keeps line endings (%s), the byte-order mark and every comment, also around a fault', async (_, lineBreak) => {
	const uri = uriOf(folder, 'marked.stave')
	const text = `\uFEFF${written}`.replaceAll('\n', lineBreak)
	await editor.openText(uri, text)
	const laidOut = await formatted(uri, text)
	expect(laidOut).toBe(`\uFEFF${ours}`.replaceAll('\n', lineBreak))
	await editor.change(uri, laidOut)
	expect(await formatted(uri, laidOut)).toBe(laidOut)
	await editor.close(uri)
})

it('shifts no column of a first line that begins with a byte-order mark', async () => {
	for (const mark of ['', '\uFEFF']) {
		const uri = uriOf(folder, `mark${mark.length}.stave`)
		await editor.openText(uri, `${mark}block b "B" targets dedlift\n`)
		await editor.until(() => editor.codesOf(uri).includes('unknown-name'), 'the fault is reported')
		const { start } = editor.problemsOf(uri).find(one => one.code === 'unknown-name')!.range
		expect(start).toEqual({ line: 0, character: 20 + mark.length })
		expect(editor.problemsOf(uri).filter(one => one.range.start.character < mark.length)).toEqual([])
		await editor.close(uri)
	}
})

it('has nothing for built-in texts', async () => {
	const uri = 'barstave-library:/hinge.stave'
	expect(await editor.request('textDocument/formatting', { textDocument: { uri }, options })).toBeNull()
})
