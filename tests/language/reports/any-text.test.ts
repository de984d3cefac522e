import fc from 'fast-check'
import { describe, it } from 'vitest'
import { gateReachedInSchedule, gateState, gatesOf } from '../../../language/compute/gates.ts'
import { schedulePlan } from '../../../language/compute/schedule.ts'
import { definitionKinds } from '../../../language/model/definitions.ts'
import { describe as description } from '../../../language/reports/description.ts'
import { explainItem } from '../../../language/reports/explanation.ts'
import { loadSheet } from '../../../language/reports/load-sheet.ts'
import { weeklyVolume } from '../../../language/reports/weekly-volume.ts'
import type { Folder } from '../../../language/workspace/folder.ts'
import { rebuild } from '../../support/rebuild.ts'
import { anyWorkspaceOf } from '../../support/workspace.ts'

/** Works out all that there is to know of a workspace. */
function workOutAll(folder: Folder): void {
	for (const kind of definitionKinds) for (const definition of folder.all(kind)) description(definition, folder)
	for (const block of folder.all('block')) weeklyVolume(block, folder)
	for (const plan of folder.all('plan')) {
		const schedule = schedulePlan(plan, folder)
		JSON.stringify([loadSheet(schedule, folder), weeklyVolume(plan, folder)])
		for (const { date, items } of schedule.sessions) {
			for (const item of items) {
				explainItem(item, folder)
				for (const { gate } of item.movement ? gatesOf(item.movement, folder) : []) {
					gateReachedInSchedule(gate, schedule, date)
					if (schedule.lifter) gateState(gate, item.movementName.text, schedule.lifter, date, folder)
				}
			}
		}
	}
}

const log = `log mara-lind
  on 2026-10-05 session heavy-pull
    did deadlift 4 x 5 at 112.5 kg rpe 7.5
    felt 7 for 70 min
  on 2026-10-07 missed squat-day because "work"
  on 2026-11-02 session heavy-pull
    felt 6.5 for 1 min 30 s`

const words = `${rebuild}\n${log}`.split(/(\s+)/)
const strange = fc.constantFrom(
	...[
		'0',
		'0 kg',
		'999999999 kg',
		'-5',
		'0%',
		'150%',
		'x',
		'week 52:',
		'each week take 500 reps',
		'at bodyweight - 90 kg',
		'at 37 rm',
		'rpe 0',
	],
	...[
		'rir 40',
		'2026-02-30',
		'1900-01-01',
		'2999-12-31',
		'swap deadlift for nothing',
		'drop plank',
		'days',
		'run hinge-rebuild from 2026-10-07',
		'deload week 1',
		'',
	],
	...[
		'best deadlift 0 kg',
		'base deadlift 0%',
		'estimate with lander',
		'limits l estimate with brzycki',
		'at 50% of base',
		'weeks 1',
	],
)

describe('whatever stands in a text', () => {
	it('everything can be worked out', () => {
		const edits = fc.array(fc.tuple(fc.nat(words.length - 1), strange), { minLength: 1, maxLength: 6 })
		fc.assert(
			fc.property(edits, changes => {
				const text = [...words]
				for (const [at, word] of changes) text[at] = ` ${word} `
				workOutAll(anyWorkspaceOf(text.join('')))
			}),
			{ numRuns: 150 },
		)
	})
})
