import { afterAll, beforeAll, expect, it } from 'vitest'
import type { DocumentLink } from 'vscode-languageserver/node'
import { Editor, makeFolder, uriOf } from '../support/editor.ts'

const text = `block pull "Pull"
  weeks 1
  source "😀 https://example.org/a?b=1&c=2, and (http://example.org/d). No ftp://example.org"
  allow frequency-cap because "see https://example.org/not-a-note"
  session a on monday
    main deadlift 3 x 5 at 70%
      note "\\"漢\\" https://example.org/e."
rules house
  day-clash off
  no-such-rule off
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

it('lead from rules to their pages and from addresses to what they name', async () => {
	const links = await editor.request<DocumentLink[]>('textDocument/documentLink', { textDocument: { uri } })
	const lines = text.split('\n')
	const shown = links.map(({ range, target }) => [
		lines[range.start.line]!.slice(range.start.character, range.end.character),
		target,
	])
	expect(shown).toEqual([
		['frequency-cap', 'barstave-library:/rules/frequency-cap.md'],
		['https://example.org/a?b=1&c=2', 'https://example.org/a?b=1&c=2'],
		['http://example.org/d', 'http://example.org/d'],
		['https://example.org/e', 'https://example.org/e'],
		['day-clash', 'barstave-library:/rules/day-clash.md'],
	])
	for (const [, target] of shown.filter(([, one]) => one!.startsWith('barstave-library')))
		expect(await editor.request<string>('barstave/libraryText', { uri: target })).not.toContain('Nothing built in')
})
