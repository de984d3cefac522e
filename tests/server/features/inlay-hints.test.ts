import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { InlayHint, TextEdit } from 'vscode-languageserver/node'
import { Editor, makeFolder, uriOf } from '../support/editor.ts'

const files = {
	'people.stave': `gym hall "Hall"
  bar barbell 20 kg
  plates 25 kg, 20 kg, 15 kg, 10 kg, 5 kg, 2.5 kg, 1.25 kg
lifter ann "Ann Berg"
  trains at hall
  bodyweight 60 kg
  best deadlift 100 kg on 2026-09-01
  best back-squat 80 kg on 2026-09-01
lifter bo "Bo Lund"
  best deadlift 440 lb on 2026-09-01
`,
	'block.stave': `block pull "Pull 😀"
  weeks 4
  deload week 4 with 50% of sets at 80% of load
  session a "😀😀" on monday
    main deadlift
      week 1:    4 x 5 at 70% /* 😀 */, 1 x 3 at 92% of top set
      week 2-3:  ramp 3 x 3 from 60% to 80%
    accessory romanian-deadlift 3 x 8 at 50% rest 2 min
      each week add 2.5 kg
    accessory plank 3 x 30 s
  session b on thursday
    main back-squat 2 x 5 at 70-75% rpe at most 8
    main bench-press 2 x 5 at 70%
`,
	'plan.stave': `plan ann-autumn for ann
  start 2026-10-05
  run pull
    add accessory deadlift 1 x 5 at 60% to b
plan bo-autumn for bo
  start 2026-10-05
  run pull
`,
}

let editor: Editor
let folder: string
beforeEach(async () => {
	folder = await makeFolder(files)
	editor = await Editor.start([folder])
	for (const name of Object.keys(files)) await editor.open(folder, name)
	await editor.settled()
})
afterEach(() => editor.stop())

type Shown = [string, string]
const all = { start: { line: 0, character: 0 }, end: { line: 1000, character: 0 } }
const ask = (name: keyof typeof files, range = all) =>
	editor.request<InlayHint[]>('textDocument/inlayHint', { textDocument: { uri: uriOf(folder, name) }, range })
/** What stands before each hint on its line, the last word or two, and the hint. */
const hints = async (name: keyof typeof files, range = all): Promise<Shown[]> =>
	(await ask(name, range)).map(({ position, label }) => {
		const before = files[name].split('\n')[position.line]!.slice(0, position.character)
		return [/(\S+ ?\S+)$/.exec(before)![1]!, label as string]
	})
const choose = (picked: unknown) => editor.request('barstave/choosePlan', { uri: uriOf(folder, 'block.stave'), picked })
const loads = (shown: Shown[]) => shown.filter(([, label]) => !label.includes('hard sets'))

describe('loads', () => {
	it('stand behind each percent, by the weeks that it is for', async () => {
		expect(loads(await hints('block.stave'))).toEqual([
			['at 70%', '70 kg'],
			['top set', '65 kg'],
			['to 80%', '60-80 kg'],
			['at 50%', '50 → 55 kg'],
			['at 70-75%', '55-60 kg'],
		])
	})

	it('are those of the chosen plan, in its unit', async () => {
		await choose({ lifter: 'bo' })
		// Without a gym in pounds, as Bo's best is; without a best of the squat nothing can be said.
		const shown = loads(await hints('block.stave'))
		expect(shown.map(([what]) => what)).toEqual(['at 70%', 'top set', 'to 80%', 'at 50%'])
		expect(shown[0]![1]).toBe('310 lb')
	})

	it('say in words whose they are, week by week', async () => {
		const hint = (await ask('block.stave')).find(one => one.label === '50 → 55 kg')!
		expect((hint.tooltip as { value: string }).value.replaceAll('\\', '').split('  \n')).toEqual([
			'**Ann Berg (ann-autumn)**',
			'Week 1: 50 kg',
			'Week 2: 52.5 kg',
			'Week 3: 55 kg',
		])
	})

	it('stand in a plan behind what it adds', async () => {
		expect(await hints('plan.stave')).toEqual([['at 60%', '60 kg']])
	})

	it('are given for the part of the text that is asked for', async () => {
		const range = { start: { line: 6, character: 0 }, end: { line: 6, character: 80 } }
		expect(await hints('block.stave', range)).toEqual([['to 80%', '60-80 kg']])
	})
})

describe("a week's totals", () => {
	it('stand at each session: hard sets and minutes, of all that the week has', async () => {
		const totals = (await ask('block.stave')).filter(one => (one.label as string).includes('hard sets'))
		expect(totals.map(one => one.position)).toEqual([
			{ line: 3, character: 28 },
			{ line: 10, character: 23 },
		])
		const [first, second] = totals.map(
			one => (one.label as string).match(/^(\S+) of (\S+) hard sets, (\S+) of (\S+) min a week$/)!,
		)
		// 5 + 3 + 3 sets in the first week, 3 + 3 + 3 in the others; on the other day 2 + 2, and the one that the plan adds.
		expect([first![1], first![2], second![1], second![2]]).toEqual(['9-11', '14-16', '5', '14-16'])
		const [session, week] = [first![3]!, first![4]!].map(text => Number(text.split('-')[0]))
		expect(session).toBeGreaterThan(0)
		expect(week).toBeGreaterThan(session!)
		expect((totals[0]!.tooltip as { value: string }).value).toContain('Week 4 \\(deload\\): ')
	})

	it('are there without a plan too', async () => {
		await editor.change(uriOf(folder, 'plan.stave'), '')
		const shown = await hints('block.stave')
		expect(loads(shown)).toEqual([])
		expect(shown.map(([, label]) => label.split(' hard')[0])).toEqual(['9-11 of 13-15', '4 of 13-15'])
	})
})

describe('hints', () => {
	it('can be turned off one by one, and the editor is told to ask again', async () => {
		await ask('block.stave')
		editor.settings = { hints: { loads: false } }
		await editor.connection.sendNotification('workspace/didChangeConfiguration', { settings: null })
		await editor.until(() => editor.refreshes.includes('inlayHint'), 'the editor is told to ask again')
		expect(loads(await hints('block.stave'))).toEqual([])
		expect(await hints('block.stave')).toHaveLength(2)
		editor.settings = { hints: { totals: false } }
		const before = editor.refreshes.length
		await editor.connection.sendNotification('workspace/didChangeConfiguration', { settings: null })
		await editor.until(() => editor.refreshes.length > before, 'the editor is told to ask again')
		expect((await hints('block.stave')).map(([, label]) => label.includes('hard sets'))).not.toContain(true)
		expect(loads(await hints('block.stave'))).not.toEqual([])
	})

	it('are asked for again when another file changes them, and not when none does', async () => {
		await ask('block.stave')
		const people = uriOf(folder, 'people.stave')
		await editor.change(people, `${files['people.stave']}// a comment\n`)
		await new Promise(resolve => setTimeout(resolve, 400))
		expect(editor.refreshes).not.toContain('inlayHint')
		await editor.change(people, files['people.stave'].replace('deadlift 100 kg', 'deadlift 120 kg'))
		await editor.until(() => editor.refreshes.includes('inlayHint'), 'the editor is told to ask again')
		expect((await hints('block.stave'))[0]).toEqual(['at 70%', '85 kg'])
	})

	it('do not shift what the formatter brings under each other', async () => {
		const format = () =>
			editor.request<TextEdit[]>('textDocument/formatting', {
				textDocument: { uri: uriOf(folder, 'block.stave') },
				options: { tabSize: 2, insertSpaces: true },
			})
		expect((await hints('block.stave')).length).toBeGreaterThan(0)
		const shown = await format()
		editor.settings = { hints: { loads: false, totals: false } }
		await editor.connection.sendNotification('workspace/didChangeConfiguration', { settings: null })
		await editor.until(() => editor.refreshes.includes('inlayHint'), 'they are off')
		expect(await hints('block.stave')).toEqual([])
		expect(shown.length).toBeGreaterThan(0)
		expect(await format()).toEqual(shown)
		editor.settings = {}
		const before = editor.refreshes.length
		await editor.connection.sendNotification('workspace/didChangeConfiguration', { settings: null })
		await editor.until(() => editor.refreshes.length > before, 'they are on')
		// Nor do they bring text with them, or stand before a word that is brought under another.
		for (const hint of await ask('block.stave')) {
			expect(hint.textEdits).toBeUndefined()
			expect(files['block.stave'].split('\n')[hint.position.line]!.slice(0, hint.position.character)).not.toMatch(/:\s*$/)
		}
	})
})
