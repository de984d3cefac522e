import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { CodeAction, TextDocumentEdit } from 'vscode-languageserver/node'
import { TextDocument } from 'vscode-languageserver-textdocument'
import { Editor, makeFolder, uriOf } from '../support/editor.ts'

let editor: Editor
let folder: string

beforeEach(async () => {
	folder = await makeFolder({})
})
afterEach(() => editor.stop())

async function start(capabilities = {}) {
	editor = await Editor.start([folder], capabilities, '2026-10-07')
}

async function opened(text: string, name = 'a.stave'): Promise<string> {
	const uri = uriOf(folder, name)
	await editor.openText(uri, text)
	await editor.settled()
	return uri
}

/** The actions at the first place of some words of a text. */
async function actionsAt(uri: string, text: string, words: string, only?: string[]): Promise<CodeAction[]> {
	const before = text.slice(0, text.indexOf(words)).split('\n')
	const start = { line: before.length - 1, character: before.at(-1)!.length }
	const params = { textDocument: { uri }, range: { start, end: start }, context: { diagnostics: [], ...(only ? { only } : {}) } }
	return (await editor.request<CodeAction[] | null>('textDocument/codeAction', params)) ?? []
}

function after(uri: string, text: string, { edit }: CodeAction): string {
	const changes = edit!.documentChanges as TextDocumentEdit[]
	expect(changes.map(change => change.textDocument.uri)).toEqual([uri])
	return TextDocument.applyEdits(TextDocument.create(uri, 'barstave', 1, text), changes[0]!.edits as never)
}

const titles = (actions: readonly CodeAction[]) => actions.map(action => action.title)

describe('a name that nobody has written', () => {
	const plan = 'gym hall "Hall"\nplan p for per-holst\n  start 2026-10-05\n  run hinge-two\n'

	it.each([
		['per-holst', 'Write lifter per-holst', 'lifter per-holst "Per Holst"\n  trains at hall\n'],
		['per-holst', 'Write team per-holst', 'team per-holst "Per Holst"\n'],
		['hinge-two', 'Write block hinge-two', 'block hinge-two "Hinge Two"\n  weeks 4\n'],
	])('is begun: %s, %s', async (name, title, begins) => {
		await start()
		const uri = await opened(plan)
		const action = (await actionsAt(uri, plan, name)).find(one => one.title === title)!
		expect(action.kind).toBe('quickfix')
		expect(action.diagnostics?.map(one => one.code)).toEqual(['unknown-name'])
		const text = after(uri, plan, action)
		expect(text).toContain(`${plan}\n${begins}`)
		const unknown = () =>
			editor.problemsOf(uri).filter(one => one.code === 'unknown-name' && String(one.message).includes(`called "${name}"`)).length
		expect(unknown()).toBe(1)
		await editor.change(uri, text)
		await editor.until(() => unknown() === 0, 'the name is known')
		expect(editor.codesOf(uri)).not.toContain('syntax')
	})

	it('is not begun in the stead of one that is only misspelt, but beside its correction', async () => {
		await start()
		const text = 'block b "B"\n  weeks 1\n  session s on monday\n    main dedlift 3 x 5 at 100 kg\n'
		const uri = await opened(text)
		expect(titles(await actionsAt(uri, text, 'dedlift'))).toEqual(['Write "deadlift"', 'Write movement dedlift'])
	})
})

describe('a plan', () => {
	const text = `lifter ann "Ann Berg"\r
  available tuesday, friday\r
block b "B"\r
  weeks 1\r
  session s on day 1\r
    main deadlift 3 x 5 at 100 kg\r
  session t on day 2\r
    main back-squat 3 x 5 at 80 kg`

	it.each([
		['ann', 'Write a plan for Ann Berg'],
		['b "B"', 'Write a plan for Ann Berg that runs B'],
	])('is begun at %s', async (words, title) => {
		await start()
		const uri = await opened(text)
		const action = (await actionsAt(uri, text, words)).find(one => one.title === title)!
		const written = after(uri, text, action)
		expect(written).toBe(`${text}\r\n\r\nplan ann-plan for ann\r\n  start 2026-10-12\r\n  days tuesday, friday\r\n  run b\r\n`)
		await editor.change(uri, written)
		await editor.settled()
		const severe = editor.problemsOf(uri).filter(one => one.severity === 1)
		expect(severe).toEqual([])
		expect(titles(await actionsAt(uri, written, words))).not.toContain(title)
	})
})

describe('all corrections at once', () => {
	const text =
		'lifter ann “Ann”\n  bodyweight 68,4 kg\nblock b "B"\n  weeks 2\n  session s on monday\n    main deadlift 4x5 at 100kg\n'

	it('are one step, after which nothing is left', async () => {
		await start()
		const uri = await opened(text)
		const [action, ...others] = await actionsAt(uri, text, 'ann', ['source.fixAll'])
		expect(others).toEqual([])
		expect([action!.kind, (action!.edit!.documentChanges as TextDocumentEdit[]).length]).toEqual(['source.fixAll.barstave', 1])
		const fixed = after(uri, text, action!)
		expect(fixed).toBe(text.replace('“Ann”', '"Ann"').replace('68,4', '68.4').replace('4x5', '4 x 5').replace('100kg', '100 kg'))
		// Nothing has changed for anybody else before the editor takes it.
		expect(editor.codesOf(uri)).toContain('bad-number')
		await editor.change(uri, fixed)
		await editor.until(() => !editor.codesOf(uri).includes('bad-number'), 'they are gone')
		expect(await actionsAt(uri, fixed, 'ann', ['source.fixAll'])).toEqual([])
	})

	it('are not offered among the others', async () => {
		await start()
		const uri = await opened(text)
		expect((await actionsAt(uri, text, '68,4')).map(one => one.kind)).toEqual(['quickfix'])
		expect(await actionsAt(uri, text, '68,4', ['refactor'])).toEqual([])
	})
})

describe('an editor of few abilities', () => {
	it('gets changes without versions', async () => {
		await start({ workspace: { workspaceEdit: {} } })
		const text = 'lifter ann "Ann"\n  bodyweight 68,4 kg\n'
		const uri = await opened(text)
		const [action] = await actionsAt(uri, text, '68,4')
		expect(Object.keys(action!.edit!.changes!)).toEqual([uri])
	})

	it('that knows commands alone gets nothing that it could not do', async () => {
		await start({ textDocument: { codeAction: {} } })
		const text = 'lifter ann "Ann"\n  bodyweight 68,4 kg\n'
		expect(await actionsAt(await opened(text), text, '68,4')).toEqual([])
	})
})
