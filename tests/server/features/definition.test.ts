import { afterAll, beforeAll, expect, it } from 'vitest'
import type { LocationLink } from 'vscode-languageserver/node'
import { uriOf } from '../support/editor.ts'
import { openSmallClub } from '../support/small-club.ts'

let club: Awaited<ReturnType<typeof openSmallClub>>
beforeAll(async () => {
	club = await openSmallClub()
})
afterAll(() => club.editor.stop())

it('goes to another file, in UTF-16 positions after wide characters', async () => {
	const [link] = await club.editor.request<LocationLink[]>(
		'textDocument/definition',
		club.at('people.stave', 'trains at north-hall', 12),
	)
	expect(link!.targetUri).toBe(uriOf(club.folder, 'people.stave'))
	expect(link!.targetSelectionRange).toEqual({ start: { line: 1, character: 4 }, end: { line: 1, character: 14 } })
})

it('goes into the built-in library, whose text can be read', async () => {
	const [link] = await club.editor.request<LocationLink[]>('textDocument/definition', club.at('block.stave', 'plank', 1))
	expect(link!.targetUri).toMatch(/^barstave-library:\//)
	const text = await club.editor.request<string>('barstave/libraryText', { uri: link!.targetUri })
	const { line, character } = link!.targetSelectionRange.start
	expect(text.split('\n')[line]!.slice(character)).toMatch(/^plank\b/)
})
