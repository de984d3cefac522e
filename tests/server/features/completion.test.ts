import { AstUtils, GrammarAST } from 'langium'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type CompletionItem, type CompletionList, InsertTextFormat } from 'vscode-languageserver/node'
import { definitionKinds } from '../../../language/model/definitions.ts'
import { createBarstaveServices } from '../../../language/parser/services.ts'
import { library } from '../../../language/workspace/library.ts'
import { TextReader } from '../../../language/workspace/text-file.ts'
import { isKnown } from '../../../server/completion/names.ts'
import { definitionSnippets, lineSnippets } from '../../../server/completion/snippets.ts'
import { Editor, makeFolder, uriOf } from '../support/editor.ts'

const files = {
	'people.stave': `gym hall "Hall"
  bar barbell 20 kg
  plates 20 kg x 2
lifter ann "Ann Berg"
  trains at hall
  best deadlift 100 kg on 2026-09-01
  avoid overhead-press because "shoulder"
  available monday, thursday, friday
lifter bo "Bo Lund"
`,
	'plan.stave': 'plan ann-autumn for ann\n  start 2026-10-05\n  run pull\n',
}

/** The bar is where something is completed. */
const block = (line: string) => `block pull "Pull 😀"
  weeks 5
  deload week 5 with 60% of sets at 90% of load
  session heavy on monday
    main deadlift 4 x 5 at 70%
  session light on thursday
    accessory romanian-deadlift
      week 1: 3 x 8 at 50%
      week 3: skip
${line}`

let editor: Editor
let folder: string
beforeAll(async () => {
	folder = await makeFolder(files)
	editor = await Editor.start([folder])
	await editor.openText(uriOf(folder, 'block.stave'), block(''))
	opened.set(editor, new Set([uriOf(folder, 'block.stave')]))
	await editor.settled()
})
afterAll(() => editor.stop())

const opened = new Map<Editor, Set<string>>()

async function listAt(marked: string, name = 'block.stave', by = editor): Promise<CompletionList> {
	const uri = uriOf(folder, name)
	const text = marked.replace('|', '')
	const isOpen = opened.get(by)?.has(uri)
	opened.set(by, (opened.get(by) ?? new Set()).add(uri))
	await (isOpen ? by.change(uri, text) : by.openText(uri, text))
	const lines = marked.slice(0, marked.indexOf('|')).split('\n')
	return by.request('textDocument/completion', by.at(uri, lines.length - 1, lines.at(-1)!.length))
}
const itemsAt = async (marked: string, name?: string) => (await listAt(marked, name)).items
const labelsAt = async (marked: string, name?: string) => (await itemsAt(marked, name)).map(one => one.label)
const found = (items: readonly CompletionItem[], label: string) => items.find(one => one.label === label)!

describe('a place', () => {
	it.each<[string, string]>([
		['lifter a "A"\n  available mon', 'monday'],
		['lifter a "A"\n  fails deadlift with ', 'back-rounding'],
		['plan p for ', 'ann'],
		['limits l for ', 'ann'],
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
		['block b "B"\n  session a\n    main plank 3 x 30 s each ', 'side'],
		['block b "B"\n  session a\n    main deadlift 3 x 5 rpe at ', 'most'],
		['limits l\n  session at ', 'most'],
		['movement m "M"\n  at ', 'most'],
		['block b "B"\n  session a\n    main plank 3 x 30 s\n      once 3 x 45 s reached move to ', 'weighted-plank'],
		['block b "B"\n  session a\n    main plank 3 x 30 s\n      each week add 0.5 ', 'rpe'],
	])('has what may stand there: %j offers %s', async (text, wanted) => {
		expect(await labelsAt(`${text}|`, 'typing.stave')).toContain(wanted)
	})

	it('has nothing else', async () => {
		const movements = await labelsAt(block('    accessory |'))
		for (const other of ['back-rounding', 'ann', 'pull']) expect(movements).not.toContain(other)
		const clauses = await labelsAt(block('    main deadlift 4 x 5 at 70% |'))
		expect(clauses).toEqual(expect.arrayContaining(['tempo', 'rest', 'accessory', 'session', 'week', 'each side', 'plan']))
		expect(clauses).not.toContain('plates')
	})

	it('for a name is known wherever the grammar has one', () => {
		const { Grammar } = createBarstaveServices()
		const places = Grammar.rules.filter(GrammarAST.isParserRule).flatMap(rule =>
			AstUtils.streamAllContents(rule)
				.filter(GrammarAST.isAssignment)
				.filter(
					({ terminal }) =>
						GrammarAST.isCrossReference(terminal) || (GrammarAST.isRuleCall(terminal) && terminal.rule.$refText === 'ID'),
				)
				.map(({ feature }) => [rule.name, feature] as const)
				.toArray(),
		)
		expect(places.length).toBeGreaterThan(40)
		// What a definition or a session is called is the coach's own.
		expect(places.filter(([rule, property]) => property !== 'name' && !isKnown(rule, property))).toEqual([])
	})

	it('inside a text or a comment has nothing', async () => {
		expect(await labelsAt('block b "my pl|"\n', 'typing.stave')).toEqual([])
		expect(await labelsAt('// pl|\n', 'typing.stave')).toEqual([])
	})
})

describe('movements', () => {
	it('stand first where the gym has what they need and the gates are passed, else last with the reason', async () => {
		const items = await itemsAt(block('    accessory |'))
		const order = items.map(one => one.label)
		const reason = (label: string) => found(items, label).labelDetails!.description
		expect(reason('plank')).toBe('Plank')
		expect(reason('lat-pulldown')).toContain('Hall has no')
		expect(reason('overhead-press')).toBe('Ann Berg avoids it')
		expect(reason('weighted-plank')).toBe('first needs Plank held 45 s')
		for (const late of ['lat-pulldown', 'overhead-press', 'weighted-plank'])
			expect(order.indexOf(late), late).toBeGreaterThan(order.indexOf('plank'))
		expect(order.indexOf('lat-pulldown')).toBeGreaterThan(order.indexOf('strict-bent-row'))
	})

	it('stand last where they are no work of the role', async () => {
		const items = await itemsAt(block('    main |'))
		expect(found(items, 'plank').labelDetails!.description).toMatch(/^no main work/)
		expect(items.map(one => one.label).indexOf('plank')).toBeGreaterThan(items.map(one => one.label).indexOf('back-squat'))
	})

	it('are those of the block where a plan changes it', async () => {
		await listAt(block('|'))
		const plan = 'plan ann-autumn for ann\n  start 2026-10-05\n  run pull\n    drop |'
		expect((await labelsAt(plan, 'plan.stave')).slice(0, 2).sort()).toEqual(['deadlift', 'romanian-deadlift'])
		await editor.change(uriOf(folder, 'plan.stave'), files['plan.stave'])
	})
})

describe('weeks', () => {
	it('are those that the item has not written and that do not fill themselves', async () => {
		expect(await labelsAt(block('      week |'))).toEqual(['2', '4'])
		expect(await labelsAt(block('      week 2: 3 x 8 at 55%\n      week |'))).toEqual(['4'])
	})

	it('come one by one and all that follow each other, up to the colon', async () => {
		const items = await itemsAt(block('    accessory plank\n      week |'))
		expect(items.map(one => one.label)).toEqual(['1', '2', '3', '4', '1-4'])
		expect(items.map(one => (one.textEdit as { newText: string }).newText)).toContain('1-4: ')
	})
})

describe('days', () => {
	it('stand first where no other session does and the lifter has them', async () => {
		const items = await itemsAt(block('  session third on |'))
		expect(items[0]!.label).toBe('friday')
		expect(found(items, 'monday').labelDetails!.description).toBe('heavy stands there')
		expect(found(items, 'tuesday').labelDetails!.description).toBe('Ann Berg is not available')
		const days = items.map(one => one.label).filter(label => /.day$/.test(label))
		expect(days).toHaveLength(7)
	})
})

describe('codes', () => {
	it('stand first in an exception where they are reported', async () => {
		const items = await itemsAt(block('    accessory plank 3 x 300 s\n      allow |'))
		const reported = items.filter(one => one.sortText!.startsWith('0')).map(one => one.label)
		expect(reported).toContain('hold-outside-range')
		expect(items.map(one => one.label)).not.toContain('pain-caution')
		expect(items[0]!.sortText).toMatch(/^0/)
	})
})

describe('snippets', () => {
	it('stand for all eleven kinds of definition', async () => {
		const items = await itemsAt('|', 'empty.stave')
		const snippets = items.filter(one => one.insertTextFormat === InsertTextFormat.Snippet)
		expect(snippets.map(one => one.filterText).sort()).toEqual([...definitionKinds].sort())
	})

	it('stand for a session and an item in a block, and nowhere else', async () => {
		const snippetsAt = async (marked: string, name?: string) =>
			(await itemsAt(marked, name)).filter(one => one.insertTextFormat === InsertTextFormat.Snippet).map(one => one.filterText)
		expect(await snippetsAt(block('    |'))).toEqual(expect.arrayContaining(['session', 'main', 'accessory', 'block']))
		const plan = 'plan p for ann\n  start 2026-10-05\n  run pull\n    add |'
		expect(await snippetsAt(plan, 'other.stave')).toEqual([])
	})

	it('are not given to an editor that takes none', async () => {
		const plain = await Editor.start([folder], { textDocument: { completion: {} } })
		const { items } = await listAt('|', 'empty.stave', plain)
		expect(items.map(one => one.label)).toEqual(expect.arrayContaining([...definitionKinds]))
		expect(items.some(one => one.insertTextFormat === InsertTextFormat.Snippet)).toBe(false)
		await plain.stop()
	})

	/** What stands there when every place is left as it is offered. */
	const filledIn = (text: string) => {
		const given = new Map<string, string>()
		return text
			.replace(/\$\{(\d+)(?::([^}]*)|\|([^,|]*)[^}]*\|)\}/g, (_, place: string, word?: string, first?: string) => {
				given.set(place, given.get(place) ?? word ?? first ?? '')
				return given.get(place)!
			})
			.replace('$0', '')
	}

	it.each(Object.entries({ ...definitionSnippets, ...lineSnippets }))('%s reads without a fault', (word, { text }) => {
		const lines = filledIn(text).trimEnd()
		const whole =
			word in definitionSnippets
				? lines
				: `block b "B"\n  weeks 2\n${word === 'session' ? '' : '  session s on monday\n'}${lines}`
		expect(whole).not.toMatch(/[$|{}]/)
		const { parts } = new TextReader().read('file:///a.stave', whole)
		expect(parts.flatMap(part => part.faults)).toEqual([])
		// Left as it is, it takes the place of nothing.
		for (const { definition } of parts)
			if (definition) expect(library().find(definition.kind, definition.name.text)).toBeUndefined()
	})
})

describe('lines that could not stay', () => {
	const misfits = async (text: string) =>
		Object.fromEntries(
			(await itemsAt(`${text}|`, 'lines.stave')).flatMap(item =>
				item.sortText!.startsWith('6') ? [[item.label, item.labelDetails!.description!]] : [],
			),
		)

	it.each<[string, string[]]>([
		['block b "B"\n  weeks 2\n  targets deadlift\n  ', ['targets', 'weeks']],
		['movement m "M"\n  pattern hinge\n  hold 30-60 s\n  at most 2 sessions a week\n  ', ['hold', 'pattern']],
		['gym g "G"\n  bar barbell 20 kg\n  plates 20 kg x 2\n  ', ['plates']],
		['lifter l "L"\n  trains at hall\n  best deadlift 100 kg on 2026-09-01\n  bodyweight 60 kg\n  ', ['bodyweight']],
		['limits l\n  volume rises at most 10% a week\n  gates no older than 10 weeks\n  ', ['gates', 'volume']],
		['team t\n  members ann\n  ', ['members']],
		['plan p for ann\n  start 2026-10-05\n  ', ['start']],
	])('for they are stated once, and are, come last: %j', async (text, wanted) => {
		const found = await misfits(text)
		expect(Object.keys(found).sort()).toEqual(wanted)
		for (const reason of Object.values(found)) expect(reason).toBe('is stated already')
	})

	it('for they stand above the first session come last with the reason', async () => {
		const text = block('').trimEnd()
		const found = await misfits(`${text}\n  `)
		expect(Object.keys(found).sort()).toEqual(['answers', 'deload', 'percents', 'requires', 'targets', 'turn', 'weeks'])
		expect(new Set(Object.values(found))).toEqual(
			new Set(['This line is about the whole block, so it stands above its first session.']),
		)
	})
})

describe('the list', () => {
	it('has what the typed letters fit, and says when it is cut', async () => {
		const more = Array.from({ length: 60 }, (_, number) => `movement extra-${number} "Extra"\n`).join('')
		await listAt(`${more}|`, 'more.stave')
		const all = await listAt(block('    accessory |'))
		expect([all.items.length, all.isIncomplete]).toEqual([100, true])
		const some = await listAt(block('    accessory row|'))
		expect(some.isIncomplete).toBe(false)
		expect(some.items.map(one => one.label)).toContain('strict-bent-row')
		for (const { label } of some.items) expect(label).toMatch(/r.*o.*w/)
	})

	it('explains a name when the editor asks for it', async () => {
		const item = found(await itemsAt(block('    accessory pla|')), 'plank')
		expect(item.documentation).toBeUndefined()
		const resolved = await editor.request<CompletionItem>('completionItem/resolve', item)
		expect((resolved.documentation as { value: string }).value).toContain('Trains: stability')
	})

	it('puts the word in place of what is typed, behind wide letters', async () => {
		const item = found(await itemsAt(block('    /* 😀😀 漢 é */ accessory pla|')), 'plank')
		const end = '    /* 😀😀 漢 é */ accessory pla'.length
		expect(item.textEdit).toMatchObject({ range: { start: { line: 9, character: end - 3 }, end: { line: 9, character: end } } })
	})
})
