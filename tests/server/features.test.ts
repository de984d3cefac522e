import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { CompletionList, DocumentSymbol, Hover, LocationLink, TextDocumentEdit } from 'vscode-languageserver/node'
import type { PreviewData } from '../../language/reports/preview.ts'
import { Editor, makeFolder, uriOf } from './support/editor.ts'

/** One small club in three files; every test asks about a place in them. */
const files = {
	'people.stave': `// 😀😀 漢 é
gym north-hall "North Hall 😀😀"
  bar barbell 20 kg
  plates 25 kg x 4, 20 kg x 2, 10 kg x 4, 5 kg x 4, 2.5 kg x 4, 1.25 kg x 4
  collars 2.5 kg

lifter mara-lind "Mara Lind"
  trains at north-hall
  best deadlift 160 kg on 2026-09-12
  fails deadlift with back-rounding above 80%
`,
	'block.stave': `block rebuild "Rebuild"
  weeks 2
  targets deadlift

  session heavy-pull "Heavy pull" on monday
    main deadlift 4 x 5 at 70%
    accessory plank 3 x 40 s
`,
	'plan.stave': `plan mara-autumn for mara-lind
  start 2026-10-05
  run rebuild
    allow missing-stability-work because "the plank comes later"
    add accessory romanian-deadlift 3 x 8 at 50% to heavy-pull
`,
}

let editor: Editor
let folder: string
const at = (name: keyof typeof files, text: string, after = 0) => {
	const offset = files[name].indexOf(text) + after
	const lines = files[name].slice(0, offset).split('\n')
	return editor.at(uriOf(folder, name), lines.length - 1, lines[lines.length - 1]!.length)
}

beforeAll(async () => {
	folder = await makeFolder(files)
	editor = await Editor.start([folder])
	for (const name of Object.keys(files)) await editor.open(folder, name)
	await editor.request('barstave/preview', {})
})

afterAll(() => editor.stop())

const hoverText = async (where: unknown) =>
	((await editor.request<Hover | null>('textDocument/hover', where))?.contents as { value: string })?.value

describe('hover', () => {
	it('says what a built-in movement is, with its source', async () => {
		const text = await hoverText(at('block.stave', 'plank', 1))
		expect(text).toContain('Plank')
		expect(text).toMatch(/Trains: stability/)
		expect(text).toMatch(/Source: common practice/)
	})

	it('shows the way of a load: reference, percent, exact load, discs', async () => {
		const text = await hoverText(at('block.stave', '70%', 1))
		expect(text).toContain('Mara Lind')
		for (const part of ['160 kg', '112', '2026']) expect(text).toContain(part)
		expect(text!.replaceAll('\\', '')).toContain('112.5 kg')
	})

	it('shows the way of a load that a plan adds', async () => {
		const text = (await hoverText(at('plan.stave', '50%', 1)))!.replaceAll('\\', '')
		expect(text).toContain('The plan adds this to the block.')
		expect(text).toContain('50% of 160 kg = 80 kg')
	})

	it('says what a milestone waits for, and on which days the loads of several days differ', async () => {
		const uri = uriOf(folder, 'novice.stave')
		const text = [
			'block first-steps "First steps"',
			'  weeks 1',
			'  session squat-day on monday, thursday',
			'    main back-squat 3 x 5 at 40 kg',
			'      each session add 2.5 kg',
			'    accessory plank 3 x 30 s',
			'      once 3 x 45 s reached move to weighted-plank 3 x 30 s',
			'plan novice for mara-lind',
			'  start 2026-10-05',
			'  run first-steps',
		].join('\n')
		await editor.openText(uri, text)
		const loads = (await hoverText(editor.at(uri, 3, 25)))!.replaceAll('\\', '')
		expect(loads).toContain('_Week 1 (monday)_')
		expect(loads).toMatch(/_Week 1 \(thursday\)_\s+Each session add 2.5 kg: once by this session./)
		const milestone = (await hoverText(editor.at(uri, 6, 10)))!.replaceAll('\\', '')
		expect(milestone).toContain('once 3 x 45 s are reached: move to Weighted plank, 3 x 30 s')
		expect(await hoverText(editor.at(uri, 6, 42))).toMatch(/Weighted plank/)
		await editor.close(uri)
	})

	it('says what a rule wants, with a link to its page', async () => {
		const text = await hoverText(at('plan.stave', 'missing-stability-work', 3))
		expect(text).toContain('barstave-library:/rules/missing-stability-work.md')
	})

	it('escapes what people write', async () => {
		const uri = uriOf(folder, 'odd.stave')
		await editor.openText(uri, 'movement odd "<script>alert(1)</script> [x](command:y)"\n')
		const text = await hoverText(editor.at(uri, 0, 11))
		expect(text).not.toContain('<script>')
		expect(text).not.toMatch(/(?<!\\)\[x(?<!\\)\]\(/)
		await editor.close(uri)
	})
})

describe('completion', () => {
	const labels = async (uri: string, line: number, character: number) =>
		(await editor.request<CompletionList>('textDocument/completion', editor.at(uri, line, character))).items.map(one => one.label)

	it('offers movements where a movement stands, and nothing that cannot stand there', async () => {
		const { textDocument, position } = at('block.stave', 'deadlift 4 x 5')
		const found = await labels(textDocument.uri, position.line, position.character)
		expect(found).toEqual(expect.arrayContaining(['deadlift', 'back-squat', 'plank']))
		expect(found).not.toContain('back-rounding')
		expect(found).not.toContain('mara-lind')
	})

	it('offers the words that may stand next', async () => {
		const uri = uriOf(folder, 'typing.stave')
		const text = 'block b "B"\n  weeks 2\n  session a on monday\n    main deadlift 4 x 5 at 70% '
		await editor.openText(uri, text)
		const found = await labels(uri, 3, text.split('\n')[3]!.length)
		expect(found).toEqual(expect.arrayContaining(['tempo', 'rest', 'accessory', 'session', 'week', 'each side', 'plan']))
		expect(found).not.toContain('bodyweight 68.4 kg')
		expect(found).not.toContain('plates')
		await editor.close(uri)
	})

	it('offers days, breakdowns, lifters and rules in their places', async () => {
		const uri = uriOf(folder, 'typing.stave')
		const cases: [string, string][] = [
			['lifter a "A"\n  available mon', 'monday'],
			['lifter a "A"\n  fails deadlift with ', 'back-rounding'],
			['plan p for ', 'mara-lind'],
			['limits l for ', 'mara-lind'],
			['lifter a "A"\n  uses light-barbell as ', 'barbell'],
			['block b "B"\n  session a\n    main deadlift 4 x 6 in ', 'clusters'],
			['block b "B"\n  session a\n    main deadlift 4 x 6 at 50% of ', 'bodyweight'],
			['movement m "M"\n  requires deadlift at 1.5 x ', 'bodyweight'],
			['movement m "M"\n  requires plank held 45 s x 3 in 2 ', 'sessions'],
			['rules house\n  ', 'frequency-cap'],
			['rules house\n  frequency-cap ', 'error'],
			['movement m "M"\n  muscles ', 'glutes'],
			['', 'block'],
			['block b "B"\n  session a on mon', 'monday'],
			['block b "B"\n  session a on monday ', 'evening'],
			['block b "B"\n  session a on monday, thu', 'thursday'],
			['block b "B"\n  turn a over ', 'tuesday'],
			['block b "B"\n  session a\n    main plank 3 x 30 s\n      each ', 'session'],
			['block b "B"\n  session a\n    main plank 3 x 30 s\n      once 3 x 45 s reached move to ', 'weighted-plank'],
			['block b "B"\n  session a\n    main plank 3 x 30 s\n      each week add 0.5 ', 'rpe'],
		]
		for (const [text, wanted] of cases) {
			await editor.openText(uri, text)
			const lines = text.split('\n')
			expect(await labels(uri, lines.length - 1, lines[lines.length - 1]!.length), text).toContain(wanted)
			await editor.close(uri)
		}
	})

	it('is silent inside texts and comments', async () => {
		const uri = uriOf(folder, 'typing.stave')
		const text = 'block b "my pl"\n// pl'
		await editor.openText(uri, text)
		expect(await labels(uri, 0, 14)).toEqual([])
		expect(await labels(uri, 1, 5)).toEqual([])
		await editor.close(uri)
	})
})

describe('definition', () => {
	it('goes to another file, in UTF-16 positions after wide characters', async () => {
		const [link] = await editor.request<LocationLink[]>('textDocument/definition', at('people.stave', 'trains at north-hall', 12))
		expect(link!.targetUri).toBe(uriOf(folder, 'people.stave'))
		expect(link!.targetSelectionRange).toEqual({ start: { line: 1, character: 4 }, end: { line: 1, character: 14 } })
	})

	it('goes into the built-in library, whose text can be read', async () => {
		const [link] = await editor.request<LocationLink[]>('textDocument/definition', at('block.stave', 'plank', 1))
		expect(link!.targetUri).toMatch(/^barstave-library:\//)
		const text = await editor.request<string>('barstave/libraryText', { uri: link!.targetUri })
		const { line, character } = link!.targetSelectionRange.start
		expect(text.split('\n')[line]!.slice(character)).toMatch(/^plank\b/)
	})
})

describe('references and rename', () => {
	it('find every place', async () => {
		const where = { ...at('people.stave', 'mara-lind', 2), context: { includeDeclaration: true } }
		const found = await editor.request<{ uri: string }[]>('textDocument/references', where)
		expect(found.map(one => one.uri).sort()).toEqual([uriOf(folder, 'people.stave'), uriOf(folder, 'plan.stave')])
	})

	it('change every place, with the versions of open files', async () => {
		const { documentChanges } = await editor.request<{ documentChanges: TextDocumentEdit[] }>('textDocument/rename', {
			...at('plan.stave', 'rebuild', 2),
			newName: 'hinge-rebuild',
		})
		expect(documentChanges.map(change => [change.textDocument.uri, change.textDocument.version]).sort()).toEqual([
			[uriOf(folder, 'block.stave'), 1],
			[uriOf(folder, 'plan.stave'), 1],
		])
		for (const change of documentChanges)
			expect(change.edits.map(edit => (edit as { newText: string }).newText)).toEqual(['hinge-rebuild'])
	})

	it.each([
		['Rebuild Two', /lower-case/],
		['x', /word of the language/],
		['block', /word of the language/],
	])('refuse the name %s', async (newName, why) => {
		await expect(editor.request('textDocument/rename', { ...at('plan.stave', 'rebuild', 2), newName })).rejects.toThrow(why)
	})

	it('refuse a name that is taken, and names of the library', async () => {
		const taken = { ...at('block.stave', 'plank', 1), newName: 'squat-hold' }
		await expect(editor.request('textDocument/rename', taken)).rejects.toThrow(/built in/)
		expect(await editor.request('textDocument/prepareRename', at('block.stave', 'plank', 1))).toBeNull()
	})
})

describe('outline, symbols, folding', () => {
	it('nests sessions and items', async () => {
		const [block] = await editor.request<DocumentSymbol[]>('textDocument/documentSymbol', {
			textDocument: { uri: uriOf(folder, 'block.stave') },
		})
		expect(block!.name).toBe('Rebuild')
		expect(block!.children![0]!.children!.map(one => one.name)).toEqual(['deadlift', 'plank'])
	})

	it('folds definitions, sessions and items that take several lines', async () => {
		const found = await editor.request<{ startLine: number; endLine: number }[]>('textDocument/foldingRange', {
			textDocument: { uri: uriOf(folder, 'block.stave') },
		})
		expect(found).toEqual([
			{ startLine: 0, endLine: 6 },
			{ startLine: 4, endLine: 6 },
		])
	})

	it('finds definitions by a part of their title', async () => {
		const found = await editor.request<{ name: string }[]>('workspace/symbol', { query: 'mara' })
		expect(found.map(one => one.name)).toContain('Mara Lind')
	})
})

describe('corrections', () => {
	it('mend a decimal comma', async () => {
		const uri = uriOf(folder, 'comma.stave')
		await editor.openText(uri, 'lifter b "B"\n  bodyweight 68,4 kg\n')
		const where = { start: { line: 1, character: 14 }, end: { line: 1, character: 14 } }
		const [action] = await editor.request<{ edit: { documentChanges: TextDocumentEdit[] } }[]>('textDocument/codeAction', {
			textDocument: { uri },
			range: where,
			context: { diagnostics: [] },
		})
		expect(action!.edit.documentChanges[0]!.edits).toEqual([
			{ range: { start: { line: 1, character: 13 }, end: { line: 1, character: 17 } }, newText: '68.4' },
		])
		await editor.close(uri)
	})
})

describe('the preview', () => {
	it('gets the nearest plan with its loads, its needs and the places of its sets', async () => {
		const data = await editor.request<PreviewData>('barstave/preview', { uri: uriOf(folder, 'block.stave') })
		expect(data.chosen).toEqual({ kind: 'plan', name: 'mara-autumn' })
		const set = data.picture!.sheet!.sessions[0]!.items[0]!.sets[0]!
		expect([set.exact, set.load, set.perSide]).toEqual(['112', '112.5', ['25', '20']])
		expect(data.picture!.needs[0]!.links.stability).toMatchObject({
			sets: '6',
			sessions: 2,
			answeringSets: '3',
			answeringSessions: 1,
		})
		const { texts, ofSessions } = data.picture!.ways!
		const way = texts[ofSessions[0]!.items[0]![0]!]!
		expect(way).toContain('70% of 160 kg = 112 kg.')
		// One explanation: the hover says the same, word by word.
		const hovered = (await hoverText(at('block.stave', '70%', 1)))!.replaceAll('\\', '')
		for (const line of way) expect(hovered).toContain(line)
		const index = data.picture!.written!.ofSets[0]![0]![0]!
		expect(data.picture!.written!.places[index]!.range.start).toEqual({ line: 5, character: 18 })
	})

	it('stays with the plan on show where a file belongs to several', async () => {
		const uri = uriOf(folder, 'second.stave')
		await editor.openText(uri, 'plan later-autumn for mara-lind\n  start 2027-01-04\n  run rebuild\n')
		const question = { uri: uriOf(folder, 'block.stave') }
		for (const shown of ['later-autumn', 'mara-autumn'].map(name => ({ kind: 'plan', name })))
			expect((await editor.request<PreviewData>('barstave/preview', { ...question, shown })).chosen).toEqual(shown)
		await editor.close(uri)
	})

	it('keeps what it can and says what cannot be read', async () => {
		const uri = uriOf(folder, 'block.stave')
		await editor.change(uri, files['block.stave'].replace('main deadlift', 'main @@@ deadlift'))
		const data = await editor.request<PreviewData>('barstave/preview', { held: { kind: 'plan', name: 'mara-autumn' } })
		expect(data.stale).toMatchObject({ blocks: ['rebuild'] })
		expect(data.picture).not.toBeNull()
		await editor.change(uri, files['block.stave'])
	})
})
