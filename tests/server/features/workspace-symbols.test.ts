import { afterAll, beforeAll, expect, it } from 'vitest'
import { openSmallClub } from '../support/small-club.ts'

let club: Awaited<ReturnType<typeof openSmallClub>>
beforeAll(async () => {
	club = await openSmallClub()
})
afterAll(() => club.editor.stop())

it('finds definitions by a part of their title', async () => {
	const found = await club.editor.request<{ name: string }[]>('workspace/symbol', { query: 'mara' })
	expect(found.map(one => one.name)).toContain('Mara Lind')
})
