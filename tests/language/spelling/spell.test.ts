import { expect, test } from 'vitest'
import { formatText } from '../../../language/formatting/format.ts'
import { TextReader } from '../../../language/workspace/text-file.ts'

const reader = new TextReader()

/** Headers that the lines in question stand under. */
const inItem = 'block b "B"\n\n  session s on monday\n    main deadlift\n      '
const inSession = 'block b "B"\n\n  session s on monday\n    '
const inMovement = 'movement m "M"\n  '
const inLimits = 'limits l\n  '
const inLifter = 'lifter l "L"\n  '
const inGym = 'gym g "G"\n  '
const inRun = 'plan p for mara-lind\n  run b\n    '
const inLog = 'log mara-lind\n  on 2026-10-05 session s\n    '

const spellings: readonly (readonly [under: string, written: string, ours: string])[] = [
	[inSession, 'main deadlift 4x5 at 70%', 'main deadlift 4 x 5 at 70%'],
	[inSession, 'main deadlift 4×5 at 70 %', 'main deadlift 4 x 5 at 70%'],
	[inSession, 'main deadlift 4X5 at 100kg', 'main deadlift 4 x 5 at 100 kg'],
	[inSession, 'main deadlift 3–4 x 6 to 8 at 70 — 75%', 'main deadlift 3-4 x 6-8 at 70-75%'],
	[inSession, 'main deadlift 4 x 5 at 70%-75%', 'main deadlift 4 x 5 at 70-75%'],
	[inSession, 'main deadlift 4 x 5 at 70% to 75', 'main deadlift 4 x 5 at 70-75%'],
	[inSession, 'main deadlift 4 x 5 at 70%-75 of base', 'main deadlift 4 x 5 at 70-75% of base'],
	[inSession, 'main deadlift ramp 4x4 from 60 to 78', 'main deadlift ramp 4 x 4 from 60% to 78%'],
	[inSession, 'main deadlift ramp 4 x 4 from 60% to 78', 'main deadlift ramp 4 x 4 from 60% to 78%'],
	[inSession, 'main deadlift 1x3 at 80%,3x3 at 92% of top set', 'main deadlift 1 x 3 at 80%, 3 x 3 at 92% of top set'],
	[inSession, 'main deadlift 4 x 5 reps rpe 7–8', 'main deadlift 4 x 5 rpe 7-8'],
	[inSession, 'main deadlift 4 x 6 to 8 reps to failure', 'main deadlift 4 x 6-8 to failure'],
	[inSession, 'main deadlift 4 x 5 at 70% rpe at   most 8', 'main deadlift 4 x 5 at 70% rpe at most 8'],
	[inSession, 'main deadlift 4 x 5 tempo 4–1–X–0 rest 90s', 'main deadlift 4 x 5 tempo 4-1-x-0 rest 90 s'],
	[inSession, 'main pull-up 4 x 5 at bodyweight+10kg', 'main pull-up 4 x 5 at bodyweight + 10 kg'],
	[inSession, 'main pull-up 4 x 5 at bodyweight −10 kg', 'main pull-up 4 x 5 at bodyweight - 10 kg'],
	[inSession, 'accessory plank 3x1min 30s each   side', 'accessory plank 3 x 1 min 30 s each side'],
	[
		inSession,
		'main deadlift 4x6 in clusters of 2 resting 20s at 80%',
		'main deadlift 4 x 6 in clusters of 2 resting 20 s at 80%',
	],
	[inSession, 'main deadlift up   to 5×3 at 80% until rpe 9', 'main deadlift up to 5 x 3 at 80% until rpe 9'],
	[inSession, 'main stone 2x60s for rep', 'main stone 2 x 60 s for reps'],
	[inSession, 'main stone 2 x 1min 30s for reps', 'main stone 2 x 1 min 30 s for reps'],
	[
		inSession,
		'main yoke-walk 1x20m for time at 150–200 % of bodyweight',
		'main yoke-walk 1 x 20 m for time at 150-200% of bodyweight',
	],
	[inItem, 'superset', 'with the item above'],
	[inItem, 'note “Say \\"now\\" first”', 'note "Say \\"now\\" first"'],
	[inItem, 'each week add 1 reps', 'each week add 1 rep'],
	[inItem, 'each week add 2 rep', 'each week add 2 reps'],
	[inItem, 'each week add 2.5kg', 'each week add 2.5 kg'],
	[inItem, 'each session add 2.5kg', 'each session add 2.5 kg'],
	[inItem, 'each week take 0.5rpe', 'each week take 0.5 rpe'],
	[inItem, 'once 3×45s reached move to weighted-plank 3x30s', 'once 3 x 45 s reached move to weighted-plank 3 x 30 s'],
	['block b "B"\n\n  ', 'session s on day 1 ,day 3 evening', 'session s on day 1, 3 evening'],
	['block b "B"\n\n  ', 'session s on monday   morning,thursday', 'session s on monday morning, thursday'],
	['block b "B"\n  ', 'turn a,b over day 1,day 2 , 3', 'turn a, b over day 1, 2, 3'],
	[inItem, 'once 3x12 reps reached add 1 reps', 'once 3 x 12 reached add 1 rep'],
	[inItem, 'week 1 to 3,5 : 4x5', 'week 1-3, 5: 4 x 5'],
	['block b "B"\n  ', 'deload weeks 4,8 with 60 of sets at 90 of load', 'deload week 4, 8 with 60% of sets at 90% of load'],
	[inMovement, 'at most 1 sessions a week from 75', 'at most 1 session a week from 75%'],
	[inMovement, 'at most 3 session a week', 'at most 3 sessions a week'],
	[inMovement, 'apart 1 days', 'apart 1 day'],
	[inMovement, 'apart 2 day', 'apart 2 days'],
	[inMovement, 'intensity 60–85', 'intensity 60-85%'],
	[inMovement, 'reps 5 to 8 or one set of 12 to 15', 'reps 5-8 or one set of 12-15'],
	[inMovement, 'percent of deadlift at 80', 'percent of deadlift at 80%'],
	[inMovement, 'requires front-squat 1 reps at 80kg', 'requires front-squat 1 rep at 80 kg'],
	[inMovement, 'requires plank held 45s x3 sets in 2 session', 'requires plank held 45 s x 3 in 2 sessions'],
	[inMovement, 'requires plank held 45 s in 1 sessions', 'requires plank held 45 s in 1 session'],
	[inMovement, 'requires deadlift at 1.5×bodyweight', 'requires deadlift at 1.5 x bodyweight'],
	[inMovement, 'requires deadlift 5 rep at 1x bodyweight x2', 'requires deadlift 5 reps at 1 x bodyweight x 2'],
	[inMovement, 'requires front-squat 5 rep at 80 kg', 'requires front-squat 5 reps at 80 kg'],
	['breakdown b "B"\n  ', 'needs stability 1 sets a week', 'needs stability 1 set a week'],
	['breakdown b "B"\n  ', 'needs drive 0.5 set a week', 'needs drive 0.5 sets a week'],
	[inLimits, 'load rises at most 10 a week', 'load rises at most 10% a week'],
	[inLimits, 'a lighter week every 4 to 6 week', 'a lighter week every 4-6 weeks'],
	[inLimits, 'a lighter week every 1 weeks', 'a lighter week every 1 week'],
	[inLimits, 'heavy from 85 at most 2 session a week', 'heavy from 85% at most 2 sessions a week'],
	[
		inLimits,
		'heavy hinge and squat at most 3 session a week apart 1 days',
		'heavy hinge and squat at most 3 sessions a week, apart 1 day',
	],
	[inLimits, 'bests no older than 1 weeks', 'bests no older than 1 week'],
	[inLimits, 'no set above 100', 'no set above 100%'],
	[inGym, 'plates 25kg x4,20kg×2', 'plates 25 kg x 4, 20 kg x 2'],
	[inGym, 'dumbbells 2 to 50 by 2kg', 'dumbbells 2-50 kg by 2 kg'],
	[inGym, 'stack lat-pulldown 5–100lb by 5lb', 'stack lat-pulldown 5-100 lb by 5 lb'],
	[inLifter, 'fails deadlift with back-rounding above 80', 'fails deadlift with back-rounding above 80%'],
	[inLifter, 'bodyweight ７２ kg', 'bodyweight 72 kg'],
	[inLifter, 'uses   light-barbell as barbell', 'uses light-barbell as barbell'],
	['', 'limits youth   for juniors', 'limits youth for juniors'],
	[inLifter, 'keep deadlift to 82.5', 'keep deadlift to 82.5%'],
	[inLifter, 'best back-squat 112.5kg×3 rpe 9', 'best back-squat 112.5 kg x 3 rpe 9'],
	[inRun, 'scale deadlift 95', 'scale deadlift 95%'],
	[inRun, 'add accessory plank 3 x 8 reps to heavy-pull', 'add accessory plank 3 x 8 to heavy-pull'],
	[inLog, 'did deadlift 8 reps,8 reps, 1 rep at 80kg', 'did deadlift 8, 8, 1 at 80 kg'],
	[inLog, 'felt 7 for 1min 30s', 'felt 7 for 1 min 30 s'],
]

test.each(spellings)('%j %s → %s', (under, written, ours) => {
	expect(formatText(`${under}${written}\n`, reader)).toBe(`${under}${ours}\n`)
})

test.each(spellings)('%j stays as it is: %s → %s', (under, _, ours) => {
	expect(formatText(`${under}${ours}\n`, reader)).toBe(`${under}${ours}\n`)
})

const isLaidOut = (text: string) => text.replace(/\s+/g, '').replaceAll(',', ', ')
const respelled = spellings.filter(
	([, written, ours]) => isLaidOut(written) !== isLaidOut(ours) || /\d(kg|min|x|×)/.test(written),
)

test.each(respelled)('%j %s is reported, with the change that the formatter makes', (under, written, ours) => {
	const [part] = reader.read('file:///test.stave', under + written).parts
	const found = part!.faults.filter(fault => fault.code === 'old-spelling')
	expect(found).toHaveLength(1)
	const edits = found[0]!.corrections[0]!.edits
	const corrected = edits.reduceRight(
		(text, { span, text: by }) => text.slice(0, span.start) + by + text.slice(span.end),
		part!.text,
	)
	expect(formatText(corrected, reader)).toBe(formatText(under + ours, reader))
	const left = reader.read('file:///test.stave', corrected).parts.flatMap(one => one.faults)
	expect(left.filter(fault => fault.code === 'old-spelling')).toEqual([])
})

test('what is formatted has no old spelling left', () => {
	const faults = spellings.flatMap(([under, written]) => {
		const formatted = formatText(`${under}${written}`, reader)
		return reader.read('file:///test.stave', formatted).parts.flatMap(part => part.faults.map(fault => [fault.code, formatted]))
	})
	expect(faults.filter(([code]) => code === 'old-spelling')).toEqual([])
})

test('a name that is a word of the language stays a name', () => {
	const text =
		'movement reps "Reps"\n  requires set held 45 s\n\nplan to for sessions\n  run weeks\n    drop superset\n    move day to monday\n'
	expect(formatText(text, reader)).toBe(text)
})

test.each([
	['a decimal comma', inLifter, 'bodyweight 72,5 kg'],
	['a date in another order', inLifter, 'best deadlift 100 kg on 5.10.2026'],
	['a missing unit', inLifter, 'bodyweight 72'],
	['a range upside down', inMovement, 'sets 5-3'],
	['a word of no list', inMovement, 'pattern hnge'],
	['a fact stated twice', inMovement, 'pattern hinge\n  pattern squat'],
])('%s is laid out, not corrected', (_, under, line) => {
	expect(formatText(`${under}   ${line}   \n`, reader)).toBe(`${under}${line}\n`)
})
