import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { weeklyVolume } from '../../../language/reports/weekly-volume.ts'
import { pathOf } from '../rules/harness/markdown.ts'
import { folderOf, textsBelow } from '../rules/harness/workspace.ts'

interface Published {
	readonly source: string
	readonly block: string
	/** Movements, in the block's order. */
	readonly lifts: readonly string[]
	/** Names of the sessions in which each of them stands. */
	readonly sessions: readonly string[]
	readonly weeks: readonly {
		readonly id: string
		readonly week: number
		/** Repetitions of one lift in one session, and sets × reps × percent. */
		readonly lifts: number
		readonly relative: number
		/** The same over all lifts and sessions. */
		readonly weekLifts: number
		readonly weekRelative: number
	}[]
}

const folder = 'tests/reference/programmes'
const programme = folderOf(textsBelow(pathOf(folder)))
const files = readdirSync(pathOf(folder)).filter(file => file.endsWith('.json'))

describe.each(files)('%s', file => {
	const published: Published = JSON.parse(readFileSync(pathOf(`${folder}/${file}`), 'utf8'))
	const block = programme.find('block', published.block)
	const volume = block && weeklyVolume(block, programme)

	test('the block names its source', () => {
		expect(block?.source?.text.slice(0, 40)).toBe(published.source.slice(0, 40))
	})

	test.each(published.weeks)('$id', ({ week, lifts, relative, weekLifts, weekRelative }) => {
		const totals = volume?.weeks.find(one => one.week === week)?.lifts ?? {}
		expect(Object.keys(totals)).toEqual(published.lifts)
		const sessions = published.sessions.length
		for (const lift of Object.values(totals)) {
			expect(lift.sessions).toBe(sessions)
			expect(lift.reps).toEqual({ low: lifts * sessions, high: lifts * sessions })
			expect(lift.relative).toEqual({ low: String(relative * sessions), high: String(relative * sessions) })
		}
		const all = Object.values(totals)
		expect(all.reduce((sum, lift) => sum + lift.reps.low, 0)).toBe(weekLifts)
		expect(all.reduce((sum, lift) => sum + Number(lift.relative?.low), 0)).toBe(weekRelative)
	})
})
