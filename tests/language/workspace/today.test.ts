import { expect, test } from 'vitest'
import type { Plan } from '../../../language/model/definitions.ts'
import type { Programme } from '../../../language/model/programme.ts'
import { fileProblems } from '../../../language/workspace/file-problems.ts'
import { pathOf } from '../rules/harness/markdown.ts'
import { folderOf, textsBelow } from '../rules/harness/workspace.ts'

const folder = folderOf(textsBelow(pathOf('examples/faults/missed-work')))
const missed = () => fileProblems(folder, 'lena.stave').filter(problem => problem.code === 'missed-work').length

test('another day is taken in, and can be taken back', () => {
	const found = ['2026-10-20', '2026-12-24', undefined].map(day => {
		folder.setToday(day)
		return missed()
	})
	expect(found).toEqual([1, 0, 1])
})

test('what asks for no day is not worked out again', () => {
	const runs = (plan: Plan, programme: Programme) => programme.find('block', plan.runs[0]?.block.text ?? '')
	const plan = folder.plansOf('lena-sol')[0]!
	folder.derived(plan, runs)
	folder.setToday('2027-01-01')
	folder.derived(plan, runs)
	expect(folder.timesWorkedOut(runs)).toBe(1)
})
