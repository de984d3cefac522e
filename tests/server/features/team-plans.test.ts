import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { CompletionList, Hover, Location, LocationLink, TextDocumentEdit } from 'vscode-languageserver/node'
import type { PlansAnswer } from '../../../language/reports/chosen-plan.ts'
import type { PreviewData } from '../../../language/reports/preview.ts'
import { Editor, makeFolder, uriOf } from '../support/editor.ts'

const files = {
	'people.stave': `lifter mara-lind "Mara Lind"
  best deadlift 160 kg on 2026-09-12

lifter per-holst "Per Holst"
  best deadlift 200 kg on 2026-09-12

lifter tom-aas "Tom Aas"

team first-platform "First platform"
  members mara-lind, per-holst
`,
	'block.stave': `block pull "Pull"
  weeks 2
  session heavy-pull "Heavy pull" on monday
    main deadlift 4 x 5 at 70%
`,
	'plan.stave': `plan winter "Winter" for first-platform
  start 2026-10-05
  run pull
    for per-holst
      swap deadlift for romanian-deadlift 3 x 8 at 50% in week 2
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

describe('in the plan of a team', () => {
	it('the name of the team leads to the team', async () => {
		const found = await editor.request<LocationLink[]>('textDocument/definition', at('plan.stave', 'first-platform', 2))
		expect(found.map(link => [link.targetUri, link.targetRange.start.line])).toEqual([[uriOf(folder, 'people.stave'), 8]])
	})

	it('a member is found and renamed in the lines that hold for that member', async () => {
		const where = at('plan.stave', 'per-holst', 2)
		const places = await editor.request<Location[]>('textDocument/references', {
			...where,
			context: { includeDeclaration: true },
		})
		expect(places.map(place => `${place.uri.split('/').at(-1)} ${place.range.start.line}`)).toEqual([
			'people.stave 3',
			'people.stave 9',
			'plan.stave 3',
		])
		const renamed = await editor.request<{ documentChanges: TextDocumentEdit[] }>('textDocument/rename', {
			...where,
			newName: 'per-h',
		})
		expect(renamed.documentChanges.flatMap(change => change.edits).length).toBe(3)
	})

	it('the team is renamed where the plan names it', async () => {
		const where = at('people.stave', 'first-platform', 2)
		const renamed = await editor.request<{ documentChanges: TextDocumentEdit[] }>('textDocument/rename', {
			...where,
			newName: 'seniors',
		})
		expect(renamed.documentChanges.map(change => change.textDocument.uri.split('/').at(-1))).toEqual([
			'people.stave',
			'plan.stave',
		])
	})

	it('members are offered after `for`, lifters and teams after the plan’s own', async () => {
		const offered = async (where: unknown) =>
			(await editor.request<CompletionList>('textDocument/completion', where)).items.map(item => item.label)
		const members = await offered(at('plan.stave', 'per-holst'))
		expect(members).toEqual(expect.arrayContaining(['mara-lind', 'per-holst']))
		expect(members).not.toContain('tom-aas')
		expect(await offered(at('plan.stave', 'first-platform'))).toEqual(expect.arrayContaining(['tom-aas', 'first-platform']))
	})

	it('a load shows its way for the members, and for the one whose line it is', async () => {
		const textOf = async (where: unknown) =>
			((await editor.request<Hover>('textDocument/hover', where)).contents as { value: string }).value.replaceAll('\\', '')
		const ofAll = await textOf(at('block.stave', '70%', 1))
		expect(ofAll).toContain('winter/mara-lind')
		expect(ofAll).toContain('70% of 200 kg = 140 kg')
		const ofOne = await textOf(at('plan.stave', '50%', 1))
		expect(ofOne).toContain('winter/per-holst')
		expect(ofOne).toContain('50% of 200 kg = 100 kg')
		expect(ofOne).not.toContain('mara-lind')
		expect(await textOf(at('plan.stave', 'first-platform', 2))).toContain('Mara Lind')
	})

	it('the preview has a plan for each member', async () => {
		const data = await editor.request<PreviewData>('barstave/preview', { uri: uriOf(folder, 'plan.stave') })
		const { plans } = await editor.request<PlansAnswer>('barstave/plans', { uri: uriOf(folder, 'plan.stave') })
		expect(plans.map(plan => plan.name)).toEqual(['winter/mara-lind', 'winter/per-holst'])
		expect(data.chosen?.name).toBe('winter/mara-lind')
		const asked = await editor.request<PreviewData>('barstave/preview', {
			uri: uriOf(folder, 'plan.stave'),
			held: { kind: 'plan', name: 'winter/per-holst' },
		})
		expect(asked.chosen?.name).toBe('winter/per-holst')
		expect(asked.picture?.kind).toBe('plan')
	})
})
