import { unlink } from 'node:fs/promises'
import path from 'node:path'
import { afterEach, describe, expect, it } from 'vitest'
import {
	type CancellationToken,
	CancellationTokenSource,
	type Diagnostic,
	type DocumentDiagnosticReport,
	LSPErrorCodes,
	type WorkspaceDiagnosticReport,
} from 'vscode-languageserver/node'
import { Editor, makeFolder, uriOf } from '../support/editor.ts'

let editor: Editor | undefined

afterEach(async () => {
	await editor?.stop()
	editor = undefined
})

const block = (name: string, movement = 'deadlift') =>
	`block ${name} "Steps"\n  weeks 2\n  session pull on monday\n    main ${movement} 3 x 5 at 100 kg\n`
const plan = 'lifter ann "Ann"\nplan p for ann\n  start 2026-10-05\n  run steps\n'

const pulls = {
	textDocument: { diagnostic: { relatedDocumentSupport: true } },
	workspace: { diagnostics: { refreshSupport: true } },
}

async function start(files: Readonly<Record<string, string>>, capabilities: object = pulls, options = {}) {
	const folder = await makeFolder(files)
	editor = await Editor.start([folder], capabilities, undefined, options)
	const pull = (uri: string, previousResultId?: string) =>
		editor!.request<DocumentDiagnosticReport & { resultId: string; items?: Diagnostic[] }>('textDocument/diagnostic', {
			textDocument: { uri },
			previousResultId,
		})
	const pullAll = (known: Readonly<Record<string, string>> = {}, token?: CancellationToken) => {
		const params = { previousResultIds: Object.entries(known).map(([uri, value]) => ({ uri, value })) }
		const asked = token
			? editor!.connection.sendRequest('workspace/diagnostic', params, token)
			: editor!.request('workspace/diagnostic', params)
		return asked as Promise<WorkspaceDiagnosticReport>
	}
	return { folder, editor, pull, pullAll }
}

const codes = (items: readonly Diagnostic[] | undefined) => (items ?? []).map(one => one.code)
const idsOf = ({ items }: WorkspaceDiagnosticReport) => Object.fromEntries(items.map(({ uri, resultId }) => [uri, resultId!]))

describe('problems that are asked for', () => {
	it('are the same that are told, and are not told beside', async () => {
		const { folder, editor, pull, pullAll } = await start({ 'a.stave': block('steps', 'dedlift') })
		const uri = await editor.open(folder, 'a.stave')
		await pullAll()
		const pulled = await pull(uri)
		expect(codes(pulled.items)).toContain('unknown-name')
		expect(editor.published).toEqual([])
		const told = await Editor.start([folder])
		await told.open(folder, 'a.stave')
		await told.settled()
		expect(pulled.items).toEqual(told.problemsOf(uri))
		await told.stop()
	})

	it('are not sent again where nothing is new', async () => {
		const { folder, editor, pull, pullAll } = await start({ 'a.stave': block('steps', 'dedlift') })
		const uri = await editor.open(folder, 'a.stave')
		await pullAll()
		const first = await pull(uri)
		expect(await pull(uri, first.resultId)).toEqual({ kind: 'unchanged', resultId: first.resultId })
		await editor.change(uri, block('steps'))
		const mended = await pull(uri, first.resultId)
		expect(mended.kind).toBe('full')
		expect(codes(mended.items)).not.toContain('unknown-name')
		expect(mended.resultId).not.toBe(first.resultId)
	})

	it('come for all files, with the versions of those that are open, and later only where they have changed', async () => {
		const { folder, editor, pullAll } = await start({ 'block.stave': block('steps'), 'plan.stave': plan })
		const uri = await editor.open(folder, 'block.stave')
		const all = await pullAll()
		expect(all.items.map(one => [one.uri, one.version])).toEqual([
			[uri, 1],
			[uriOf(folder, 'plan.stave'), null],
		])
		const waiting = pullAll(idsOf(all))
		await editor.change(uri, block('other'))
		const changed = await waiting
		const ofPlan = changed.items.find(one => one.uri === uriOf(folder, 'plan.stave'))
		expect(ofPlan?.kind === 'full' && codes(ofPlan.items)).toContain('unknown-name')
		expect(changed.items.find(one => one.uri === uri)?.version ?? 2).toBe(2)
	})

	it('of a file that is gone are none', async () => {
		const { folder, editor, pullAll } = await start({ 'a.stave': block('steps', 'dedlift') })
		const uri = uriOf(folder, 'a.stave')
		const all = await pullAll()
		await unlink(path.join(folder, 'a.stave'))
		const waiting = pullAll(idsOf(all))
		await editor.filesChanged([{ uri, type: 3 }])
		expect((await waiting).items).toMatchObject([{ uri, kind: 'full', items: [] }])
	})

	it('are waited for no longer where the editor takes its question back', async () => {
		const { pullAll } = await start({ 'a.stave': block('steps') })
		const all = await pullAll()
		const cancel = new CancellationTokenSource()
		const waiting = pullAll(idsOf(all), cancel.token)
		cancel.cancel()
		// Before its turn it is not worked on at all, after it the waiting ends with nothing new.
		const answer = await waiting.catch((refusal: { code: number }) => refusal.code)
		expect([{ items: [] }, LSPErrorCodes.RequestCancelled]).toContainEqual(answer)
	})

	it('are to be asked for again where another file has changed them', async () => {
		const { folder, editor, pull, pullAll } = await start({ 'block.stave': block('steps'), 'plan.stave': plan })
		const planUri = await editor.open(folder, 'plan.stave')
		const blockUri = await editor.open(folder, 'block.stave')
		await pullAll()
		expect(codes((await pull(planUri)).items)).not.toContain('unknown-name')
		const before = editor.refreshes.length
		await editor.change(blockUri, block('other'))
		await editor.until(() => editor.refreshes.length > before, 'the editor is told to ask again')
		expect(codes((await pull(planUri)).items)).toContain('unknown-name')
	})

	it('are told to an editor that can ask but wants to be told', async () => {
		const { folder, editor } = await start({ 'a.stave': block('steps', 'dedlift') }, pulls, { diagnostics: 'push' })
		const uri = await editor.open(folder, 'a.stave')
		await editor.until(() => editor.codesOf(uri).includes('unknown-name'), 'they are told')
	})
})

describe('tags', () => {
	it('show what nothing needs faint, and a spelling that is not ours struck through', async () => {
		const text = `breakdown mine "Mine"\n${block('steps').replace('3 x 5', '3x5')}`
		const { folder, editor, pull } = await start({ 'a.stave': text }, { textDocument: { diagnostic: {} } })
		const { items } = await pull(await editor.open(folder, 'a.stave'))
		const tagsOf = (code: string) => items?.find(one => one.code === code)?.tags
		expect([tagsOf('unused-definition'), tagsOf('old-spelling'), tagsOf('week-without-work')]).toEqual([[1], [2], undefined])
	})
})
