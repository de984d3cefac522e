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

it('says of each set what it asks for: of every step of a ramp, and of what has no load', async () => {
	const uri = uriOf(club.folder, 'ramp.stave')
	const text = [
		'block up "Up"',
		'  weeks 2',
		'  session pull on monday',
		'    main deadlift ramp 3 x 4 from 60% to 80%, 2 x 3 at 90% of top set',
		'    accessory side-plank 1 x 20 s, 1 x 20 s, 1 x 20 s',
		'    accessory plank 2-3 x 30 s rest 1 min',
		'      each week add 5 s',
		'plan steps for mara-lind',
		'  start 2026-10-05',
		'  run up',
	].join('\n')
	await club.editor.openText(uri, text)
	const at = async (line: number, words: string) =>
		(await hoverText(club.editor.at(uri, line, text.split('\n')[line]!.indexOf(words))))!.replaceAll('\\', '').split('  \n')
	const ramp = await at(3, 'ramp')
	const steps = [
		'Set 1: 4 reps at 60%',
		'60% of 160 kg = 96 kg',
		'Set 2: 4 reps at 70%',
		'112 kg',
		'Set 3: 4 reps at 80%',
		'128 kg',
	]
	for (const step of steps)
		expect(
			ramp.some(line => line.includes(step)),
			step,
		).toBe(true)
	expect(ramp.join()).not.toContain('top set')
	expect((await at(3, '2 x 3')).join()).toMatch(/Sets 4-5: 3 reps at 90% of top set rest 3 min/)
	// Three groups that ask for the same; the place is in the one between.
	const between = text.split('\n')[4]!.indexOf('x', text.split('\n')[4]!.indexOf(','))
	const same = (await hoverText(club.editor.at(uri, 4, between)))!.replaceAll('\\', '')
	expect(same).toMatch(/_Week 1, 2_\s+Sets 1-3: 20 s rest 1 min 30 s$/)
	const plank = (await at(5, '30 s')).join()
	expect(plank).toMatch(/_Week 1_,Sets 1-2: 30 s rest 1 min,Set 3: 30 s rest 1 min \(optional\)/)
	expect(plank).toMatch(/_Week 2_,Sets 1-2: 35 s rest 1 min,Each week add 5 s: once by this week\./)
	await club.editor.close(uri)
})

it('says of a best that is written as a set which max it points to', async () => {
	const uri = uriOf(club.folder, 'bests.stave')
	const text = [
		'lifter bea "Bea"',
		'  best deadlift 100 kg x 5 rpe 9 on 2026-09-01',
		'  best back-squat 90 kg on 2026-09-01',
		'  best pull-up 10 kg x 5 on 2026-09-01',
	].join('\n')
	await club.editor.openText(uri, text)
	const at = async (line: number, words: string) =>
		(await hoverText(club.editor.at(uri, line, text.split('\n')[line]!.indexOf(words))))!.replaceAll('\\', '')
	for (const words of ['100', 'kg', 'x 5', '9 on'])
		expect(await at(1, words)).toMatch(
			/Best of Deadlift: 100 kg x 5 with 1 in reserve .*\s+Estimated max: Epley: 100 kg × \(1 \+ 6\/30\) = 120 kg/,
		)
	expect(await at(1, 'deadlift')).toContain('Deadlift (movement)')
	// A max is none; and reps take the body with them.
	expect(await at(2, '90')).toMatch(/^A best, as in/)
	expect(await at(3, '10 kg')).toBe('Reps of Pull-up take the body with them, and Bea has no bodyweight written down.')
	await club.editor.close(uri)
})

it('says of a time in a log what it is', async () => {
	const uri = uriOf(club.folder, 'times.stave')
	const line = '    did sled-push 20 m in 14.2 s at 60 kg'
	await club.editor.openText(uri, `log mara-lind\n  on 2026-10-05\n${line}`)
	for (const words of ['in', '14.2']) {
		expect(await hoverText(club.editor.at(uri, 2, line.indexOf(` ${words}`) + 1))).toContain(
			'Behind a distance the time that it took',
		)
	}
	await club.editor.close(uri)
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
	expect(loads).toMatch(
		/_Week 1 \(thursday\)_\s+Sets 1-3: 5 reps at 40 kg \+ 2.5 kg rest 3 min\s+Each session add 2.5 kg: once by this session./,
	)
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
	// The line around a number says more than how numbers are written.
	['people.stave', '2.5 kg\n', 1, 'The collars'],
	['people.stave', '25 kg x 4', 1, 'The discs'],
	['people.stave', '160', 1, 'A best'],
] as const)('says in %s at %j what the line is and how it is written', async (name, words, after, what) => {
	expect(await hoverText(club.at(name, words, after))).toMatch(new RegExp(`^${what}, as in: \`.+\`\n\n.+\n\n\\[Read more\\]`))
})

it('says nothing in a comment or a title, nor between words', async () => {
	expect(await hoverText(club.editor.at(uriOf(club.folder, 'people.stave'), 0, 4))).toBeUndefined()
	expect(await hoverText(club.at('block.stave', '"Rebuild"', 3))).toBeUndefined()
})
