import { afterEach, describe, expect, it } from 'vitest'
import { copyOfExample, Editor, makeFolder, uriOf } from '../support/editor.ts'

let editor: Editor | undefined

afterEach(async () => {
	await editor?.stop()
	editor = undefined
})

const block = (movement: string) => `block first-steps "First steps"
  weeks 2
  session pull on monday
    main ${movement} 3 x 5 at 100 kg
`

describe('problems', () => {
	it('come with their code, the link to its page and the place', async () => {
		const folder = await makeFolder({ 'a.stave': block('dedlift') })
		editor = await Editor.start([folder])
		const uri = await editor.open(folder, 'a.stave')
		await editor.until(() => editor!.codesOf(uri).includes('unknown-name'), 'the unknown movement is reported')
		const problem = editor.problemsOf(uri).find(one => one.code === 'unknown-name')!
		expect(problem.range).toEqual({ start: { line: 3, character: 9 }, end: { line: 3, character: 16 } })
		expect(problem.message).toContain('deadlift')
		expect(problem.codeDescription?.href).toBe('barstave-library:/rules/unknown-name.md')
	})

	it('follow what is typed, with the version that they are about', async () => {
		const folder = await makeFolder({ 'a.stave': block('deadlift') })
		editor = await Editor.start([folder])
		const uri = await editor.open(folder, 'a.stave')
		await editor.settled()
		const broken = await editor.change(uri, block('dedlift'))
		await editor.until(() => editor!.codesOf(uri).includes('unknown-name'), 'the fault shows')
		expect(editor.published.findLast(one => one.uri === uri)?.version).toBe(broken)
		await editor.change(uri, block('deadlift'))
		await editor.until(() => editor!.codesOf(uri).length === 0, 'the fault is gone')
	})

	it('reach plans in other files when a block changes', async () => {
		const folder = await makeFolder({
			'block.stave': block('deadlift'),
			'plan.stave': 'lifter ann "Ann"\nplan p for ann\n  start 2026-10-05\n  run first-steps\n',
		})
		editor = await Editor.start([folder])
		const uri = await editor.open(folder, 'block.stave')
		const plan = uriOf(folder, 'plan.stave')
		await editor.settled()
		expect(editor.codesOf(plan)).toEqual([])
		await editor.change(uri, block('deadlift').replace('first-steps', 'other-steps'))
		await editor.until(() => editor!.codesOf(plan).includes('unknown-name'), 'the plan misses its block')
	})

	it('are published for open files and files with problems alone', async () => {
		const folder = await copyOfExample('club')
		editor = await Editor.start([folder])
		const uri = await editor.open(folder, 'plans/mara-autumn.stave')
		await editor.until(() => editor!.published.some(one => one.uri === uri), 'the open file is published')
		await editor.settled()
		const idle = editor.published.filter(one => one.uri !== uri && one.diagnostics.length === 0)
		expect(idle).toEqual([])
	})
})

describe('the open file', () => {
	it('is checked before the others of its folder', async () => {
		const others = Array.from({ length: 30 }, (_, number) => [
			`a${number}.stave`,
			block('dedlift').replace('first-steps', `b${number}`),
		])
		const folder = await makeFolder({ ...Object.fromEntries(others), 'z.stave': block('dedlift') })
		editor = await Editor.start([folder])
		const uri = await editor.open(folder, 'z.stave')
		await editor.settled()
		const order = editor.published
			.filter(one => one.diagnostics.some(problem => problem.code === 'unknown-name'))
			.map(one => one.uri)
		expect(order).toHaveLength(31)
		expect(order[0]).toBe(uri)
	})
})

describe('today', () => {
	it.each([
		{ today: '2026-10-20', missed: 1 },
		{ today: '2026-12-24', missed: 0 },
	])('is what the editor says: $today', async ({ today, missed }) => {
		const folder = await copyOfExample('faults/missed-work')
		editor = await Editor.start([folder], {}, today)
		await editor.settled()
		const codes = editor.codesOf(uriOf(folder, 'lena.stave'))
		expect(codes.filter(code => code === 'missed-work')).toHaveLength(missed)
	})
})
