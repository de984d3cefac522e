import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { LocationLink, TextDocumentEdit, WorkspaceEdit } from 'vscode-languageserver/node'
import { TextDocument } from 'vscode-languageserver-textdocument'
import { Editor, makeFolder, uriOf } from '../support/editor.ts'

const files = {
	'block.stave': `block pull "Pull 😀"
  weeks 1
  session a "A" on monday
    main deadlift 3 x 5 at 70%
  session b on tuesday
    main deadlift 3 x 5 at 60%
block push "Push"
  weeks 1
  turn a over monday, friday
  session a on monday
    main bench-press 3 x 5 at 50 kg
`,
	'plan.stave': `lifter ann "Ann"
plan p for ann
  start 2026-10-05
  run pull
    move a to wednesday
    add accessory plank 3 x 30 s to a
  run push
    move a to friday
log ann
  on 2026-10-07 session a
    did deadlift 3 x 5 at 70 kg
  on 2026-10-16 missed a because "work"
`,
}

let editor: Editor
let folder: string
beforeEach(async () => {
	folder = await makeFolder(files)
})
afterEach(() => editor.stop())

async function start(capabilities = {}) {
	editor = await Editor.start([folder], capabilities)
	for (const name of Object.keys(files)) await editor.open(folder, name)
	await editor.request('barstave/counters', {})
}

const rename = (name: keyof typeof files, line: number, character: number, newName: string) =>
	editor.request<WorkspaceEdit>('textDocument/rename', { ...editor.at(uriOf(folder, name), line, character), newName })

/** The files after a rename. */
function renamed({ documentChanges = [] }: WorkspaceEdit): Record<string, string> {
	const edits = new Map((documentChanges as TextDocumentEdit[]).map(one => [one.textDocument.uri, one.edits as never]))
	return Object.fromEntries(
		Object.entries(files).map(([name, text]) => {
			const uri = uriOf(folder, name)
			return [name, TextDocument.applyEdits(TextDocument.create(uri, 'barstave', 1, text), edits.get(uri) ?? [])]
		}),
	)
}

describe('the new name of a session', () => {
	it.each([
		['where it is given', 'block.stave', 2, 11],
		['where a plan uses it', 'plan.stave', 4, 10],
		['where a log uses it', 'plan.stave', 9, 25],
	] as const)('is written in the block, in plans and in logs, asked %s', async (_, name, line, character) => {
		await start()
		const after = renamed(await rename(name, line, character, 'heavy'))
		expect(after['block.stave']).toBe(files['block.stave'].replace('session a "A"', 'session heavy "A"'))
		// The session of the same name in the other block keeps it, and so does the log's entry about that one.
		expect(after['plan.stave']).toBe(
			files['plan.stave']
				.replace('move a to w', 'move heavy to w')
				.replace('s to a', 's to heavy')
				.replace('session a', 'session heavy'),
		)
	})

	it('is not one that the block has already, nor a word that begins a definition', async () => {
		await start()
		await expect(rename('block.stave', 2, 11, 'b')).rejects.toThrow(/already called "b"/)
		await expect(rename('block.stave', 2, 11, 'plan')).rejects.toThrow(/word of the language/)
		expect(Object.keys(await rename('block.stave', 2, 11, 'main'))).toEqual(['documentChanges'])
	})

	it('is written in the turns that it takes', async () => {
		await start()
		expect(renamed(await rename('block.stave', 8, 7, 'press'))['block.stave']).toBe(
			files['block.stave'].replace('turn a over', 'turn press over').replace(/session a on monday/, 'session press on monday'),
		)
	})

	it('can be gone to from a plan', async () => {
		await start()
		const [link] = await editor.request<LocationLink[]>('textDocument/definition', editor.at(uriOf(folder, 'plan.stave'), 7, 10))
		expect([link!.targetUri, link!.targetSelectionRange.start]).toEqual([
			uriOf(folder, 'block.stave'),
			{ line: 9, character: 10 },
		])
	})
})

describe('a new name', () => {
	it('comes with the versions of open texts, so that an editor refuses it after another key', async () => {
		await start()
		const uri = uriOf(folder, 'plan.stave')
		const version = await editor.change(uri, `${files['plan.stave']}\n`)
		const { documentChanges } = await rename('block.stave', 0, 7, 'pull-two')
		const versions = new Map((documentChanges as TextDocumentEdit[]).map(one => [one.textDocument.uri, one.textDocument.version]))
		expect([versions.get(uri), versions.get(uriOf(folder, 'block.stave'))]).toEqual([version, 1])
	})

	it.each([
		['Rebuild Two', /lower-case/],
		['x', /word of the language/],
		['block', /word of the language/],
		['push', /already called "push"/],
	])('is not %s', async (newName, why) => {
		await start()
		await expect(rename('block.stave', 0, 7, newName)).rejects.toThrow(why)
	})

	it('is given to nothing that is built in', async () => {
		await start()
		await expect(rename('block.stave', 3, 11, 'squat-hold')).rejects.toThrow(/built in/)
		const where = editor.at(uriOf(folder, 'block.stave'), 3, 11)
		expect(await editor.request('textDocument/prepareRename', where)).toBeNull()
		expect(await editor.request('textDocument/prepareRename', editor.at(uriOf(folder, 'block.stave'), 0, 7))).toMatchObject({
			placeholder: 'pull',
		})
	})

	it('comes without versions to an editor that takes none', async () => {
		await start({ workspace: { workspaceEdit: {} } })
		const { changes, documentChanges } = await rename('block.stave', 0, 7, 'pull-two')
		expect(documentChanges).toBeUndefined()
		expect(Object.keys(changes!).sort()).toEqual([uriOf(folder, 'block.stave'), uriOf(folder, 'plan.stave')])
	})

	it('shifts nothing after wide characters on the line', async () => {
		await start()
		const uri = uriOf(folder, 'wide.stave')
		const text = '/* 😀😀 漢 é */ lifter bea "Bea 😀" /* 漢 */ plan q for bea start 2026-10-05 run pull @@@\n'
		await editor.openText(uri, text)
		const at = text.indexOf('for bea') + 5
		const edit = await editor.request<WorkspaceEdit>('textDocument/rename', { ...editor.at(uri, 0, at), newName: 'beatrix' })
		const edits = (edit.documentChanges as TextDocumentEdit[])[0]!.edits
		expect(TextDocument.applyEdits(TextDocument.create(uri, 'barstave', 1, text), edits as never)).toBe(
			text.replaceAll(' bea ', ' beatrix '),
		)
	})
})
