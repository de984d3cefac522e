import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { PreviewData, PreviewQuestion, Subject } from '../../../language/reports/preview.ts'
import { Editor, makeFolder, uriOf } from '../support/editor.ts'

const files = {
	'people.stave': `gym north-hall "North Hall"
lifter mara-lind "Mara Lind"
  best deadlift 160 kg on 2026-09-12
lifter tom-aas "Tom Aas"
  best deadlift 90 kg on 2026-09-12
team juniors "Juniors"
  members mara-lind, tom-aas
`,
	'blocks.stave': `block rebuild "Rebuild"
  weeks 2
  session heavy-pull on monday
    main deadlift 4 x 5 at 70%

block alone "Alone"
  weeks 1
  session pull on monday
    main deadlift 2 x 5 at 60%
`,
	'plans.stave': `plan mara-autumn for mara-lind
  start 2026-10-05
  run rebuild
plan winter "Winter" for juniors
  start 2027-01-04
  run rebuild
  for tom-aas
    days tuesday
`,
	'logs.stave': `// What Mara has done.

log mara-lind
  on 2026-10-05 session heavy-pull
    did deadlift 4 x 5 at 112.5 kg
`,
}

let folder: string
let editor: Editor

beforeAll(async () => {
	folder = await makeFolder(files)
	editor = await Editor.start([folder], {}, '2026-10-07')
})

afterAll(() => editor.stop())

/** A place in a file: the line that begins with these words. */
function at(file: keyof typeof files, words: string): PreviewQuestion {
	const line = files[file].split('\n').findIndex(one => one.trim().startsWith(words))
	if (line < 0) throw new Error(`no line "${words}"`)
	return { uri: uriOf(folder, file), at: { line, character: 1 } }
}
const subject = (question: PreviewQuestion) => editor.request<Subject | null>('barstave/previewSubject', question)
const data = (question: PreviewQuestion) => editor.request<PreviewData>('barstave/preview', question)

describe('what the preview shows', () => {
	it.each([
		['a plan, in a plan', 'plans.stave', 'start 2026-10-05', 'plan', 'mara-autumn'],
		['the loads of a plan that runs it, in a block', 'blocks.stave', 'weeks 2', 'plan', 'mara-autumn'],
		['a block in percents where no plan runs it', 'blocks.stave', 'weeks 1', 'block', 'alone'],
		['a plan of theirs, in a lifter', 'people.stave', 'best deadlift 90', 'plan', 'winter/tom-aas'],
		['a team', 'people.stave', 'members', 'team', 'juniors'],
		['a log', 'logs.stave', 'did', 'log', 'mara-lind'],
		['what stands below, in the words at the top of a file', 'logs.stave', '//', 'log', 'mara-lind'],
		['a member’s plan, in a team’s', 'plans.stave', 'start 2027', 'plan', 'winter/mara-lind'],
		['that of the member whose lines they are', 'plans.stave', 'days tuesday', 'plan', 'winter/tom-aas'],
	] as const)('is %s', async (_, file, words, kind, name) => {
		expect(await subject(at(file, words))).toEqual({ kind, name })
		const { chosen, picture, team, log } = await data(at(file, words))
		expect(chosen).toEqual({ kind, name })
		expect([picture !== null, team !== null, log !== null]).toEqual([
			kind === 'plan' || kind === 'block',
			kind === 'team',
			kind === 'log',
		])
	})

	it('is what is held, wherever the cursor is', async () => {
		const held = { kind: 'block', name: 'rebuild' } as const
		const { chosen, picture } = await data({ ...at('logs.stave', 'did'), held })
		expect(chosen).toEqual(held)
		expect(picture!.blockSheet!.weeks.length).toBe(2)
		expect(picture!.written!.places[0]!.range.start).toEqual({ line: 3, character: 18 })
	})

	it('can be anything of the folder', async () => {
		const { choices } = await data({})
		expect(choices.map(({ kind, name, lifterTitle }) => [kind, name, lifterTitle])).toEqual([
			['plan', 'mara-autumn', 'Mara Lind'],
			['plan', 'winter/mara-lind', 'Mara Lind'],
			['plan', 'winter/tom-aas', 'Tom Aas'],
			['block', 'alone', null],
			['block', 'rebuild', null],
			['team', 'juniors', null],
			['log', 'mara-lind', null],
		])
	})

	it('has the weeks of each member, and today', async () => {
		const { team } = await data({ held: { kind: 'team', name: 'juniors' } })
		expect(team!.today).toBe('2026-10-07')
		expect(team!.members.map(({ plans }) => plans.map(({ plan }) => plan))).toEqual([
			['mara-autumn', 'winter/mara-lind'],
			['winter/tom-aas'],
		])
	})

	it('says that its text cannot be read where it has gone with a broken one', async () => {
		const uri = uriOf(folder, 'plans.stave')
		const shown = { kind: 'plan', name: 'mara-autumn' } as const
		await editor.openText(uri, files['plans.stave'].replace('plan mara-autumn for', 'plan @@@ for'))
		const broken = await data({ uri, at: { line: 1, character: 1 }, shown })
		expect([broken.chosen, broken.stale?.blocks]).toEqual([null, null])
		expect(broken.stale!.message).toContain('cannot be read')
		expect(await subject({ uri, at: { line: 1, character: 1 }, shown })).toEqual(shown)
		await editor.close(uri)
		await expect.poll(async () => (await data({ uri, at: { line: 1, character: 1 }, shown })).chosen).toEqual(shown)
	})

	it('has the new loads before the rules have looked at a change, and what they say when it is asked once more', async () => {
		const question = at('plans.stave', 'start 2026-10-05')
		const percents = ({ picture }: PreviewData) =>
			new Set(picture!.sheet!.sessions.flatMap(({ items }) => items.flatMap(({ sets }) => sets.map(set => set.percent?.from))))
		const codes = ({ picture }: PreviewData) => picture!.problems.map(({ code }) => code)
		const before = await data(question)
		expect(codes(before)).not.toContain('beyond-rep-max')
		const uri = uriOf(folder, 'blocks.stave')
		await editor.openText(uri, files['blocks.stave'].replace('4 x 5 at 70%', '4 x 5 at 95%'))
		const soon = await data({ ...question, problemsMayBeOld: true })
		expect(percents(soon)).toEqual(new Set(['95']))
		expect(soon.picture!.problems).toEqual(before.picture!.problems)
		const whole = await data(question)
		expect(percents(whole)).toEqual(new Set(['95']))
		expect(codes(whole)).toContain('beyond-rep-max')
		// What was said then is what is known from then on.
		expect(await data({ ...question, problemsMayBeOld: true })).toEqual(whole)
		await editor.close(uri)
	})
})
