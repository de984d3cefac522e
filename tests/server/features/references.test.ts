import { afterAll, beforeAll, expect, it } from 'vitest'
import { uriOf } from '../support/editor.ts'
import { openSmallClub } from '../support/small-club.ts'

let club: Awaited<ReturnType<typeof openSmallClub>>
beforeAll(async () => {
	club = await openSmallClub()
})
afterAll(() => club.editor.stop())

it('find every place', async () => {
	const where = { ...club.at('people.stave', 'mara-lind', 2), context: { includeDeclaration: true } }
	const found = await club.editor.request<{ uri: string }[]>('textDocument/references', where)
	expect(found.map(one => one.uri).sort()).toEqual([uriOf(club.folder, 'people.stave'), uriOf(club.folder, 'plan.stave')])
})
