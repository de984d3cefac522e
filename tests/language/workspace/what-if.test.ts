import { expect, test } from 'vitest'
import type { Block, Plan } from '../../../language/model/definitions.ts'
import { fileProblems } from '../../../language/workspace/file-problems.ts'
import { Folder } from '../../../language/workspace/folder.ts'
import { TextReader } from '../../../language/workspace/text-file.ts'
import { textsBelow } from '../../support/texts.ts'

const text = `
block autumn-trunk "Autumn trunk"
  weeks 1
  session trunk-day on monday
    accessory plank 3 x 45 s
    accessory weighted-plank 3 x 30 s at 5 kg

lifter lena-sol "Lena Sol"
  passed plank held 50 s on 2026-09-20

lifter rosa-quint "Rosa Quint"

plan lena-autumn for lena-sol
  start 2026-10-05
  run autumn-trunk

plan rosa-autumn for rosa-quint
  start 2026-10-05
  run autumn-trunk
`

function opened(): { folder: Folder; block: Block; rosa: Plan } {
	const folder = new Folder(new TextReader())
	folder.setFile('a.stave', text)
	return { folder, block: folder.find('block', 'autumn-trunk')!, rosa: folder.find('plan', 'rosa-autumn')! }
}

test('a trial counts what would be reported, on the definition and on the plans that it concerns', () => {
	const { folder, block, rosa } = opened()
	const ofBlock = folder.trialsOf(block)
	expect(ofBlock(block).get('gate-not-passed')).toBe(1)
	const sessions = block.sessions.map(session => ({ ...session, items: session.items.slice(0, 1) }))
	expect(ofBlock({ ...block, sessions }).get('gate-not-passed')).toBeUndefined()
	expect(folder.trialsOf(rosa)({ ...rosa, runs: [] }).size).toBe(0)
})

test('a trial after others counts what it would count alone', () => {
	const folder = new Folder(new TextReader())
	for (const [uri, written] of Object.entries(textsBelow('examples/club'))) folder.setFile(uri, written)
	const plan = folder.find('plan', 'mara-autumn')!
	const block = folder.find('block', 'hinge-rebuild')!
	const plans = [...plan.runs.map(run => ({ ...plan, runs: plan.runs.filter(one => one !== run) })), { ...plan, meets: [] }]
	const withSessions = (sessions: Block['sessions']) => ({ ...block, sessions })
	const blocks = [...block.sessions.map(one => withSessions([one])), withSessions([...block.sessions, ...block.sessions])]
	const same = <D extends Plan | Block>(definition: D, changed: readonly D[]) => {
		const together = folder.trialsOf(definition)
		for (const one of [...changed, definition]) expect(together(one)).toEqual(folder.trialsOf(definition)({ ...one }))
	}
	same(plan, plans)
	same(block, blocks)
})

test('a trial leaves the folder as it is', () => {
	const { folder, block } = opened()
	const before = fileProblems(folder, 'a.stave').map(({ code, start }) => `${start} ${code}`)
	folder.trialsOf(block)({ ...block, sessions: [] })
	expect(fileProblems(folder, 'a.stave').map(({ code, start }) => `${start} ${code}`)).toEqual(before)
	expect(before).not.toEqual([])
})

test('a correction is looked for when somebody asks, once', () => {
	const { folder } = opened()
	const asked = { times: 0 }
	const trialsOf = folder.trialsOf.bind(folder)
	folder.trialsOf = definition => {
		asked.times++
		return trialsOf(definition)
	}
	const problem = fileProblems(folder, 'a.stave').find(one => one.code === 'gate-not-passed')
	expect(asked.times).toBe(0)
	expect(problem?.corrections.map(one => one.title)).toEqual(['Go back to Plank in this plan'])
	const { times } = asked
	expect(times).toBeGreaterThan(0)
	expect(problem?.corrections.length).toBe(1)
	expect(asked.times).toBe(times)
})
