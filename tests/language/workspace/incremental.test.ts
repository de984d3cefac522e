import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { weeklyVolume } from '../../../language/reports/weekly-volume.ts'
import { type FileProblem, fileProblems } from '../../../language/workspace/file-problems.ts'
import { Folder } from '../../../language/workspace/folder.ts'
import { judge } from '../../../language/workspace/problems.ts'
import { TextReader } from '../../../language/workspace/text-file.ts'
import { textsBelow } from '../../support/texts.ts'

/**
 * The club, and what it has for many: a plan for a team, with lines for some of its members. It is short: most of the time goes into
 * looking for its corrections, each of which judges the plan anew.
 */
const forATeam = `team platform "Platform"
  members mara-lind, tom-aas, per-holst

plan winter "Winter" for platform
  start 8 weeks before 2027-03-20
  pause 2027-02-01 to 2027-02-07 because "holidays"
  for tom-aas
    start 2027-02-08
  run peak-three 2 times, each time add 2.5 kg
    swap strict-bent-row for chest-supported-row 4 x 10 rir 2 in week 2
    for per-holst
      swap plank for side-plank
      move pull-day from 2027-02-15 to 2027-02-17
      allow frequency-cap because "camp"
  meet 2027-03-20
`
const club = [...Object.entries(textsBelow('examples/club')), ['plans/winter.stave', forATeam] as const]

/** Everything that a person could see of a folder. */
function seen(folder: Folder) {
	const plain = (problem: FileProblem) => JSON.stringify(problem)
	return {
		problems: folder.fileUris().map(uri => [uri, fileProblems(folder, uri).map(plain)]),
		volumes: folder.all('plan').map(plan => JSON.stringify(weeklyVolume(plan, folder))),
		names: folder.fileUris().map(uri => folder.file(uri)!.parts.map(part => [part.start, part.text, part.definition?.name.text])),
	}
}

function fresh(texts: ReadonlyMap<string, string>): Folder {
	const folder = new Folder(new TextReader())
	for (const [uri, text] of texts) folder.setFile(uri, text)
	return folder
}

/** What people do to a text: a word put in, taken out or put in place of another, a line moved. */
const edit = fc.record({
	file: fc.nat(),
	at: fc.double({ min: 0, max: 1, noNaN: true }),
	remove: fc.integer({ min: 0, max: 30 }),
	insert: fc.constantFrom(
		...['', ' ', '\n', '5', '0', 'x', '"', '/*', '*/', '// ', 'block ', 'deadlift', 'plank', '4 x 5 at 80%', 'week 2: skip\n'],
		...[
			'blok ',
			'72,5',
			'@',
			'plan p for mara-lind\n',
			'limits other\n  no set above 90%\n',
			'rules r\n  frequency-cap off\n',
			'for per-holst\n',
			'pause 2026-10-19 to 2026-11-01\n',
			'members tom-aas, ',
			'\r\n',
		],
	),
	kind: fc.constantFrom('edit', 'edit', 'edit', 'edit', 'remove file', 'put file back'),
})

describe('a folder that is edited', () => {
	it('shows what one that is read afresh shows, after any edits in any order', () => {
		fc.assert(
			fc.property(fc.array(edit, { minLength: 1, maxLength: 12 }), fc.boolean(), (edits, looksBetween) => {
				const texts = new Map(club)
				const folder = fresh(texts)
				seen(folder)
				for (const { file, at, remove, insert, kind } of edits) {
					const [uri, original] = club[file % club.length]!
					if (kind === 'remove file') {
						texts.delete(uri)
						folder.removeFile(uri)
					} else {
						const before = kind === 'edit' ? (texts.get(uri) ?? original) : original
						const offset = Math.floor(at * before.length)
						const text = kind === 'edit' ? before.slice(0, offset) + insert + before.slice(offset + remove) : original
						texts.set(uri, text)
						folder.setFile(uri, text)
					}
					if (looksBetween) seen(folder)
				}
				expect(seen(folder)).toEqual(seen(fresh(texts)))
			}),
			{ numRuns: 24 },
		)
	})

	it('keeps the definitions that an edit does not touch', () => {
		const reader = new TextReader()
		const folder = new Folder(reader)
		for (const [uri, text] of club) folder.setFile(uri, text)
		const before = { ...reader.counters }
		const [uri, text] = club.find(([name]) => name.startsWith('blocks/'))!
		folder.setFile(uri, text.replace(/weeks (\d+)/, 'weeks 9'))
		expect(reader.counters.definitionsRead - before.definitionsRead).toBe(1)
	})

	it('works out one member of a team anew where only that one has changed', () => {
		const folder = new Folder(new TextReader())
		const lifters = Array.from({ length: 30 }, (_, index) => `lifter-${index + 1}`)
		folder.setFile(
			'plan.stave',
			`team all\n  members ${lifters.join(', ')}\nblock b\n  weeks 4\n  session s on monday\n    main deadlift 4 x 5 at 70%\nplan winter for all\n  start 2026-10-05\n  run b\n`,
		)
		for (const name of lifters) folder.setFile(`${name}.stave`, `lifter ${name}\n  best deadlift 160 kg on 2026-09-12\n`)
		seen(folder)
		const before = folder.timesWorkedOut(judge)
		folder.setFile('lifter-7.stave', 'lifter lifter-7\n  best deadlift 165 kg on 2026-09-12\n')
		seen(folder)
		// The lifter, the lifter's plan, and the text of the plan and of the team that name the lifter.
		expect(folder.timesWorkedOut(judge) - before).toBeLessThanOrEqual(4)
	})
})
