import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { PlanPick, PlansAnswer } from '../../../language/reports/chosen-plan.ts'
import type { PreviewData } from '../../../language/reports/preview.ts'
import { Editor, makeFolder, uriOf } from '../support/editor.ts'

const files = {
	'people.stave': `lifter ann-berg "Ann Berg"
  best deadlift 100 kg on 2026-09-01
lifter bo-lund "Bo Lund"
  best deadlift 200 kg on 2026-09-01
`,
	'block.stave': 'block pull "Pull"\n  weeks 1\n  session a on monday\n    main deadlift 3 x 5 at 70%\n',
	'other.stave': 'block press "Press"\n  weeks 1\n  session a on monday\n    main bench-press 3 x 5 at 40 kg\n',
	'plans.stave': `plan ann-autumn "Ann, autumn" for ann-berg
  start 2026-10-05
  run pull
plan bo-autumn for bo-lund
  start 2026-10-05
  run pull
plan bo-winter for bo-lund
  start 2027-01-04
  run press
`,
}

let editor: Editor
let folder: string

beforeEach(async () => {
	folder = await makeFolder(files)
	editor = await Editor.start([folder])
})
afterEach(() => editor.stop())

const plansIn = (name: string) => editor.request<PlansAnswer>('barstave/plans', { uri: uriOf(folder, name) })
const choose = (picked: PlanPick['picked'], name = 'block.stave') =>
	editor.request<PlansAnswer>('barstave/choosePlan', { uri: uriOf(folder, name), picked })

describe('the chosen plan', () => {
	it('is listed with its lifter, and is the first that runs the block while nothing is picked', async () => {
		const { plans, picked, shown } = await plansIn('block.stave')
		expect(plans).toEqual([
			{ name: 'ann-autumn', title: 'Ann, autumn', lifter: 'ann-berg', lifterTitle: 'Ann Berg' },
			{ name: 'bo-autumn', title: 'bo-autumn', lifter: 'bo-lund', lifterTitle: 'Bo Lund' },
			{ name: 'bo-winter', title: 'bo-winter', lifter: 'bo-lund', lifterTitle: 'Bo Lund' },
		])
		expect([picked, shown]).toEqual([null, 'ann-autumn'])
		expect((await plansIn('other.stave')).shown).toBe('bo-winter')
	})

	it('is picked as a plan, or as a lifter with that plan of theirs that fits the file', async () => {
		expect((await choose({ plan: 'bo-autumn' })).shown).toBe('bo-autumn')
		expect((await choose({ lifter: 'bo-lund' })).shown).toBe('bo-autumn')
		expect((await plansIn('other.stave')).shown).toBe('bo-winter')
		expect((await choose({ plan: 'ann-autumn' })).shown).toBe('ann-autumn')
		// Ann's plan has nothing to do with this block.
		expect(await plansIn('other.stave')).toMatchObject({ picked: { plan: 'ann-autumn' }, shown: 'bo-winter' })
		expect((await choose(null)).picked).toBeNull()
	})

	it('is the one that the preview shows', async () => {
		const shown = async () =>
			(await editor.request<PreviewData>('barstave/preview', { uri: uriOf(folder, 'block.stave') })).chosen?.name
		expect(await shown()).toBe('ann-autumn')
		await choose({ lifter: 'bo-lund' })
		expect(await shown()).toBe('bo-autumn')
	})

	it('is the one whose loads stand in a hover', async () => {
		const where = editor.at(uriOf(folder, 'block.stave'), 3, 27)
		const hovered = async () =>
			(await editor.request<{ contents: { value: string } }>('textDocument/hover', where)).contents.value
		await editor.open(folder, 'block.stave')
		await plansIn('block.stave')
		expect(await hovered()).toMatch(/Ann Berg[\s\S]*Bo Lund/)
		await choose({ lifter: 'bo-lund' })
		expect(await hovered()).toMatch(/^\*\*Bo Lund/)
		expect(await hovered()).not.toContain('Ann Berg')
	})

	it('is told to have changed with the choice and with the plans, and with nothing else', async () => {
		await plansIn('block.stave')
		const before = editor.plansChanged
		await choose({ plan: 'bo-autumn' })
		expect(editor.plansChanged).toBe(before + 1)
		const uri = await editor.open(folder, 'block.stave')
		await editor.change(uri, files['block.stave'].replace('70%', '75%'))
		await editor.settled()
		expect(editor.plansChanged).toBe(before + 1)
		const plans = await editor.open(folder, 'plans.stave')
		await editor.change(plans, files['plans.stave'].replace('Ann, autumn', 'Ann, fall'))
		await editor.settled()
		expect(editor.plansChanged).toBe(before + 2)
	})

	it("may be a member's of a team's plan, by its own name or by the lifter's", async () => {
		const text =
			'team firsts "Firsts" members ann-berg, bo-lund\nplan winter "Winter" for firsts\n  start 2027-01-04\n  run pull\n    add accessory deadlift 1 x 5 at 60% to a\n'
		const team = await makeFolder({
			'people.stave': files['people.stave'],
			'block.stave': files['block.stave'],
			'team.stave': text,
		})
		const own = await Editor.start([team])
		const uri = uriOf(team, 'block.stave')
		const loadIn = async (name: string) => {
			const range = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } }
			const params = { textDocument: { uri: uriOf(team, name) }, range }
			const hints = await own.request<{ label: string }[]>('textDocument/inlayHint', params)
			return hints.map(hint => hint.label).filter(label => label.endsWith(' kg'))
		}
		await own.openText(uri, files['block.stave'])
		await own.openText(uriOf(team, 'team.stave'), text)
		const listed = await own.request<PlansAnswer>('barstave/plans', { uri })
		expect(listed.plans.map(plan => [plan.name, plan.lifter])).toEqual([
			['winter/ann-berg', 'ann-berg'],
			['winter/bo-lund', 'bo-lund'],
		])
		expect([await loadIn('block.stave'), await loadIn('team.stave')]).toEqual([['70 kg'], ['60 kg']])
		for (const picked of [{ plan: 'winter/bo-lund' }, { lifter: 'bo-lund' }]) {
			await own.request('barstave/choosePlan', { uri, picked: null })
			expect((await own.request<PlansAnswer>('barstave/choosePlan', { uri, picked })).shown).toBe('winter/bo-lund')
			// In the team's own text too, behind what it adds for all.
			expect([await loadIn('block.stave'), await loadIn('team.stave')]).toEqual([['140 kg'], ['120 kg']])
		}
		await own.stop()
	})

	it('belongs to its folder', async () => {
		const second = await makeFolder(files)
		await editor.connection.sendNotification('workspace/didChangeWorkspaceFolders', {
			event: { added: [{ uri: uriOf(second), name: 'second' }], removed: [] },
		})
		await choose({ plan: 'bo-autumn' })
		const other = await editor.request<PlansAnswer>('barstave/plans', { uri: uriOf(second, 'block.stave') })
		expect([other.picked, other.shown]).toEqual([null, 'ann-autumn'])
	})
})
