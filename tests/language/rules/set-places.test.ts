import { expect, test } from 'vitest'
import { problemsOfTexts } from './harness/workspace.ts'

const text = `block two-loads "Two loads"
  weeks 1
  session pull-day on monday
    main deadlift 3 x 3 at 75%, 1 x 2 at 85%

lifter lena-sol "Lena Sol"
  best deadlift 120 kg on 2026-09-12
  fails deadlift with back-rounding above 80%
  keep deadlift to 80%

plan lena-autumn for lena-sol
  start 2026-10-05
  run two-loads
`

// The set that is too heavy, not the item with all its sets.
test.each(['past-position-limit', 'over-ceiling'])('%s leads to the set itself', code => {
	const found = problemsOfTexts(new Map([['1.stave', text]])).find(one => one.code === code)
	const [place] = found!.problem.related
	expect([text.slice(place!.start, place!.end), place!.message]).toEqual(['1 x 2 at 85%', '85% on 2026-10-05.'])
})
