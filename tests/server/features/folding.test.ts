import { afterAll, beforeAll, expect, it } from 'vitest'
import { uriOf } from '../support/editor.ts'
import { openSmallClub } from '../support/small-club.ts'

let club: Awaited<ReturnType<typeof openSmallClub>>
beforeAll(async () => {
	club = await openSmallClub()
})
afterAll(() => club.editor.stop())

it('folds definitions, sessions and items that take several lines', async () => {
	const found = await club.editor.request<{ startLine: number; endLine: number }[]>('textDocument/foldingRange', {
		textDocument: { uri: uriOf(club.folder, 'block.stave') },
	})
	expect(found).toEqual([
		{ startLine: 0, endLine: 6 },
		{ startLine: 4, endLine: 6 },
	])
})
