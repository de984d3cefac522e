import { expect, it } from 'vitest'
import type { DocumentSymbol } from 'vscode-languageserver/node'
import { Editor, makeFolder, uriOf } from '../support/editor.ts'
import { manyKinds } from '../support/many-kinds.ts'

it('nests sessions and items, steps, runs with the lines for single members, and days', async () => {
	const folder = await makeFolder({})
	const editor = await Editor.start([folder])
	const uri = uriOf(folder, 'a.stave')
	await editor.openText(uri, manyKinds)
	const found = await editor.request<DocumentSymbol[]>('textDocument/documentSymbol', { textDocument: { uri } })
	const outline = (symbols: readonly DocumentSymbol[], depth = 0): string[] =>
		symbols.flatMap(({ name, detail, children = [] }) => [
			`${'  '.repeat(depth)}${name}${detail ? ` (${detail})` : ''}`,
			...outline(children, depth + 1),
		])
	expect(outline(found)).toEqual([
		'Way (progression)',
		'  plank',
		'  weighted-plank',
		'Band (team)',
		'Week (block)',
		'  First 😀 (monday evening, thursday)',
		'    deadlift (main)',
		'    plank (accessory)',
		'  b',
		'winter (plan)',
		'  ann (for)',
		'  week (run)',
		'    ann (for)',
		'    bo (for)',
		'  week (2026-11-02)',
		'    bo (for)',
		'ann (log)',
		'  2026-10-05 (a)',
		'  2026-10-08 (missed a)',
	])
	// What is selected is the name, in the lines that it is about.
	const lines = manyKinds.split('\n')
	const selected = (symbols: readonly DocumentSymbol[]): string[] =>
		symbols.flatMap(({ selectionRange: { start, end }, children = [] }) => [
			start.line === end.line ? lines[start.line]!.slice(start.character, end.character) : '',
			...selected(children),
		])
	expect(selected(found.slice(2, 4))).toEqual([
		'week',
		'a',
		'deadlift',
		'plank',
		'b',
		'winter',
		'ann',
		'week',
		'ann',
		'bo',
		'week',
		'bo',
	])
	await editor.stop()
})
