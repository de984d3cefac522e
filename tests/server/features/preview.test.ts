import { afterAll, beforeAll, expect, it } from 'vitest'
import type { Hover } from 'vscode-languageserver/node'
import type { PreviewData } from '../../../language/reports/preview.ts'
import { uriOf } from '../support/editor.ts'
import { files, openSmallClub } from '../support/small-club.ts'

let club: Awaited<ReturnType<typeof openSmallClub>>
beforeAll(async () => {
	club = await openSmallClub()
})
afterAll(() => club.editor.stop())

const hoverText = async (where: unknown) =>
	((await club.editor.request<Hover | null>('textDocument/hover', where))?.contents as { value: string })?.value

it('gets the nearest plan with its loads, its needs and the places of its sets', async () => {
	const data = await club.editor.request<PreviewData>('barstave/preview', { uri: uriOf(club.folder, 'block.stave') })
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
	const hovered = (await hoverText(club.at('block.stave', '70%', 1)))!.replaceAll('\\', '')
	for (const line of way) expect(hovered).toContain(line)
	const index = data.picture!.written!.ofSets[0]![0]![0]!
	expect(data.picture!.written!.places[index]!.range.start).toEqual({ line: 5, character: 18 })
})

it('stays with the plan on show where a file belongs to several', async () => {
	const uri = uriOf(club.folder, 'second.stave')
	await club.editor.openText(uri, 'plan later-autumn for mara-lind\n  start 2027-01-04\n  run rebuild\n')
	const question = { uri: uriOf(club.folder, 'block.stave') }
	for (const shown of ['later-autumn', 'mara-autumn'].map(name => ({ kind: 'plan', name })))
		expect((await club.editor.request<PreviewData>('barstave/preview', { ...question, shown })).chosen).toEqual(shown)
	await club.editor.close(uri)
})

it('keeps what it can and says what cannot be read', async () => {
	const uri = uriOf(club.folder, 'block.stave')
	await club.editor.change(uri, files['block.stave'].replace('main deadlift', 'main @@@ deadlift'))
	const data = await club.editor.request<PreviewData>('barstave/preview', { held: { kind: 'plan', name: 'mara-autumn' } })
	expect(data.stale).toMatchObject({ blocks: ['rebuild'] })
	expect(data.picture).not.toBeNull()
	await club.editor.change(uri, files['block.stave'])
})
