import { describe, expect, it } from 'vitest'
import type { Team } from '../../../language/model/definitions.ts'
import type { PreviewProblem } from '../../../language/reports/preview.ts'
import { teamOverview } from '../../../language/reports/team-overview.ts'
import { workspaceOf } from '../../support/workspace.ts'

const folder = workspaceOf(`
movement deadlift "Deadlift"
lifter mara-lind "Mara Lind"
lifter tom-aas "Tom Aas"
lifter per-holst "Per Holst"
block rebuild "Rebuild"
  weeks 2
  deload week 2
  session a on monday
    main deadlift 4 x 5 at 70%
plan mara "Mara, autumn" for mara-lind
  start 2026-10-05
  run rebuild
  meet 2026-10-24 "Regionals"
plan tom for tom-aas
  start 2026-10-12
  run rebuild
team juniors "Juniors"
  members mara-lind, tom-aas, per-holst
`)
const problem = (file: string): PreviewProblem => ({
	file,
	line: 1,
	column: 1,
	code: 'frequency-cap',
	level: 'warning',
	message: 'm',
	source: null,
	place: { uri: file, range: { start: { line: 0, character: 0 }, end: { line: 0, character: 1 } } },
})

describe('the overview of a team', () => {
	folder.setToday('2026-10-14')
	const team = folder.find('team', 'juniors') as Team
	const overview = teamOverview(team, folder, plan =>
		plan.name.text === 'mara' ? [problem('shared.stave'), problem('mara.stave')] : [problem('shared.stave')],
	)

	it('has a column for each week with a session or a meet', () => {
		expect(overview.today).toBe('2026-10-14')
		expect(overview.weeks).toEqual(['2026-10-05', '2026-10-12', '2026-10-19'])
	})

	it('says who is in which week of which block', () => {
		const weeks = overview.members.map(({ title, plans }) => [
			title,
			plans.map(plan => plan.weeks.map(week => week && [week.block, week.week, week.of, week.deload, week.meets])),
		])
		expect(weeks).toEqual([
			[
				'Mara Lind',
				[
					[
						['rebuild', 1, 2, false, []],
						['rebuild', 2, 2, true, []],
						['', null, 0, false, ['Regionals']],
					],
				],
			],
			['Tom Aas', [[null, ['rebuild', 1, 2, false, []], ['rebuild', 2, 2, true, []]]]],
			['Per Holst', []],
		])
	})

	it('has each problem once, and says whose plan has it', () => {
		expect(overview.problems.map(({ file }) => file)).toEqual(['shared.stave', 'mara.stave'])
		expect(overview.members.map(({ plans }) => plans.map(plan => plan.problems))).toEqual([[[0, 1]], [[0]], []])
	})
})
