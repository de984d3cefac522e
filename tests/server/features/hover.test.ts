import { afterAll, beforeAll, expect, it } from 'vitest'
import type { Hover } from 'vscode-languageserver/node'
import { TextDocument } from 'vscode-languageserver-textdocument'
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
	expect(same).toMatch(/_Week 1, 2_\s+Sets 1-3: 20 s rest 1 min 30 s\n\n---\n/)
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
	expect(await at(3, '10 kg')).toMatch(
		/^Reps of Pull-up take the body with them, and Bea has no bodyweight written down\.\n\n---\n\nA best, as in/,
	)
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

/** Where a line stands: the text before it. */
const above = {
	movement: 'movement box-pull "Box pull"\n  ',
	progression: 'progression way "Way"\n  step plank\n  ',
	limits: 'limits ',
	gym: 'gym back-room "Back room"\n  ',
	lifter: 'lifter bea "Bea"\n  ',
	block: 'block trial "Trial"\n  weeks 4\n  ',
	session: 'block trial "Trial"\n  weeks 4\n\n  session pull on monday\n    ',
	item: 'block trial "Trial"\n  weeks 4\n\n  session pull on monday\n    main deadlift 4 x 5 at 70%\n      ',
	plan: 'plan trial-autumn for mara-lind\n  ',
	team: 'plan trial-team for juniors\n  start 2026-10-05\n  ',
	run: 'plan trial-autumn for mara-lind\n  start 2026-10-05\n  run rebuild\n    ',
	log: 'log mara-lind\n  on 2026-10-05 session heavy-pull\n    ',
}

/** Each word between the marks, with what a coach reads there. */
const meanings: readonly (readonly [kind: keyof typeof above, line: string, says: string | RegExp])[] = [
	// Roles, each with what counts of it.
	['session', '«main» deadlift 4 x 5 at 70%', '`main` work counts in all totals'],
	['session', '«accessory» plank 3 x 30 s', '`accessory` work counts in all totals'],
	['session', '«warm-up» deadlift', '`warm-up` counts for minutes only'],
	['session', '«conditioning» sled-push 1 x 20 min', 'counts for minutes only, outside sets, needs and tonnage'],
	['session', '«test» deadlift 1 x 1', /the sets up to it are worked out, its own load is open.*The log writes the best/],
	['run', 'add «conditioning» sled-push 1 x 20 min to heavy-pull', 'counts for minutes only, outside sets, needs and tonnage'],
	// Sets.
	['session', 'main deadlift 4 «x» 5', '`4 x 5`: four sets of five'],
	['session', 'main deadlift «3»-4 x 5', '`3-4 x 8`: three sets, and a fourth'],
	['session', 'main deadlift 4 x 6-«8»', '`4 x 6-8`: six to eight reps each'],
	['session', 'accessory push-up 2 x 60 s «for» reps', 'as many reps as the time holds'],
	['session', 'accessory push-up 2 x 60 s for «reps»', 'as many reps as the time holds'],
	['session', 'accessory sled-push 1 x 20 m «for» time at 60 kg', 'the distance as fast as it goes'],
	['session', 'accessory sled-push 1 x 20 m for «time» at 60 kg', 'the distance as fast as it goes'],
	['session', 'main deadlift 1 x 12 to «failure» at 60%', 'to the last rep that goes'],
	['session', 'main deadlift 1 x 5 or «more» at 75%', 'five at least, as many as go'],
	['session', 'conditioning sled-push 1 x 20 «min»', '`1 x 20 min`: time spent'],
	['session', 'accessory suitcase-carry 3 x 20 «m» at 24 kg', '`3 x 20 m`: carries'],
	['session', 'accessory plank 3 x «30» s', 'holds'],
	['session', 'main deadlift «ramp» 4 x 4 from 60% to 78%', 'climb in evenly spaced percents'],
	['session', 'main deadlift ramp 4 x 4 «from» 60% to 78%', 'climb in evenly spaced percents'],
	[
		'session',
		'main deadlift «up» to 5 x 3 at 80% until rpe 9',
		/As many sets as it takes to reach that effort.* no more than that number/,
	],
	['session', 'main deadlift up «to» 5 x 3 at 80% until rpe 9', 'As many sets as it takes to reach that effort'],
	['session', 'main deadlift up to 5 x 3 at 80% «until» rpe 9', 'As many sets as it takes to reach that effort'],
	['session', 'main deadlift up to 5 x 3 at 80% until «rpe» 9', 'As many sets as it takes to reach that effort'],
	['session', 'main deadlift 4 x 6 «in» clusters of 2 resting 20 s at 80%', 'small groups of so many, with a short rest between'],
	['session', 'main deadlift 4 x 6 in «clusters» of 2 resting 20 s at 80%', 'small groups of so many, with a short rest between'],
	[
		'session',
		'main deadlift 4 x 6 in clusters of 2 «resting» 20 s at 80%',
		'with a short rest between the groups, `resting` so long',
	],
	[
		'session',
		'main deadlift 4 x 6 in clusters of 2 resting «20» s at 80%',
		'with a short rest between the groups, `resting` so long',
	],
	['session', 'main deadlift 4 x 5 at 75% «rpe» at most 8', 'an effort of 8 on a scale to 10'],
	['session', 'main deadlift 4 x 5 at 75% rpe at «most» 8', '`at most` makes it a ceiling'],
	['session', 'main deadlift 3 x 6 «rir» 2', '`rir 2` says the reps left'],
	['session', 'main deadlift 3 x 5 at 60% «tempo» 4-1-x-0', 'seconds of lowering, pause, lifting, pause at the top'],
	['session', 'main deadlift 3 x 5 at 60% tempo «4-1-x-0»', 'seconds of lowering, pause, lifting, pause at the top'],
	['session', 'main deadlift 4 x 5 at 70% «rest» 3 min', 'How long to rest after each set'],
	['session', 'main deadlift 4 x 5 at 70% rest 3 «min»', 'How long to rest after each set'],
	['session', 'accessory side-plank 3 x 30 s «each» side', 'Done on one side and then on the other'],
	['session', 'accessory side-plank 3 x 30 s each «side»', 'Done on one side and then on the other'],
	// What is pasted from elsewhere, as what it means.
	['session', 'main deadlift 4 «×» 6–8', '`4 x 6-8`: six to eight reps each'],
	['session', 'accessory plank 3 x «1»:30', 'holds'],
	['session', 'accessory push-up 3 x «max»', 'as many as go'],
	['session', 'main deadlift 4x5«@»8', 'an effort of 8 on a scale to 10'],
	['session', 'main deadlift 4 x 5 «@» 70%', '`at 70%`: percent of the best'],
	// Loads.
	['session', 'main deadlift 4 x 5 «at» 70%', '`at 70%`: percent of the best'],
	['session', 'main deadlift 4 x 5 at 70-75«%»', 'percents from one to the other'],
	['session', 'main deadlift 4 x 5 at 70% «of» base', '`at 70% of base`'],
	['session', 'main deadlift 3 x 8 at 70-75% «of» best', 'percent of the best, whatever the block says'],
	['session', 'main deadlift 1 x 3 at 80%, 3 x 3 at 92% of «top» set', 'a share of what is on the bar for the heaviest set'],
	['session', 'main deadlift 3 x 5 at 8 «rm»', 'the load that would go for 8 reps to failure'],
	['session', 'main deadlift 3 x 5 «at» 90 kg', 'a mass; of one hand where the movement has two'],
	['session', 'main deadlift 3 x 5 «at» 90-95 lb', 'a mass; of one hand where the movement has two'],
	['session', 'accessory pull-up 3 x 5 at «bodyweight»', 'the body, and nothing added'],
	['session', 'accessory dip 3 x 5 at «bodyweight» + 10 kg', 'the body, and ten added'],
	['session', 'accessory chin-up 3 x 5 at bodyweight - «10» kg', 'the body, helped by ten'],
	['session', 'accessory farmer-carry 3 x 20 m «at» 50% of bodyweight', "that percent of the lifter's own"],
	['session', 'accessory farmer-carry 3 x 20 m at 50% of «bodyweight»', "that percent of the lifter's own"],
	// Weeks, changes, milestones.
	['item', '«week» 1: 4 x 5 at 70%', 'What the item has in that week'],
	['item', 'week «1»: 4 x 5 at 70%', 'What the item has in that week'],
	['item', 'week 1, «4»: 4 x 5 at 70%', 'What the item has in that week'],
	['item', 'week 2: «skip»', '`skip` leaves the week out'],
	['item', '«each» session add 2.5 kg', 'from one week, or one session, to the next'],
	['item', 'each «session» add 2.5 kg', '`each session` counts from one time that the session stands'],
	['item', 'each week «add» 0.5 rpe', 'More (`add`) or less (`take`)'],
	['item', 'each week add 0.5 «rpe»', '`each week add 0.5 rpe`'],
	['item', '«once» 3 x 12 reached add 2.5 kg', 'What comes once those sets are done'],
	['item', 'once 3 x 12 «reached» move to front-squat 3 x 5 rpe 7', 'What comes once those sets are done'],
	['item', 'once 3 x 12 reached «move» to front-squat 3 x 5 rpe 7', '`move to` another movement'],
	['item', 'once 3 x 12 reached move to front-squat 3 x 5 «rpe» 7', 'an effort of 8 on a scale to 10'],
	['item', '«with» the item above', 'Done in turns with the item above'],
	// The block.
	['block', 'session pull on «monday» evening', '`morning` and `evening` order two sessions of one day'],
	['block', 'session pull on monday «evening»', '`morning` and `evening` order two sessions of one day'],
	['block', 'session pull on monday, «thursday»', 'more than one where the session is done more than once a week'],
	['block', '«turn» one, two over monday, wednesday', 'a, b, a in the first week, then b, a, b'],
	['block', 'turn one, two «over» monday, wednesday', 'a, b, a in the first week, then b, a, b'],
	['block', 'turn one, two over «monday», wednesday', 'a, b, a in the first week, then b, a, b'],
	['block', 'deload week 4 with 60% «of» sets', 'With shares, every item'],
	['block', '«requires» plank held 30 s', 'that a lifter must have passed before the first day. Any'],
	// Movements and gates.
	['movement', '«requires» plank held 45 s', 'that a lifter must have passed before the first use'],
	['movement', 'requires plank «held» 45 s', '`plank held 45 s`: a hold, in s or min'],
	['movement', 'requires plank held 45 s x 3 in 2 «sessions»', 'three such holds, in each of two sessions'],
	['movement', 'requires «sign-off»', '`front-squat sign-off`: a coach has looked at it'],
	['movement', '«equipment» barbell', "Names of a gym's bars, machines, implements and things"],
	['movement', '«carry» 10-40 m', 'as in: `carry 10-40 m`'],
	['progression', 'step weighted-plank after plank «held» 45 s', '`plank held 45 s`: a hold, in s or min'],
	// Lifters, gyms, limits.
	['lifter', '«uses» light-barbell as barbell', 'wherever a movement asks for the implement B, this lifter takes A'],
	['lifter', 'uses light-barbell «as» barbell', 'wherever a movement asks for the implement B, this lifter takes A'],
	['lifter', 'best deadlift 100 kg x 5 «rpe» 9', 'A set of more than one rep, or one with reps left'],
	['lifter', 'avoid overhead-press «because» "shoulder"', 'Why it is so, in words'],
	['gym', '«fixed» stone 90 kg, 105 kg', 'An implement that is as heavy as it is'],
	['gym', '«equipment» sled', 'Names of what carries a load or what another gym may lack'],
	['limits', 'youth "Youth" «for» mara-lind', '`limits NAME for LIFTER` or `for TEAM` holds for them alone'],
	['limits', 'house\n  volume «rises» at most 20% a week', 'the hard sets of a muscle over the highest of the last four'],
	// Plans.
	['plan', '«start» 5 weeks before 2026-11-28', 'so many whole calendar weeks before a date'],
	['plan', 'start 5 «weeks» before 2026-11-28', 'so many whole calendar weeks before a date'],
	['plan', 'start 5 weeks «before» 2026-11-28', 'so many whole calendar weeks before a date'],
	['plan', '«pause» 2026-10-19 to 2026-10-25 because "flu"', 'No training from a date to a date, ends included'],
	['plan', 'pause 2026-10-19 «to» 2026-10-25 because "flu"', 'No training from a date to a date, ends included'],
	['plan', 'start 2026-10-05\n  run rebuild 2 «times», each time add 2.5 kg', '`2 times` runs it again'],
	[
		'plan',
		'start 2026-10-05\n  run rebuild 2 times, «each» time add 2.5 kg',
		'`each time` with more (or less) than the time before',
	],
	['team', '«for» mara-lind\n    pause 2026-10-19 to 2026-10-25', 'hold for that member alone'],
	['run', '«move» heavy-pull from 2026-10-12 to 2026-10-13', 'or one day of it, from a date to a date'],
	['run', 'move heavy-pull «from» 2026-10-12 to 2026-10-13', 'or one day of it, from a date to a date'],
	['run', '«swap» deadlift for front-squat in week 1 because "travel"', 'Another movement in place of one'],
	['run', 'swap deadlift «for» front-squat in week 1 because "travel"', 'Another movement in place of one'],
	['run', 'swap deadlift for front-squat in «week» 1 because "travel"', '`in week` some, counted through the run'],
	['run', 'swap deadlift for front-squat in week 1 «because» "travel"', 'Why it is so, in words'],
	// Logs.
	['log', 'did deadlift 6 in «clusters» of 2 resting 20 s at 100 kg', 'small groups of so many, with a short rest between'],
	['log', 'did sled-push 20 m «in» 14.2 s at 60 kg', 'Behind a distance the time that it took'],
	['log', 'did deadlift 4 x 5 «at» 112.5 kg', 'a mass; of one hand where the movement has two'],
	['log', 'did deadlift 1 x 5 at 120 kg «missed» 1', 'How many reps of a set did not go'],
]

it.each(meanings)('says what is meant, in a %s: %s', async (kind, marked, says) => {
	const uri = uriOf(club.folder, 'meanings.stave')
	const start = above[kind].length + marked.indexOf('«')
	const end = above[kind].length + marked.indexOf('»') - 1
	const text = `${above[kind]}${marked.replace(/[«»]/g, '')}\n`
	await club.editor.openText(uri, text)
	const document = TextDocument.create(uri, 'barstave', 1, text)
	const hover = await club.editor.request<Hover>('textDocument/hover', {
		textDocument: { uri },
		position: document.positionAt(start),
	})
	await club.editor.close(uri)
	expect((hover.contents as { value: string }).value).toMatch(says)
	expect(hover.range).toEqual({ start: document.positionAt(start), end: document.positionAt(end) })
})

it('puts what is asked about first: of a word its meaning, of a number and its unit the load', async () => {
	const line = '    main deadlift 4 x 6 in clusters of 2 resting 20 s at 70% rest 3 min  each side'
	const uri = uriOf(club.folder, 'order.stave')
	const text = ['block order "Order"', '  weeks 1', '  session pull on monday', line, 'plan ordered for mara-lind'].join('\n')
	await club.editor.openText(uri, `${text}\n  start 2026-10-05\n  run order\n`)
	const placesAt = async (words: string) => {
		const said = (await hoverText(club.editor.at(uri, 3, line.indexOf(words))))!.replaceAll('\\', '')
		return { load: said.indexOf('70% of 160 kg = 112 kg'), meaning: said.indexOf('[Read more]') }
	}
	for (const words of ['in clusters', 'clusters', 'resting', 'at 70%', 'rest 3']) {
		const { load, meaning } = await placesAt(words)
		expect(meaning, words).toBeGreaterThan(0)
		expect(load, words).toBeGreaterThan(meaning)
	}
	for (const words of ['4 x', 'x 6', '6 in', '2 rest', '20 s', '70%', '% rest', '3 min', 'min']) {
		const { load, meaning } = await placesAt(words)
		expect(load, words).toBeGreaterThan(0)
		expect(meaning, words).toBeGreaterThan(load)
	}
	const { load, meaning } = await placesAt(' each side')
	expect(load, 'between two words').toBeGreaterThan(0)
	expect(meaning, 'between two words').toBe(-1)
	await club.editor.close(uri)
})
