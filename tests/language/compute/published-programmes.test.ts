import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { liftsTogether, noTotals, sumTotals } from '../../../language/compute/volume/totals.ts'
import { blockVolume } from '../../../language/compute/volume.ts'
import type { CountRange, ExactRange } from '../../../language/model/quantities.ts'
import { pathOf } from '../rules/harness/markdown.ts'
import { described, folderOf, problemsOfTexts, textsBelow } from '../rules/harness/workspace.ts'

/** One number, or the low and the high end of a range. */
type Figure = number | readonly [number, number]

interface Published {
	readonly source: string
	readonly read: string
	readonly block: string
	readonly leftOut: string
	readonly totals: readonly PublishedTotal[]
}

/** A total of a week, or of one session or movement in it. */
interface PublishedTotal {
	readonly id: string
	readonly week: number
	readonly session?: string
	readonly lift?: string
	readonly sets?: Figure
	/** Repetitions. */
	readonly lifts?: Figure
	/** Sets × reps × percent. */
	readonly relative?: Figure
	/** Seconds. */
	readonly hold?: Figure
	readonly underTension?: Figure
	/** Days on which it is trained. */
	readonly exposures?: number
}

const folder = 'tests/reference/programmes'
const texts = textsBelow(pathOf(folder))
const programme = folderOf(texts)
const files = readdirSync(pathOf(folder)).filter(file => file.endsWith('.json'))

function figure({ from, to }: CountRange | ExactRange): Figure {
	return Number(from) === Number(to) ? Number(from) : [Number(from), Number(to)]
}

/** What the block adds up to, of what a published total is the total of. */
function computed(block: string, { week, session, lift }: PublishedTotal) {
	const definition = programme.find('block', block)
	const found = definition && blockVolume(definition, programme).weeks.find(one => one.week === week)
	const sessions = found?.sessions.filter(one => session === undefined || one.session.session.name.text === session) ?? []
	const totals = sessions.length === 0 ? noTotals : sumTotals(sessions.map(one => one.totals))
	const together = liftsTogether(totals, movement => lift === undefined || movement === lift)
	return {
		sets: figure(together.sets),
		lifts: figure(together.reps),
		relative: figure(together.relative),
		hold: figure(together.hold),
		underTension: figure(together.underTension),
		exposures: together.exposures.size,
	}
}

test('every programme reads, and has its totals beside it', () => {
	const blocks = programme.all('block').map(block => block.name.text)
	expect(blocks.sort()).toEqual(files.map(file => publishedIn(file).block).sort())
	const faults = problemsOfTexts(texts).filter(({ problem }) => problem.level === 'error')
	expect(described(faults)).toEqual([])
})

function publishedIn(file: string): Published {
	return JSON.parse(readFileSync(pathOf(`${folder}/${file}`), 'utf8'))
}

describe.each(files)('%s', file => {
	const published = publishedIn(file)

	test('names its source, how it was read and what is left out', () => {
		expect(programme.find('block', published.block)?.source?.text).toBe(published.source)
		expect(published.read).toMatch(/read/)
		expect(published.leftOut).not.toBe('')
	})

	test.each(published.totals)('$id: week $week $session $lift', total => {
		const { id, week, session, lift, ...figures } = total
		expect(Object.keys(figures)).not.toEqual([])
		expect(computed(published.block, total)).toMatchObject(figures)
	})
})
