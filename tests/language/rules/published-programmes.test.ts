import { expect, test } from 'vitest'
import { pathOf } from './harness/markdown.ts'
import { folderOf, listed, type Place, problemsOfTexts, textsBelow } from './harness/workspace.ts'

/** A default that a published programme leaves, and why it is right to say so. */
interface Said extends Place {
	readonly why: string
}

const said: readonly Said[] = [
	{
		file: 'ajcn2019.stave',
		line: 4,
		code: 'muscle-volume-high',
		why: 'Five kinds of leg work over two days are 26 hard sets for the quads; more than 25 is a remark, not a fault.',
	},
	{
		file: 'klemp2016.stave',
		line: 4,
		code: 'no-lighter-week',
		why: 'Eight weeks of the same, as a trial needs them; common practice has a lighter week every 4-6: a remark.',
	},
	{
		file: 'masters2017.stave',
		line: 3,
		code: 'muscle-volume-high',
		why: 'Three kinds of leg work on three days are 27 sets for the quads; more than 25 is a remark, not a fault.',
	},
	{
		file: 'masters2017.stave',
		line: 4,
		code: 'no-lighter-week',
		why: 'Fourteen weeks of the same number of sets, as a trial needs them: a remark.',
	},
]

const texts = textsBelow(pathOf('tests/reference/programmes'))
const blocks = folderOf(texts).all('block')

test('of the published programmes nothing is said but where they leave a default', () => {
	expect(listed(problemsOfTexts(texts))).toEqual(listed(said))
})

test.each(blocks)('nothing more is said where a lifter runs $name.text', block => {
	const movements = new Set(block.sessions.flatMap(session => session.items.map(item => item.movement.text)))
	const bests = [...movements].map(name => `  best ${name} 100 kg on 2026-10-01\n`).join('')
	const plan = `lifter sam-ost "Sam Ost"\n${bests}\nplan sam-autumn for sam-ost\n  start 2026-10-05\n  run ${block.name.text}\n`
	expect(listed(problemsOfTexts(new Map([...texts, ['plan.stave', plan]])))).toEqual(listed(said))
})
