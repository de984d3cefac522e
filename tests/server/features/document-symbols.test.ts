import { afterAll, beforeAll, expect, it } from 'vitest'
import type { DocumentSymbol } from 'vscode-languageserver/node'
import { uriOf } from '../support/editor.ts'
import { openSmallClub } from '../support/small-club.ts'

let club: Awaited<ReturnType<typeof openSmallClub>>
beforeAll(async () => {
	club = await openSmallClub()
})
afterAll(() => club.editor.stop())

it('nests sessions and items', async () => {
	const [block] = await club.editor.request<DocumentSymbol[]>('textDocument/documentSymbol', {
		textDocument: { uri: uriOf(club.folder, 'block.stave') },
	})
	expect(block!.name).toBe('Rebuild')
	expect(block!.children![0]!.children!.map(one => one.name)).toEqual(['deadlift', 'plank'])
})
