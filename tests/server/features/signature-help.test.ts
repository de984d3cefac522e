import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { SignatureHelp } from 'vscode-languageserver/node'
import { exampleLines } from '../../../language/parser/examples.ts'
import { Editor, makeFolder, uriOf } from '../support/editor.ts'

let editor: Editor
let uri: string
beforeAll(async () => {
	const folder = await makeFolder({})
	uri = uriOf(folder, 'a.stave')
	const signatureHelp = { signatureInformation: { noActiveParameterSupport: true } }
	editor = await Editor.start([folder], { textDocument: { signatureHelp } })
	await editor.openText(uri, '')
})
afterAll(() => editor.stop())

/** The help at the bar in a line of a block or a log; what stands after it is there too. */
async function helpAt(marked: string, before = 'block b "😀"\n  session s on monday\n    '): Promise<SignatureHelp | null> {
	const text = before + marked.replace('|', '')
	await editor.change(uri, text)
	const lines = (before + marked.slice(0, marked.indexOf('|'))).split('\n')
	return editor.request('textDocument/signatureHelp', editor.at(uri, lines.length - 1, lines.at(-1)!.length))
}

/** The part that the cursor is in; `undefined` in no prescription, `null` between two parts. */
async function partAt(marked: string, before?: string): Promise<string | null | undefined> {
	const help = await helpAt(marked, before)
	if (!help) return undefined
	if (help.activeParameter === null || help.activeParameter === undefined) return null
	return help.signatures[0]!.parameters![help.activeParameter]!.label as string
}

describe('inside a prescription', () => {
	it.each([
		['main deadlift |', 'sets'],
		['main deadlift\n      week 2:|', 'sets'],
		['main deadlift\n      week 2: |', 'sets'],
		['main deadlift 4|', 'sets'],
		['main deadlift 3-4|', 'sets'],
		['main deadlift 4 x |', 'reps'],
		['main deadlift 4 x 5|', 'reps'],
		['main deadlift 4 x 5 |', null],
		['main deadlift 4 x 5 at |', 'at …'],
		['main deadlift 4 x 5 at 7|0% rest 2 min', 'at …'],
		['main deadlift 4 x 5 at 70% |', null],
		['main deadlift 4 x 5 at 92% of top |', 'at …'],
		['main deadlift 4 x 5 at 70% rest |', 'rest …'],
		['main deadlift 4 x 5 at 70% rest 2| min', 'rest …'],
		['main deadlift 4 x 5 at 70% re|', null],
		['main deadlift 4 x 5 tempo |', 'tempo …'],
		['main deadlift 4 x 5 rpe |', 'rpe …'],
		['main deadlift 4 x 5 rpe at most |', 'rpe …'],
		['main deadlift ramp 4 x 4 from 60% to |', 'from …'],
		['main deadlift 4 x 5 rpe at |', 'rpe …'],
		['main deadlift 4 x 5 each |', 'each side …'],
		['main deadlift 4 x 5 at 70%,|', 'sets'],
		['main deadlift 4 x 5 at 70%, |', 'sets'],
		['main deadlift 4 x 5 at 70%,\n      |', 'sets'],
		['main deadlift 4 x 5 at 70%, 3 x |', 'reps'],
		['main deadlift\n      week 2: 4 x 5 at |', 'at …'],
		['main deadlift 3 x 12\n      once |', 'sets'],
		['main deadlift 3 x 12\n      once 3 x |', 'reps'],
	])('%s is in %s', async (marked, part) => {
		expect(await partAt(marked)).toBe(part)
	})

	it.each([
		['did deadlift 4 x 5 at |', 'at …'],
		['did deadlift 4 x 5 missed |', 'missed …'],
		['did deadlift 8, |', 'reps'],
		['did sled-push 20 m in |', 'in …'],
		['did sled-push 20 m in 14.2 s|', 'in …'],
	])('of a log, %s is in %s', async (marked, part) => {
		expect(await partAt(marked, 'log ann\n  on 2026-10-05\n    ')).toBe(part)
	})

	it('says how the part is written, as messages and completion do', async () => {
		const help = (await helpAt('main deadlift 4 x 5 at 70% tempo |'))!
		const parameter = help.signatures[0]!.parameters![help.activeParameter!]!
		expect(parameter.documentation).toBe(`A tempo, as in: ${exampleLines.TempoClause!.example}`)
		for (const { label } of help.signatures[0]!.parameters!) expect(help.signatures[0]!.label).toContain(label)
		expect(help.signatures[0]!.label).toMatch(/^sets x reps .*\[rest …\]/)
	})
})

describe('elsewhere', () => {
	it.each([
		'main |',
		'main dead|',
		'main deadlift|',
		'main deadlift 3 x 5\n      |',
		'main deadlift 3 x 5\n      each |',
		'main deadlift\n      week 2|',
		'note "4 x |"',
		'// 4 x |',
		'each week add |',
		'session a on |',
	])('%s says nothing', async marked => {
		expect(await partAt(marked)).toBeUndefined()
	})
})
