import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { TextDocument, type TextEdit } from 'vscode-languageserver-textdocument'
import { textsBelow } from '../../support/texts.ts'
import { Editor, makeFolder, uriOf } from '../support/editor.ts'

let editor: Editor
let uri: string
beforeAll(async () => {
	const folder = await makeFolder({})
	uri = uriOf(folder, 'a.stave')
	editor = await Editor.start([folder])
	await editor.openText(uri, '')
})
afterAll(() => editor.stop())

/** The edits after Enter has made the line with the cursor. */
async function enterAt(text: string, line: number): Promise<TextEdit[]> {
	await editor.change(uri, text)
	return editor.request('textDocument/onTypeFormatting', {
		textDocument: { uri },
		position: { line, character: 0 },
		ch: '\n',
		options: { tabSize: 2, insertSpaces: true },
	})
}

const applied = (text: string, edits: TextEdit[]) => TextDocument.applyEdits(TextDocument.create(uri, 'barstave', 1, text), edits)

it('lays the finished line out', async () => {
	const text = 'block b "B"\n  weeks 2\n\n\n  session a on monday\n  main   deadlift 4x5 at 70 %  // 😀\n    \n'
	const edits = await enterAt(text, 6)
	expect(applied(text, edits)).toBe(text.replace('  main   deadlift 4x5 at 70 %  //', '    main deadlift 4 x 5 at 70% //'))
})

it('leaves a line alone that does not read, or that goes on above', async () => {
	const faulty = 'block b "B"\n  session a on monday\n  main   deadlift 4 y 5\n\n'
	expect(await enterAt(faulty, 3)).toEqual([])
	const broken = 'block b "B"\n  session a on monday\n    main deadlift\n  4x5\n\n'
	expect(applied(broken, await enterAt(broken, 4))).not.toContain('main deadlift 4')
})

describe('wherever Enter is pressed in the texts of ours', () => {
	const texts = Object.entries(textsBelow('examples/club'))
	it.each(texts)('%s: no other line is touched', async (_, given) => {
		// Crooked, so that there is something to do on every line.
		const text = given.replace(/^ +/gm, ' ').replace(/(\d) x /g, '$1x')
		let changed = 0
		for (const [index] of text.split('\n').entries()) {
			if (index === 0) continue
			const edits = await enterAt(text, index)
			changed += edits.length
			for (const edit of edits) {
				expect([edit.range.start.line, edit.range.end.line]).toEqual([index - 1, index - 1])
				expect(edit.newText).not.toMatch(/[\r\n]/)
			}
		}
		if (/^ /m.test(text)) expect(changed).toBeGreaterThan(0)
	})
})
