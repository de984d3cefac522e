import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { Location, LocationLink, Range, TextDocumentEdit, WorkspaceEdit } from 'vscode-languageserver/node'
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
	await editor.settled()
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

	it('of a lifter or a team is none that either has: a plan is for one of them', async () => {
		await start()
		const uri = uriOf(folder, 'band.stave')
		await editor.openText(uri, 'team band "Band"\n  members ann\nmovement odd "Odd"\n')
		await expect(rename('plan.stave', 0, 8, 'band')).rejects.toThrow('A team is already called "band".')
		const of = (line: number, newName: string) => editor.request('textDocument/rename', { ...editor.at(uri, line, 10), newName })
		await expect(editor.request('textDocument/rename', { ...editor.at(uri, 0, 6), newName: 'ann' })).rejects.toThrow(
			'A lifter is already called "ann".',
		)
		// What two kinds have that nothing could take for each other.
		expect(await of(2, 'band')).toBeTruthy()
		// The words win over a movement of that name.
		await expect(of(2, 'sign-off')).rejects.toThrow(/in a gate/)
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

/** A name of each kind, in every place of the language that can hold it. */
const everywhere = `movement odd-lift "Odd lift"
  pattern other
  percent of odd-lift at 80%
  requires odd-lift held 30 s
breakdown odd-fail "Odd fail"
  weak link drive
  answered by odd-lift, plank
progression odd-way "Odd way"
  step odd-lift
  step plank after odd-lift held 30 s
gym odd-hall "Odd hall"
  bar barbell 20 kg
lifter odd-one "Odd one"
  trains at odd-hall
  trains at odd-hall from 2026-10-01
  best odd-lift 50 kg on 2026-09-01
  base odd-lift 90%
  fails odd-lift with odd-fail above 80%
  keep odd-lift to 80%
  passed odd-lift 5 reps at 40 kg on 2026-09-01
  avoid odd-lift because "odd-lift is not renamed in a text" // nor odd-lift in a comment
team odd-band "Odd band"
  members odd-one
  trains at odd-hall
limits odd-limits for odd-band
  session at most 90 min
limits odd-own for odd-one
  session at most 80 min
block odd-block "Odd block"
  weeks 2
  targets odd-lift
  answers odd-fail
  requires odd-lift sign-off
  turn odd-day, odd-third over tuesday, thursday
  session odd-day
    main odd-lift 3 x 5 at 50 kg
      once 3 x 6 reached move to odd-lift 3 x 5
  session odd-third
    accessory plank 3 x 30 s
  session odd-evening "Evening" on monday evening
    main odd-lift 3 x 5 at 50 kg
plan odd-plan for odd-band
  start 2027-01-04
  run odd-block 2 times
    swap odd-lift for plank 3 x 30 s in week 2
    swap plank for odd-lift
    drop odd-lift
    scale odd-lift 90%
    add main odd-lift 3 x 5 at 40 kg to odd-evening
    move odd-evening to tuesday
    for odd-one
      move odd-evening to wednesday
  move odd-evening from 2027-01-04 to 2027-01-05
  for odd-one
    days monday
plan odd-single for odd-one
  start 2027-03-01
  run odd-block
log odd-one
  on 2027-01-05 session odd-evening
    did odd-lift 3 x 5 at 40 kg broke with odd-fail
  on 2027-01-11 missed odd-evening because "work"
`

describe('a name of each kind', () => {
	const kinds = [
		...['odd-lift', 'odd-fail', 'odd-way', 'odd-hall', 'odd-one', 'odd-band', 'odd-limits'],
		...['odd-block', 'odd-day', 'odd-third', 'odd-evening', 'odd-plan'],
	]

	it('changes in all of its places, and is found from each', async () => {
		await start()
		const uri = uriOf(folder, 'everywhere.stave')
		await editor.openText(uri, everywhere)
		for (const name of kinds) await expectEverywhere(uri, name)
	})

	async function expectEverywhere(uri: string, name: string) {
		const document = TextDocument.create(uri, 'barstave', 1, everywhere)
		// In a text and in a comment it is no name.
		const words = everywhere.replace(/"[^"]*"|\/\/.*/g, text => ' '.repeat(text.length))
		const places = [...words.matchAll(new RegExp(`(?<![\\w-])${name}(?![\\w-])`, 'g'))].map(match => match.index)
		expect(places.length).toBeGreaterThan(0)
		const expected = places.map(at => ({ start: document.positionAt(at), end: document.positionAt(at + name.length) }))
		const inOrder = (ranges: readonly Range[]) =>
			ranges.toSorted((a, b) => document.offsetAt(a.start) - document.offsetAt(b.start))
		for (const { start: position } of expected) {
			const where = { textDocument: { uri }, position }
			const { documentChanges } = await editor.request<WorkspaceEdit>('textDocument/rename', { ...where, newName: 'even' })
			const [change, ...others] = documentChanges as TextDocumentEdit[]
			expect(others).toEqual([])
			expect(inOrder(change!.edits.map(edit => edit.range)), name).toEqual(expected)
			const found = await editor.request<Location[]>('textDocument/references', {
				...where,
				context: { includeDeclaration: true },
			})
			expect(inOrder(found.map(one => one.range))).toEqual(expected)
			const [link] = await editor.request<LocationLink[]>('textDocument/definition', where)
			const declaration = words.search(
				new RegExp(`(?<=(movement|breakdown|progression|gym|lifter|team|limits|block|session|plan) )${name}`),
			)
			expect(document.offsetAt(link!.targetSelectionRange.start)).toBe(declaration)
		}
	}
})
