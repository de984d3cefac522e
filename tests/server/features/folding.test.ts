import { expect, it } from 'vitest'
import type { FoldingRange } from 'vscode-languageserver/node'
import { Editor, makeFolder, uriOf } from '../support/editor.ts'
import { manyKinds } from '../support/many-kinds.ts'

it.each(['\n', '\r\n'])('what takes several lines folds, from its first line to its last (%j)', async lineBreak => {
	const folder = await makeFolder({})
	const editor = await Editor.start([folder])
	const uri = uriOf(folder, 'a.stave')
	await editor.openText(uri, manyKinds.replaceAll('\n', lineBreak))
	const found = await editor.request<FoldingRange[]>('textDocument/foldingRange', { textDocument: { uri } })
	const lines = manyKinds.split('\n').map(line => line.trim())
	expect(found.map(({ startLine, endLine, kind }) => [lines[startLine], lines[endLine], kind])).toEqual([
		['progression way "Way"', 'step weighted-plank after plank held 45 s', undefined],
		['team band "Band"', 'members ann, bo', undefined],
		['block week "Week"', 'session b', undefined],
		['session a "First 😀" on monday evening, thursday', 'accessory plank 3 x 30 s', undefined],
		['main deadlift', 'week 1: 3 x 5 at 70%', undefined],
		['plan winter for band', 'days monday', undefined],
		['run week', 'swap plank for side-plank', undefined],
		['for ann', 'drop plank', undefined],
		['for bo', 'swap plank for side-plank', undefined],
		['run week from 2026-11-02', 'days monday', undefined],
		['for bo', 'days monday', undefined],
		['for ann', 'start 2026-10-12', undefined],
		['log ann', 'on 2026-10-08 missed a because "work"', undefined],
		['on 2026-10-05 session a', 'did deadlift 3 x 5 at 70 kg', undefined],
		['/* 😀😀 漢 é', 'of two lines */', 'comment'],
	])
	await editor.stop()
})
