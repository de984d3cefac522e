import { afterAll, beforeAll, expect, it } from 'vitest'
import type { DocumentHighlight } from 'vscode-languageserver/node'
import { Editor, makeFolder, uriOf } from '../support/editor.ts'

const text = `block pull "Pull 😀😀 漢 é" // 😀
  weeks 1
  targets deadlift
  session a "A 😀" on monday
    main deadlift 3 x 5 at 70%
lifter ann "Ann"
plan p for ann
  start 2026-10-05
  run pull
    move a to tuesday
`

let editor: Editor
let folder: string
beforeAll(async () => {
	folder = await makeFolder({ 'a.stave': text, 'b.stave': 'plan other for ann\n  start 2027-01-04\n  run pull\n' })
	editor = await Editor.start([folder])
	await editor.open(folder, 'a.stave')
	await editor.settled()
})
afterAll(() => editor.stop())

const highlightsAt = async (line: number, character: number) =>
	(
		(await editor.request<DocumentHighlight[] | null>(
			'textDocument/documentHighlight',
			editor.at(uriOf(folder, 'a.stave'), line, character),
		)) ?? []
	).map(({ range, kind }) => [range.start.line, range.start.character, range.end.character, kind])

it('marks where a name is given and where it is used, in this text alone', async () => {
	expect(await highlightsAt(8, 7)).toEqual([
		[0, 6, 10, 3],
		[8, 6, 10, 2],
	])
})

it('marks a built-in movement wherever it stands', async () => {
	expect(await highlightsAt(2, 12)).toEqual([
		[2, 10, 18, 2],
		[4, 9, 17, 2],
	])
})

it('marks a session and the line of the plan that moves it', async () => {
	expect(await highlightsAt(9, 9)).toEqual([
		[3, 10, 11, 3],
		[9, 9, 10, 2],
	])
})

it('marks nothing where no name stands', async () => {
	expect(await highlightsAt(4, 20)).toEqual([])
})
