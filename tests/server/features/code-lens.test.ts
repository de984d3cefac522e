import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { CodeLens } from 'vscode-languageserver/node'
import { Editor, makeFolder, uriOf } from '../support/editor.ts'

const files = {
	'block.stave': `block pull "Pull 😀"
  weeks 3
  requires deadlift 5 reps at 60 kg
  session a on monday
    main romanian-deadlift 3 x 8 at 50%
    accessory weighted-plank 3 x 20 s at 10 kg
    accessory held-row 3 x 8 at 40 kg
    accessory goblet-squat 3 x 8 at 20 kg
block free "Free"
  weeks 1
  session a on monday
    accessory plank 3 x 60 s
movement held-row "Held row"
  requires plank held 20 s
`,
	'plan.stave': `lifter ann "Ann Berg"
lifter bo "Bo Lund"
plan ann-autumn for ann
  start 2026-10-05
  run pull
plan bo-autumn for bo
  start 2026-10-05
  run pull
`,
}

let editor: Editor
let folder: string
beforeEach(async () => {
	folder = await makeFolder(files)
})
afterEach(() => editor.stop())

async function lenses(options = {}): Promise<CodeLens[]> {
	editor = await Editor.start([folder], {}, undefined, options)
	const uri = await editor.open(folder, 'block.stave')
	await editor.settled()
	return editor.request('textDocument/codeLens', { textDocument: { uri } })
}
const titles = (found: CodeLens[], line: number) =>
	found.filter(one => one.range.start.line === line).map(one => one.command!.title)

describe('above a block', () => {
	it('stands what it asks of a lifter and who runs it', async () => {
		const found = await lenses()
		expect(titles(found, 0)).toEqual([
			'Asks for: first Deadlift 5 reps at 60 kg, Plank held 45 s, Plank held 20 s · a best of Deadlift · barbell, dumbbell',
			'Run by Ann Berg, Bo Lund',
		])
		expect(titles(found, 8)).toEqual(['Asks for nothing in particular', 'No plan runs it yet'])
	})

	it('stands no gate that the block leads up to before', async () => {
		await writeLater()
		expect(titles(await lenses(), 0)[0]).not.toContain('Plank held 20 s')
	})

	it('opens the sheets of those who run it, in an editor that has the command alone', async () => {
		const found = await lenses({ commands: ['barstave.openPreview'] })
		expect(found.filter(one => one.command!.command !== '').map(one => one.command)).toEqual([
			{ title: 'Open the sheet of Ann Berg', command: 'barstave.openPreview', arguments: ['ann-autumn'] },
			{ title: 'Open the sheet of Bo Lund', command: 'barstave.openPreview', arguments: ['bo-autumn'] },
		])
		await editor.stop()
		expect((await lenses()).every(one => one.command!.command === '')).toBe(true)
	})

	it('is asked for again when a plan comes, and can be turned off', async () => {
		await lenses()
		const plan = await editor.open(folder, 'plan.stave')
		await editor.change(plan, `${files['plan.stave']}plan more for ann\n  start 2027-01-04\n  run free\n`)
		await editor.until(() => editor.refreshes.includes('codeLens'), 'the editor is told to ask again')
		const ask = () => editor.request<CodeLens[]>('textDocument/codeLens', { textDocument: { uri: uriOf(folder, 'block.stave') } })
		expect(titles(await ask(), 8)).toContain('Run by Ann Berg')
		editor.settings = { lens: { blocks: false } }
		const before = editor.refreshes.length
		await editor.connection.sendNotification('workspace/didChangeConfiguration', { settings: null })
		await editor.until(() => editor.refreshes.length > before, 'the editor is told to ask again')
		expect(await ask()).toEqual([])
	})
})

/** The block holds the plank long enough in its first week, and needs it from the second. */
async function writeLater(): Promise<void> {
	const text = files['block.stave']
		.replace('  session a on monday\n', '  session a on monday\n    accessory plank 3 x 30 s\n')
		.replace('held-row 3 x 8 at 40 kg', 'held-row\n      week 2-3: 3 x 8 at 40 kg')
	folder = await makeFolder({ ...files, 'block.stave': text })
}
