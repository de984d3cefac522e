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

const oneItem = (item: string, ...lines: readonly string[]) =>
	['block small "Small"', '  weeks 1', ...lines, '  session first on monday', `    ${item}`, ''].join('\n')
const heavy = `block small "Small"
  weeks 1
  session first on monday
    main back-squat 3 x 3 at 86%
  session second on wednesday
    main deadlift 3 x 2 at 86%
  session third on saturday
    main back-squat 3 x 3 at 86%
`
const growing = `block small "Small"
  weeks 2
  targets back-squat
  session first on monday
    main back-squat
      week 1: 10 x 5 at 65%
      week 2: 14 x 5 at 65%
`
const long = `block small "Small"
  weeks 6
  targets back-squat
  session first on monday
    main back-squat 5 x 5 at 70%
`
const limits = (line: string, owner = '') => `limits house "House"${owner}\n  ${line}`
const club = `lifter sam-ost "Sam Ost"
  bodyweight 80 kg
  best deadlift 150 kg on 2026-08-01
  passed plank held 60 s on 2026-08-01
`

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
		what: 'a range of reps',
		code: 'reps-outside-range',
		programme: oneItem('accessory romanian-deadlift 3 x 5 at 50%'),
		before: 1,
		after: 0,
		definition: 'movement romanian-deadlift "Ours"\n  pattern hinge\n  reps 4-8\n  percent of deadlift',
	},
	{
		what: 'a range of metres',
		code: 'carry-outside-range',
		programme: oneItem('accessory suitcase-carry 3 x 60 m at 20 kg each side'),
		before: 1,
		after: 0,
		definition: 'movement suitcase-carry "Ours"\n  pattern carry\n  carry 10-80 m',
	},
	{
		what: 'a range of percents',
		code: 'intensity-outside-range',
		programme: oneItem('main deadlift 3 x 3 at 80%'),
		before: 0,
		after: 1,
		definition: 'movement deadlift "Ours"\n  pattern hinge\n  intensity 50-75%',
		names: '50-75%',
	},
	{
		what: 'a cap from another percent',
		code: 'frequency-cap',
		programme: twoLifts,
		before: 0,
		after: 1,
		definition: 'movement deadlift "Ours"\n  pattern hinge\n  at most 1 session a week from 60%',
		names: '60%',
	},
	{
		what: 'roles',
		code: 'role-not-allowed',
		programme: oneItem('accessory back-squat 3 x 5 at 60%'),
		before: 1,
		after: 0,
		definition: 'movement back-squat "Ours"\n  pattern squat\n  role main, accessory',
	},
	{
		what: 'what it may stand before',
		code: 'order-in-session',
		programme: oneItem('accessory strict-bent-row 5 x 12 at 40 kg\n    main deadlift 3 x 5 at 60%'),
		before: 1,
		after: 0,
		definition: 'movement strict-bent-row "Ours"\n  pattern row\n  trains drive',
	},
	{
		what: 'a percent of another lift',
		code: 'no-best',
		programme: oneItem('accessory front-squat 3 x 5 at 60%'),
		before: 1,
		after: 0,
		definition: 'movement front-squat "Ours"\n  pattern squat\n  percent of back-squat at 80%',
	},
	{
		what: 'a weak link',
		code: 'missing-drive-work',
		programme: twoLifts,
		before: 0,
		after: 1,
		definition: 'breakdown back-rounding "Ours"\n  weak link drive\n  needs drive 3 sets a week',
		names: 'drive 0 of 3 sets',
	},
	{
		what: 'a caution',
		code: 'pain-caution',
		programme: `lifter sam-ost "Sam Ost"\n  fails deadlift with back-rounding\n${oneItem('accessory plank 3 x 40 s')}`,
		before: 0,
		after: 1,
		definition: 'breakdown back-rounding "Ours"\n  weak link stability\n  caution "Ask a clinician first."',
		names: 'Ask a clinician first.',
	},
	{
		what: 'a limit of the volume',
		code: 'volume-jump',
		programme: growing,
		before: 1,
		after: 0,
		definition: limits('volume rises at most 50% a week'),
	},
	{
		what: 'how often a lighter week comes',
		code: 'no-lighter-week',
		programme: long,
		before: 0,
		after: 1,
		definition: limits('a lighter week every 3-4 weeks'),
		names: '3-4 weeks',
	},
	{
		what: 'from when a set is heavy',
		code: 'heavy-exposures',
		programme: heavy.replace('deadlift 3 x 2', 'back-squat 3 x 2'),
		before: 1,
		after: 0,
		definition: limits('heavy from 90% at most 2 sessions a week for one lift'),
	},
	{
		what: 'heavy sessions together',
		code: 'heavy-exposures',
		programme: heavy,
		before: 0,
		after: 1,
		definition: limits('heavy hinge and squat at most 2 sessions a week, apart 1 day'),
		names: '2 a week',
	},
	{
		what: 'days between heavy sessions',
		code: 'heavy-back-to-back',
		programme: heavy,
		before: 0,
		after: 1,
		definition: limits('heavy hinge and squat at most 3 sessions a week, apart 3 days'),
		names: '3 days',
	},
	{
		what: 'the length of a session',
		code: 'session-too-long',
		programme: oneItem('main deadlift 6 x 5 at 60% rest 3 min'),
		before: 0,
		after: 1,
		definition: limits('session at most 15 min'),
		names: '15 min',
	},
	{
		what: 'the age of a best',
		code: 'stale-best',
		programme: `${club}${oneItem('main deadlift 3 x 5 at 60%')}`,
		before: 0,
		after: 1,
		definition: limits('bests no older than 8 weeks'),
		names: '8 weeks',
	},
	{
		what: 'the age of a gate',
		code: 'gate-stale',
		programme: `${club}${oneItem('accessory weighted-plank 3 x 40 s at 5 kg')}`,
		before: 0,
		after: 1,
		definition: limits('gates no older than 8 weeks'),
		names: '8 weeks',
	},
	{
		what: 'the formula',
		code: 'beyond-rep-max',
		programme: oneItem('main deadlift 3 x 4 at 90%'),
		before: 0,
		after: 1,
		definition: limits('estimate with lombardi'),
		names: 'Lombardi',
	},
	{
		what: 'a limit for one lifter',
		code: 'above-limit',
		programme: jump,
		before: 0,
		after: 1,
		definition: limits('no set above 72.5%', ' for sam-ost'),
		names: '72.5%',
	},
	{
		what: 'a limit for a team',
		code: 'above-limit',
		programme: jump,
		before: 0,
		after: 1,
		definition: `team small-team "Small team"\n  members sam-ost\n\n${limits('no set above 72.5%', ' for small-team')}`,
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
