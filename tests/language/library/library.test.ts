import { describe, expect, test } from 'vitest'
import { libraryFiles } from '../../../language/library/index.ts'
import type { Movement } from '../../../language/model/definitions.ts'
import { muscles, patterns } from '../../../language/model/vocabulary.ts'
import { library } from '../../../language/workspace/library.ts'
import { corrected, described, isAtLeast, problemsOfTexts } from '../rules/harness/workspace.ts'

const movements = library().all('movement')
const definitions = [...library().places.keys()]

test('the library reads without a fault when it is a workspace itself', () => {
	const found = problemsOfTexts(new Map(libraryFiles.map(({ path, text }) => [path, text])))
	expect(described(found.filter(one => isAtLeast(one.problem.level, 'warning')))).toEqual([])
})

test('no definition stands twice', () => {
	const names = definitions.map(one => `${one.kind} ${one.name.text}`)
	expect(names).toEqual([...new Set(names)])
})

test('everything names its source', () => {
	expect(definitions.filter(one => !one.source).map(one => one.name.text)).toEqual([])
})

test('a club finds its movements', () => {
	expect(movements.length).toBeGreaterThanOrEqual(60)
	const used = new Set(movements.map(one => one.pattern?.value))
	expect([...used].every(pattern => patterns.includes(pattern as (typeof patterns)[number]))).toBe(true)
	for (const pattern of ['hinge', 'squat', 'single-leg', 'press', 'push-up', 'row', 'pull', 'carry', 'brace']) {
		expect(used).toContain(pattern)
	}
})

test('every movement has a title, a pattern and muscles with shares of 1 or 0.5', () => {
	for (const { name, title, pattern, muscles: shares } of movements) {
		expect(title, name.text).toBeDefined()
		expect(pattern, name.text).toBeDefined()
		expect(shares.length, name.text).toBeGreaterThan(0)
		for (const { muscle, share } of shares) {
			expect(muscles).toContain(muscle)
			expect([0.5, 1]).toContain(share.valueOf())
		}
	}
})

test('a movement that trains stability first is never main work', () => {
	const asMain = movements.filter(one => one.trains?.value[0] === 'stability' && (one.roles?.value ?? ['main']).includes('main'))
	expect(asMain.map(one => one.name.text)).toEqual([])
})

/** Common practice: link, roles, sets, reps or hold or carry, and the most sessions a week. */
describe.each([
	['deadlift', 'drive, stability', 'main', '', '', '2 from 75%'],
	['back-squat', 'drive, stability', 'main', '', '', '3 from 75%'],
	['bench-press', 'drive', 'main, accessory', '', '', ''],
	['safety-bar-good-morning', 'stability', 'accessory', '3-5', '5-8 reps', '1'],
	['strict-bent-row', 'stability', 'accessory', '5-10', '10-20 reps', '2'],
	['plank', 'stability', 'accessory', '3-6', '30-90 s', '3'],
	['side-plank', 'stability', 'accessory', '3-6', '30-90 s', '3'],
	['weighted-plank', 'stability', 'accessory', '3-6', '30-90 s', '3'],
	['rollout', 'stability', 'accessory', '3-6', '', '3'],
	['suitcase-hold', 'stability', 'accessory', '3-6', '30-90 s', '3'],
	['suitcase-carry', 'stability', 'accessory', '3-6', '10-40 m', '3'],
	['cambered-bar-good-morning', 'drive', 'main, accessory', '3-5', '3-10 reps', '1'],
	['box-squat', 'drive', 'main, accessory', '3-8', '3-5 reps', '1'],
	['high-handle-hex-bar-deadlift', 'drive', 'main, accessory', '3-5', '5-8 reps or one set of 12-15', '1'],
	['romanian-deadlift', 'drive, stability', 'accessory', '3-5', '6-15 reps', '2'],
])('%s', (name, trains, roles, sets, work, caps) => {
	test('has its links, its roles, its dose and its limit', () => {
		const movement = library().find('movement', name)
		expect(movement && factsOf(movement)).toEqual({ trains, roles, sets, work, caps })
	})
})

/** Common practice: weak links, needs, and what answers them. */
const breakdowns: readonly (readonly [name: string, weakLink: string, needs: readonly string[], answers: number])[] = [
	['back-rounding', 'stability', ['stability 2 sessions', 'stability 6 sets', 'upper-back 4 sets'], 8],
	['upper-back-folding', 'stability', ['stability 2 sessions', 'stability 6 sets', 'upper-back 6 sets'], 8],
	['lats-unlock', 'stability', ['stability 2 sessions', 'stability 4 sets', 'lats 4 sets'], 7],
	['low-back-pressure', 'stability', ['stability 2 sessions', 'stability 6 sets'], 4],
	['slow-off-the-floor', 'drive', ['drive 2 sessions', 'drive 4 sets'], 3],
	['stalls-below-the-knee', 'drive', ['drive 2 sessions', 'drive 6 sets'], 4],
	['soft-lockout', 'drive', ['drive 1 sessions', 'drive 4 sets'], 3],
	['good-morning-squat', 'stability', ['stability 2 sessions', 'stability 4 sets'], 10],
	['chest-caves', 'stability', ['stability 2 sessions', 'upper-back 3 sets'], 11],
	['knees-cave-in', 'stability', ['glutes 4 sets'], 13],
	['stalls-out-of-the-hole', 'drive', ['drive 1 sessions', 'drive 4 sets'], 12],
	['stalls-off-the-chest', 'drive', ['drive 1 sessions', 'chest 3 sets'], 6],
	['shoulders-roll-forward', 'stability', ['upper-back 4 sets'], 10],
	['leans-back', 'stability', ['stability 2 sessions', 'stability 4 sets'], 12],
	['stalls-at-the-forehead', 'drive', ['drive 1 sessions', 'drive 3 sets'], 6],
	['arms-do-not-finish', 'drive', ['triceps 3 sets'], 10],
]

test('the table holds every breakdown', () => {
	expect(
		library()
			.all('breakdown')
			.map(one => one.name.text)
			.sort(),
	).toEqual(breakdowns.map(([name]) => name).sort())
})

test.each(breakdowns)('%s', (name, weakLink, needs, answers) => {
	const breakdown = library().find('breakdown', name)
	expect(breakdown?.weakLinks?.value).toEqual([weakLink])
	expect(breakdown?.needs.map(need => `${need.what} ${need.amount.valueOf()} ${need.unit}`)).toEqual(needs)
	expect(breakdown?.answeredBy).toHaveLength(answers)
	for (const { text } of breakdown?.answeredBy ?? []) {
		const movement = library().find('movement', text)
		const trained = [...(movement?.trains?.value ?? []), ...(movement?.muscles ?? []).map(one => one.muscle)]
		const asked = [weakLink, ...(breakdown?.needs ?? []).map(need => need.what)]
		expect(
			trained.filter(one => asked.includes(one)),
			`${text} answers ${name}`,
		).not.toEqual([])
	}
	expect(breakdown?.caution !== undefined).toBe(name === 'low-back-pressure')
})

/** The lift that a breakdown is told of. */
const liftOf: Readonly<Record<string, string>> = {
	'good-morning-squat': 'back-squat',
	'chest-caves': 'back-squat',
	'knees-cave-in': 'back-squat',
	'stalls-out-of-the-hole': 'back-squat',
	'stalls-off-the-chest': 'bench-press',
	'shoulders-roll-forward': 'bench-press',
	'leans-back': 'overhead-press',
	'stalls-at-the-forehead': 'overhead-press',
	'arms-do-not-finish': 'bench-press',
}

test.each(breakdowns)('a week of %s alone is short of its needs, and the fix meets them', (name, weakLink) => {
	const lift = liftOf[name] ?? 'deadlift'
	const sessions = ['monday', 'thursday'].map(day => `  session ${day} on ${day}\n    main ${lift} 3 x 5 at 70%\n`)
	const text = `block only "Only the lift"\n  weeks 1\n  targets ${lift}\n  answers ${name}\n${sessions.join('')}`
	const missing = (shown: string) =>
		problemsOfTexts(new Map([['only.stave', shown]])).filter(one => one.code === `missing-${weakLink}-work`)
	const [found, ...more] = missing(text)
	expect(more).toEqual([])
	const [fix] = found?.problem.corrections ?? []
	expect(fix, found?.problem.message).toBeDefined()
	const fixed = corrected(text, fix?.edits ?? [])
	expect(described(missing(fixed))).toEqual([])
})

function factsOf(movement: Movement) {
	const { sets, reps, holdSeconds, carryMetres, caps } = movement
	const range = (one: { from: unknown; to: unknown }) => `${one.from}-${one.to}`
	const exactRange = (one: { from: { valueOf(): number }; to: { valueOf(): number } }) =>
		`${one.from.valueOf()}-${one.to.valueOf()}`
	const one = reps?.orOneSetOf ? ` or one set of ${range(reps.orOneSetOf)}` : ''
	return {
		trains: (movement.trains?.value ?? []).join(', '),
		roles: (movement.roles?.value ?? []).join(', '),
		sets: sets ? range(sets.value) : '',
		work: [
			reps ? `${range(reps.value)} reps${one}` : '',
			holdSeconds ? `${exactRange(holdSeconds.value)} s` : '',
			carryMetres ? `${exactRange(carryMetres.value)} m` : '',
		].join(''),
		caps: caps.map(cap => `${cap.sessions}${cap.fromPercent ? ` from ${cap.fromPercent.valueOf()}%` : ''}`).join(', '),
	}
}
