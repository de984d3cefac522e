import { describe, expect, test } from 'vitest'
import { problemsOfTexts } from './harness/workspace.ts'

/** A definition of the workspace in place of the library's, and what it does to one code in one small programme. */
interface Override {
	readonly what: string
	readonly code: string
	readonly programme: string
	/** The library's word: how often the code is reported without the definition. */
	readonly before: number
	readonly after: number
	readonly definition: string
	/** What the message then names, where there is one. */
	readonly names?: string
}

const lifter = `
lifter sam-ost "Sam Ost"
  best deadlift 150 kg on 2026-10-01
  best back-squat 120 kg on 2026-10-01
`
const run = `
plan sam-autumn for sam-ost
  start 2026-10-05
  run small
`
const twoPlanks = `block small "Small"
  weeks 1
  session first on monday
    accessory plank 3 x 40 s
  session second on thursday
    accessory plank 3 x 40 s
`
const twoLifts = `block small "Small"
  weeks 1
  targets deadlift
  answers back-rounding
  session first on monday
    main deadlift 3 x 5 at 70%
    accessory plank 3 x 40 s
  session second on thursday
    main deadlift 3 x 5 at 65%
    accessory plank 3 x 40 s
`
const jump = `block small "Small"
  weeks 2
  targets deadlift
  session first on monday
    main deadlift
      week 1: 3 x 5 at 70%
      week 2: 3 x 5 at 75%
`
const gated = `block small "Small"
  weeks 1
  session first on monday
    accessory weighted-plank 3 x 40 s at bodyweight + 10 kg
`
const stepped = `block small "Small"
  weeks 2
  session first on monday
    accessory plank
      week 1: 3 x 40 s
      week 2: skip
    accessory weighted-plank
      week 1: skip
      week 2: 3 x 40 s at bodyweight + 10 kg
`
const plank = (...facts: readonly string[]) =>
	['movement plank "Plank"', 'pattern brace', 'trains stability', 'muscles abdominals 1', ...facts].join('\n  ')

const overrides: readonly Override[] = [
	{
		what: 'a cap that is lower',
		code: 'frequency-cap',
		programme: twoPlanks,
		before: 0,
		after: 1,
		definition: plank('at most 1 session a week'),
		names: '1 a week',
	},
	{
		what: 'days apart',
		code: 'too-close',
		programme: twoPlanks,
		before: 0,
		after: 1,
		definition: plank('apart 4 days'),
		names: '4 days',
	},
	{
		what: 'a range of holds that is shorter',
		code: 'hold-outside-range',
		programme: twoPlanks,
		before: 0,
		after: 2,
		definition: plank('hold 10-30 s'),
		names: '10-30 s',
	},
	{
		what: 'a range of sets that is wider',
		code: 'sets-outside-range',
		programme: twoPlanks.replaceAll('3 x 40 s', '8 x 40 s'),
		before: 2,
		after: 0,
		definition: plank('sets 3-8'),
	},
	{
		what: 'needs that are smaller',
		code: 'missing-stability-work',
		programme: twoLifts,
		before: 1,
		after: 0,
		definition: 'breakdown back-rounding "Ours"\n  weak link stability\n  needs stability 2 sessions a week',
	},
	{
		what: 'what answers',
		code: 'missing-stability-work',
		programme: twoLifts,
		before: 1,
		after: 1,
		definition:
			'breakdown back-rounding "Ours"\n  weak link stability\n  needs stability 1 session a week\n  answered by side-plank',
		names: 'Side plank',
	},
	{
		what: 'a gate that is gone',
		code: 'gate-not-passed',
		programme: gated,
		before: 1,
		after: 0,
		definition:
			'movement weighted-plank "Ours"\n  pattern brace\n  trains stability\n  load added\n\nprogression front-trunk "Ours"\n  step plank\n  step weighted-plank',
	},
	{
		what: 'a gate that is higher',
		code: 'gate-not-passed',
		programme: `${gated}\nlifter sam-ost "Sam Ost"\n  bodyweight 80 kg\n  passed plank held 50 s on 2026-10-01\n`,
		before: 0,
		after: 1,
		definition: 'movement weighted-plank "Ours"\n  pattern brace\n  trains stability\n  load added\n  requires plank held 90 s',
		names: '90 s',
	},
	{
		what: 'a gate between the steps of a progression',
		code: 'gate-order',
		programme: stepped,
		before: 1,
		after: 0,
		definition: 'progression front-trunk "Ours"\n  step plank\n  step weighted-plank after plank held 40 s',
	},
	{
		what: 'a limit of the load',
		code: 'load-jump',
		programme: jump,
		before: 0,
		after: 1,
		definition: 'limits house\n  load rises at most 5% a week',
		names: '5%',
	},
	{
		what: 'a limit of the percent',
		code: 'above-limit',
		programme: jump,
		before: 0,
		after: 1,
		definition: 'limits house\n  no set above 72.5%',
		names: '72.5%',
	},
	{
		what: 'a level and a range of the limits',
		code: 'muscle-volume-low',
		programme: twoPlanks,
		before: 0,
		after: 1,
		definition: 'rules house\n  muscle-volume-low info\n\nlimits house\n  muscle sets 10-25 a week',
		names: '10-25',
	},
]

describe('a definition of the workspace changes what the rules say', () => {
	test.each(overrides)('$what: $code', ({ code, programme, before, after, definition, names }) => {
		const own = programme.includes('lifter ') ? '' : lifter.replace('\n  best', '\n  bodyweight 80 kg\n  best')
		const texts = new Map([['programme.stave', `${programme}${own}${run}`]])
		const said = (all: ReadonlyMap<string, string>) => problemsOfTexts(all).filter(one => one.code === code)
		expect(said(texts)).toHaveLength(before)
		const found = said(new Map([...texts, ['ours.stave', definition]]))
		expect(found).toHaveLength(after)
		for (const { problem } of found) expect(problem.message).toContain(names)
	})
})
