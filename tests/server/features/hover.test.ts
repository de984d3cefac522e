import { afterAll, beforeAll, expect, it } from 'vitest'
import type { Hover } from 'vscode-languageserver/node'
import { uriOf } from '../support/editor.ts'
import { openSmallClub } from '../support/small-club.ts'

let club: Awaited<ReturnType<typeof openSmallClub>>
beforeAll(async () => {
	club = await openSmallClub()
})
afterAll(() => club.editor.stop())

const hoverText = async (where: unknown) =>
	((await club.editor.request<Hover | null>('textDocument/hover', where))?.contents as { value: string })?.value

it('says what a built-in movement is, with its source', async () => {
	const text = await hoverText(club.at('block.stave', 'plank', 1))
	expect(text).toContain('Plank')
	expect(text).toMatch(/Trains: stability/)
	expect(text).toMatch(/Source: common practice/)
})

it('shows the way of a load: reference, percent, exact load, discs', async () => {
	const text = await hoverText(club.at('block.stave', '70%', 1))
	expect(text).toContain('Mara Lind')
	for (const part of ['160 kg', '112', '2026']) expect(text).toContain(part)
	expect(text!.replaceAll('\\', '')).toContain('112.5 kg')
})

it('shows the way of a load that a plan adds', async () => {
	const text = (await hoverText(club.at('plan.stave', '50%', 1)))!.replaceAll('\\', '')
	expect(text).toContain('The plan adds this to the block.')
	expect(text).toContain('50% of 160 kg = 80 kg')
})

it('says what a milestone waits for, and on which days the loads of several days differ', async () => {
	const uri = uriOf(club.folder, 'novice.stave')
	const text = [
		'block first-steps "First steps"',
		'  weeks 1',
		'  session squat-day on monday, thursday',
		'    main back-squat 3 x 5 at 40 kg',
		'      each session add 2.5 kg',
		'    accessory plank 3 x 30 s',
		'      once 3 x 45 s reached move to weighted-plank 3 x 30 s',
		'plan novice for mara-lind',
		'  start 2026-10-05',
		'  run first-steps',
	].join('\n')
	await club.editor.openText(uri, text)
	const loads = (await hoverText(club.editor.at(uri, 3, 25)))!.replaceAll('\\', '')
	expect(loads).toContain('_Week 1 (monday)_')
	expect(loads).toMatch(/_Week 1 \(thursday\)_\s+Each session add 2.5 kg: once by this session./)
	const milestone = (await hoverText(club.editor.at(uri, 6, 10)))!.replaceAll('\\', '')
	expect(milestone).toContain('once 3 x 45 s are reached: move to Weighted plank, 3 x 30 s')
	expect(await hoverText(club.editor.at(uri, 6, 42))).toMatch(/Weighted plank/)
	await club.editor.close(uri)
})

it('says what a rule wants, with a link to its page', async () => {
	const text = await hoverText(club.at('plan.stave', 'missing-stability-work', 3))
	expect(text).toContain('barstave-library:/rules/missing-stability-work.md')
})

it('escapes what people write', async () => {
	const uri = uriOf(club.folder, 'odd.stave')
	await club.editor.openText(uri, 'movement odd "<script>alert(1)</script> [x](command:y)"\n')
	const text = await hoverText(club.editor.at(uri, 0, 11))
	expect(text).not.toContain('<script>')
	expect(text).not.toMatch(/(?<!\\)\[x(?<!\\)\]\(/)
	await club.editor.close(uri)
})

it('says what a session is, where it is given and where a plan names it', async () => {
	for (const where of [club.at('block.stave', 'heavy-pull', 2), club.at('plan.stave', 'heavy-pull', 2)]) {
		const text = (await hoverText(where))!.replaceAll('\\', '')
		expect(text).toContain('**Heavy pull** (session of Rebuild)')
		expect(text).toContain('main Deadlift, accessory Plank')
	}
})

it.each([
	['block.stave', 'weeks 2', 1, 'How many weeks'],
	['block.stave', 'weeks 2', 6, 'How many weeks'],
	['block.stave', 'targets', 2, 'The lifts it is for'],
	['block.stave', 'monday', 2, 'The day of a session'],
	['people.stave', 'collars', 2, 'The collars'],
	['people.stave', '80%', 1, 'How a lift fails'],
	['plan.stave', 'start', 1, 'The start'],
	['plan.stave', '2026-10-05', 3, 'The start'],
] as const)('says in %s at %j what the line is and how it is written', async (name, words, after, what) => {
	expect(await hoverText(club.at(name, words, after))).toMatch(new RegExp(`^${what}, as in: \`.+\`\n\n.+\n\n\\[Read more\\]`))
})

it('says nothing in a comment or a title, nor between words', async () => {
	expect(await hoverText(club.editor.at(uriOf(club.folder, 'people.stave'), 0, 4))).toBeUndefined()
	expect(await hoverText(club.at('block.stave', '"Rebuild"', 3))).toBeUndefined()
})
