import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { sessionSeconds } from '../../../language/compute/duration.ts'
import { estimatorSource } from '../../../language/compute/estimates.ts'
import { decimal } from '../../../language/compute/exact.ts'
import { massRangeText, rangeText } from '../../../language/compute/loads/wording.ts'
import { schedulePlan } from '../../../language/compute/schedule.ts'
import { averagePercent } from '../../../language/compute/volume/lift-totals.ts'
import { liftsTogether } from '../../../language/compute/volume/totals.ts'
import { planVolume } from '../../../language/compute/volume.ts'
import type { CountRange, ExactRange } from '../../../language/model/quantities.ts'
import type { ScheduledItem, ScheduledSession, ScheduledSet } from '../../../language/model/schedule.ts'
import { estimators } from '../../../language/model/vocabulary.ts'
import { loggedLoad } from '../../../language/reports/session-load.ts'
import type { Folder } from '../../../language/workspace/folder.ts'
import { planIn, workspaceOf } from '../../support/workspace.ts'
import { fencesOf, pathOf } from '../rules/harness/markdown.ts'

/**
 * The page "Numbers" is what it says: each row of its tables is worked out. Columns named in `inputs` are put into the page's own gym and
 * lifter; every other column is a figure that must come out.
 */
const page = readFileSync(pathOf('language/compute/NUMBERS.md'), 'utf8')
const [people = ''] = fencesOf(page).values()
const inputs = ['On', 'Written', 'Lifter', 'Limits', 'Gym', 'Days'] as const

type Row = ReadonlyMap<string, string>

/** The rows of the tables that have an input for their first column, by the titles of their columns. */
const rows: readonly Row[] = [...page.matchAll(/^\|.*\|\n\| ---.*\|\n(?:\|.*\|\n)+/gm)].flatMap(([table]) => {
	const [titles = [], , ...bodies] = table
		.trim()
		.split('\n')
		.map(line =>
			line
				.slice(1, -1)
				.split('|')
				.map(cell => cell.trim().replaceAll('`', '')),
		)
	const isWorked = inputs.some(input => input === titles[0])
	return isWorked ? bodies.map(cells => new Map(titles.map((title, index) => [title, cells[index] ?? '']))) : []
})

/** "a; b" is two lines. */
function folderFor(row: Row): Folder {
	const lines = (name: (typeof inputs)[number]) => row.get(name)?.replaceAll('; ', '\n') ?? ''
	const gym = row.get('Gym')?.replace(', round', '\nround').replace(', plates', '\nplates')
	const known = gym === undefined ? people : people.replace(/(gym hall "Hall")[\s\S]*?\n\n/, `$1\n${gym}\n\n`)
	const days = row.get('Days')?.split(' ').map(Number) ?? []
	return workspaceOf(
		`${known}\n${lines('Lifter')}`,
		`limits own\n${lines('Limits')}`,
		`block test-block\nweeks 4\ndeload week 4 with 60% of sets at 90% of load\nsession one on ${row.get('On') ?? 'monday'}`,
		lines('Written') || 'main deadlift 1 x 1 at 100%',
		'plan test-plan for nora-vik\nstart 2026-10-05\nrun test-block',
		`log nora-vik\n${days.map((load, day) => `on 2026-10-${String(5 + day).padStart(2, '0')}\nfelt 10 for ${Math.max(load, 0) / 10} min`).join('\n')}`,
	)
}

function sessionIn(folder: Folder, week: number): ScheduledSession {
	const session = schedulePlan(planIn(folder, 'test-plan'), folder).sessions.find(one => one.blockWeek === week)
	if (session === undefined) throw new Error(`week ${week} has no session`)
	return session
}

function firstItem(folder: Folder, week = 1): ScheduledItem {
	const [item] = sessionIn(folder, week).items
	if (item === undefined) throw new Error('the session has no item')
	return item
}

/** What differs from set to set, once each. */
function ofSets(folder: Folder, text: (set: ScheduledSet) => string): string {
	return [...new Set(firstItem(folder).sets.map(text))].join(', ')
}

function week(folder: Folder, number: number): string {
	const counts = new Map<string, number>()
	for (const { work, computed } of firstItem(folder, number).sets) {
		const does = work.kind === 'reps' ? `${work.reps.from}` : work.kind === 'hold' ? `${decimal(work.seconds.from)} s` : work.kind
		const at = computed.exact === undefined ? '' : ` at ${decimal(computed.exact)} ${computed.unit}`
		counts.set(`${does}${at}`, (counts.get(`${does}${at}`) ?? 0) + 1)
	}
	return [...counts].map(([text, count]) => `${count} x ${text}`).join(', ')
}

/** The exact load of the first set on each day of a week. */
function days(folder: Folder, number: number): string {
	const sessions = schedulePlan(planIn(folder, 'test-plan'), folder).sessions.filter(one => one.blockWeek === number)
	return sessions.map(({ items }) => decimal(items[0]!.sets[0]!.computed.exact!)).join(', ')
}

const totalsIn = (folder: Folder) => liftsTogether(planVolume(planIn(folder, 'test-plan'), folder).weeks[0]!.totals)
const counted = ({ from, to }: CountRange) => (from === to ? `${from}` : `${from}-${to}`)
const ranged = (range: ExactRange | undefined) => (range === undefined ? 'unknown' : rangeText(range))
const loggedIn = (folder: Folder) => loggedLoad('nora-vik', folder).weeks[0]!

const figures: Readonly<Record<string, (folder: Folder) => string>> = {
	Max: folder => {
		const max = firstItem(folder).sets[0]?.computed.reference?.max
		return max === undefined ? 'unknown' : `${decimal(max)} kg`
	},
	Exact: folder =>
		ofSets(folder, ({ computed: { exact, exactTo, unit } }) =>
			exact === undefined ? 'unknown' : massRangeText({ from: exact, to: exactTo ?? exact }, unit),
		),
	'On the bar': folder =>
		ofSets(folder, ({ computed: { load, loadTo, unit } }) =>
			load === undefined ? 'unknown' : massRangeText({ from: load, to: loadTo ?? load }, unit),
		),
	'A side': folder =>
		ofSets(folder, ({ computed: { perSide } }) => perSide?.map(disc => decimal(disc)).join(' + ') || (perSide ? 'none' : '')),
	'Days of week 1': folder => days(folder, 1),
	'Days of week 2': folder => days(folder, 2),
	'Days of week 4': folder => days(folder, 4),
	'Week 1': folder => week(folder, 1),
	'Week 2': folder => week(folder, 2),
	'Week 3': folder => week(folder, 3),
	'Week 4': folder => week(folder, 4),
	Sets: folder => counted(totalsIn(folder).sets),
	Lifts: folder => counted(totalsIn(folder).reps),
	Tonnage: folder => rangeText(totalsIn(folder).tonnage),
	Average: folder => ranged(averagePercent(totalsIn(folder))),
	'Under tension': folder => rangeText(totalsIn(folder).underTension),
	'Left out': folder => String(totalsIn(folder).excludedSets),
	Zones: folder => totalsIn(folder).zones.map(counted).join(', '),
	Session: folder => {
		const { from } = sessionSeconds(sessionIn(folder, 1).items)
		return `${Math.floor(from.valueOf() / 60)} min ${from.valueOf() % 60} s`
	},
	Load: folder => decimal(loggedIn(folder).load),
	Monotony: folder => (loggedIn(folder).spread?.monotony ? decimal(loggedIn(folder).spread!.monotony!, 4) : 'undefined'),
	Strain: folder => (loggedIn(folder).spread?.strain ? decimal(loggedIn(folder).spread!.strain!, 2) : 'undefined'),
}

describe('the page "Numbers"', () => {
	test.each(rows.map(row => ({ name: [...row.values()].slice(0, 2).join(' | '), row })))('$name', ({ row }) => {
		const folder = folderFor(row)
		// An empty cell of a week says nothing of it.
		const outputs = [...row].filter(
			([title, cell]) => !inputs.some(input => input === title) && !(cell === '' && /^Week/.test(title)),
		)
		const found = outputs.map(([title]) => {
			const figure = figures[title]
			if (figure === undefined) throw new Error(`no figure is called ${title}`)
			return `${title}: ${figure(folder)}`
		})
		expect(found).toEqual(outputs.map(([title, cell]) => `${title}: ${cell}`))
		expect(found).not.toEqual([])
	})

	test('works out every figure that can stand there', () => {
		const titles = new Set(rows.flatMap(row => [...row.keys()]))
		expect([...titles].sort()).toEqual([...inputs, ...Object.keys(figures)].sort())
	})

	test.each(estimators)('gives the name and the source of %s, and works it out', estimator => {
		expect(page).toMatch(new RegExp(`^\\| \`${estimator}\` +\\|`, 'm'))
		expect(page).toContain(estimatorSource(estimator))
		expect(rows.some(row => row.get('Limits') === `estimate with ${estimator}`)).toBe(true)
	})
})
