import { readFile, rm } from 'node:fs/promises'
import path from 'node:path'
import { afterAll, beforeAll, expect, it } from 'vitest'
import type { Counters } from '../../server/features/counters.ts'
import { fileName, makeWorkspace } from '../benchmarks/workspaces.ts'
import { Editor, uriOf } from './support/editor.ts'

const files = 30

let editor: Editor
let folder: string
let text: string
beforeAll(async () => {
	folder = await makeWorkspace(files)
	text = await readFile(path.join(folder, fileName(0)), 'utf8')
	editor = await Editor.start([folder])
	await editor.openText(uriOf(folder, fileName(0)), text)
	await counters()
})
afterAll(async () => {
	await editor.stop()
	await rm(folder, { recursive: true })
})

const counters = () => editor.request<Counters>('barstave/counters', {})

/** What one key that makes a fault, or mends it, costs; `ask` is what the editor shows beside the text. */
async function workOfKey(after: string, ask: (uri: string) => Promise<unknown>): Promise<Omit<Counters, 'kept'>> {
	const uri = uriOf(folder, fileName(0))
	const before = await counters()
	await editor.change(uri, after)
	await ask(uri)
	const now = await counters()
	return {
		read: now.read - before.read,
		linked: now.linked - before.linked,
		checked: now.checked - before.checked,
		published: now.published - before.published,
	}
}

const everything = { start: { line: 0, character: 0 }, end: { line: 999, character: 0 } }
const all = async (uri: string) => {
	const textDocument = { uri }
	for (const method of ['inlayHint', 'semanticTokens/full', 'codeLens', 'documentLink', 'foldingRange', 'documentSymbol'])
		await editor.request(`textDocument/${method}`, { textDocument, range: everything })
}

it(`a key reads one definition of ${files} files, gives one name a new meaning, checks two, tells of one file`, async () => {
	const faulty = text.replace(/main [a-z-]+/, 'main nothing-like-this')
	const one = { read: 1, linked: 1, checked: 2, published: 1 }
	expect(await workOfKey(faulty, async () => {})).toEqual(one)
	expect(await workOfKey(text, async () => {})).toEqual(one)
	// What stands beside the text is worked out from the same results.
	expect(await workOfKey(faulty, all)).toEqual(one)
	expect(await workOfKey(text, all)).toEqual(one)
})
