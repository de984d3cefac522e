import { daysBetween } from '../../compute/calendar.ts'
import { reserveOf } from '../../compute/effort.ts'
import { estimateMax, estimateText, estimatorSource } from '../../compute/estimates.ts'
import { decimal, exact, hundred, zero } from '../../compute/exact.ts'
import { limitsFor } from '../../compute/limits.ts'
import { bodyIn } from '../../compute/loads/reference.ts'
import { type DatedEntry, entriesOf } from '../../compute/logged-sessions.ts'
import { inUnit, massText } from '../../compute/mass.ts'
import type { Best, Lifter, LoggedSet } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { Exact, Mass, Unit } from '../../model/quantities.ts'
import type { Estimator } from '../../model/vocabulary.ts'
import { groupedBy } from '../common/groups.ts'
import { titleOf } from '../common/titles.ts'
import { counted } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import page from './new-best.md'
import { plannedSessions } from './planned-sessions.ts'

/** Percent over the best from which an estimate is worth writing down. */
const least = exact(1)
/** Percent over the best from which a slip of the pen is likelier: common practice. */
const likelySlip = exact(50)
/** Source: Reynolds, Gordon, Robergs 2006, J Strength Cond Res 20(3):584-592. */
const mostReps = exact(10)

export const newBest: Rule = {
	code: 'new-best',
	area: 'logs',
	level: 'info',
	summary:
		'A logged set gives an estimate of 1% or more over the best of the lift, or a test gives a max that is not written down.',
	source: 'at most 10 reps: Reynolds, Gordon, Robergs 2006; the 1% is common practice',
	fix: 'to confirm',
	since: '0.1.0',
	page,
	check: { lifter: checkLifter },
}

/** What a logged set says of the max. */
interface Shown {
	readonly logged: DatedEntry
	readonly set: LoggedSet
	readonly mass: Mass
	/** Of a set in clusters those of one: the max that they show is the least that there is. */
	readonly reps: number
	readonly repsToFailure: Exact
	/** In the unit of the best; on top of bodyweight, what is added. */
	readonly max: Exact
	/** What the body adds in the formula: nothing where the load is all that is lifted. */
	readonly body: Exact
}

function checkLifter(lifter: Lifter, programme: Programme): Finding[] {
	const limit = limitsFor(lifter.name.text, programme).estimator
	const estimator = limit?.value ?? 'epley'
	const bests = new Map(groupedBy(lifter.bests, best => best.movement.text).map(same => [same[0].movement.text, latestOf(same)]))
	const tests = testsOf(lifter, programme).filter(({ lift, logged }) => logged.on > (bests.get(lift)?.on ?? ''))
	const tested = tests.map(test => ({ test, found: checkTest(test, bests.get(test.lift), lifter, estimator, programme) }))
	const known = new Set(tested.flatMap(({ test, found }) => (found.length > 0 ? [test.lift] : [])))
	return [
		...[...bests].flatMap(([lift, best]) => (known.has(lift) ? [] : check(best, lifter, estimator, programme))),
		...tested.flatMap(({ found }) => found),
	]
}

function latestOf(bests: readonly [Best, ...Best[]]): Best {
	return bests.reduce((latest, next) => ((next.on ?? '') >= (latest.on ?? '') ? next : latest))
}

function check(best: Best, lifter: Lifter, estimator: Estimator, programme: Programme): Finding[] {
	const { unit } = best.mass
	const lift = best.movement.text
	const body = bodyIn(programme.find('movement', lift), lifter, unit)
	const max = body && maxOf(best, body, estimator)
	if (body === undefined || max === undefined || max.compare(zero) <= 0) return []
	const logged = entriesOf(lifter, programme).filter(({ on }) => best.on === undefined || daysBetween(best.on, on) > 0)
	const top = topOf(logged, lift, unit, body, estimator)
	if (top === undefined) return []
	// What is added is a part of what is lifted: all of it is compared.
	const over = top.max.add(body).div(max.add(body)).sub(exact(1)).mul(hundred)
	if (over.compare(least) < 0) return []
	const title = titleOf('movement', lift, programme)
	const together = body.equals(zero) ? '' : ', the bodyweight with it,'
	const isSlip = over.compare(likelySlip) >= 0
	const then = isSlip
		? `so much at once is more likely a slip of the pen (from ${decimal(likelySlip)}%: common practice). Look at the set in the log.`
		: `from ${decimal(least)}% on it is worth writing down (common practice).`
	const written = writing(top, best, lifter, lift, programme)
	return [
		{
			span: best.span,
			message: `On ${top.logged.on}, ${counted(top.reps, 'rep')} of ${title} at ${massText(top.mass)}${effortText(top)} ${top.reps === 1 ? 'gives' : 'give'} a max of ${maxText(top, unit, estimator)}, ${decimal(over, 1)}% over the best of ${bestText(best, max)}${together}; ${then}`,
			source: estimatorSource(estimator),
			...written,
			// A digit too many must not become a best.
			...(isSlip ? { corrections: [] } : {}),
		},
	]
}

// Tests --------------------------------------------------------------------------------------------------------------------------------

/** A day on which a plan tests a lift, and what the log has of it. */
interface LoggedTest {
	readonly lift: string
	readonly logged: DatedEntry
}

/** The latest of each lift. */
function testsOf(lifter: Lifter, programme: Programme): readonly LoggedTest[] {
	const entries = entriesOf(lifter, programme)
	// Where nothing is logged, no key in a block needs to be looked at here.
	if (entries.length === 0) return []
	const planned = plannedSessions(lifter, programme)
	const all = entries.flatMap(logged =>
		logged.entry.lifts
			.map(({ movement }) => movement.text)
			.filter(lift =>
				planned
					.get(logged.entry)
					?.some(({ items }) => items.some(item => item.role === 'test' && item.working && item.movementName.text === lift)),
			)
			.map((lift): LoggedTest => ({ lift, logged })),
	)
	return groupedBy(all, test => test.lift).map(same => same[same.length - 1]!)
}

/** A test says what the max is now, be it more or less than what was known. */
function checkTest(
	{ lift, logged }: LoggedTest,
	best: Best | undefined,
	lifter: Lifter,
	estimator: Estimator,
	programme: Programme,
): Finding[] {
	const movement = programme.find('movement', lift)
	const unit = best?.mass.unit ?? logged.entry.lifts.find(one => one.movement.text === lift)?.sets[0]?.mass?.unit ?? 'kg'
	const body = bodyIn(movement, lifter, unit)
	const top = body && topOf([logged], lift, unit, body, estimator)
	if (body === undefined || top === undefined) return []
	const title = titleOf('movement', lift, programme)
	const max = best && maxOf(best, body, estimator)
	const known = best && max ? `the best so far is ${bestText(best, max)}` : 'no best of it is written down yet'
	return [
		{
			span: best?.span ?? lifter.header,
			message: `On ${logged.on} the test of ${title} gave ${maxText(top, unit, estimator)}; ${known}. What is tested stands in its place (common practice).`,
			source: 'common practice',
			...writing(top, best, lifter, lift, programme),
		},
	]
}

// What both say ------------------------------------------------------------------------------------------------------------------------

/** The set that points to the highest max. */
function topOf(entries: readonly DatedEntry[], lift: string, unit: Unit, body: Exact, estimator: Estimator): Shown | undefined {
	const shown = entries
		.flatMap(logged => logged.entry.lifts.filter(one => one.movement.text === lift).map(one => ({ logged, sets: one.sets })))
		.flatMap(({ logged, sets }) => sets.flatMap(set => shownBy(set, logged, unit, body, estimator) ?? []))
	return shown.sort((a, b) => b.max.compare(a.max))[0]
}

/** The line that writes a set down, below the best that it follows, and where the set stands. */
function writing(
	{ logged, set, mass, reps }: Shown,
	best: Best | undefined,
	lifter: Lifter,
	lift: string,
	programme: Programme,
): Pick<Finding, 'related' | 'corrections'> {
	const effort = effortText({ set })
	const line = `best ${lift} ${massText(mass)}${reps === 1 && effort === '' ? '' : ` x ${reps}`}${effort} on ${logged.on}`
	const after = best?.span.end ?? lifter.bests.at(-1)?.span.end ?? lifter.header.end
	const title = `Write this best of ${titleOf('movement', lift, programme)}`
	return {
		related: [{ definition: logged.log, span: set.span, message: 'The set stands here.' }],
		// One lift stays in one unit.
		corrections:
			best === undefined || mass.unit === best.mass.unit
				? [{ title, edits: [{ span: { start: after, end: after }, text: `\n  ${line}` }] }]
				: [],
	}
}

/** Reps take the body with them: the formula sees all that is lifted, and what is added comes out. */
function maxOf({ mass, reps, reserve }: Best, body: Exact, estimator: Estimator): Exact | undefined {
	return estimateMax(mass.amount.add(body), exact(reps ?? 1).add(reserve), estimator)?.sub(body)
}

function bestText({ mass, reps }: Best, max: Exact): string {
	return reps === undefined ? massText(mass) : `${massText({ amount: exact(decimal(max, 1)), unit: mass.unit })} (estimated)`
}

/** "165 kg" of a single, "122.5 kg (Epley: …)" of more. */
function maxText({ max, mass, repsToFailure, body }: Shown, unit: Unit, estimator: Estimator): string {
	const amount = massText({ amount: exact(decimal(max, 1)), unit })
	if (repsToFailure.equals(exact(1)) || body.equals(zero))
		return `${amount} (${estimateText({ amount: inUnit(mass, unit), unit }, repsToFailure, estimator)})`
	const formula = estimateText({ amount: inUnit(mass, unit).add(body), unit }, repsToFailure, estimator)
	return `${amount} (${formula}, of which ${massText({ amount: body, unit })} are bodyweight)`
}

function effortText({ set }: Pick<Shown, 'set'>): string {
	return set.rpe ? ` rpe ${decimal(set.rpe)}` : set.rir ? ` rir ${decimal(set.rir)}` : ''
}

/** All reps made, position kept, and near enough to failure to say something of the max. */
function shownBy(set: LoggedSet, logged: DatedEntry, unit: Unit, body: Exact, estimator: Estimator): Shown | undefined {
	const { mass, bodyweight, missed, brokeWith, rpe, rir } = set
	const reps = set.reps && Math.min(set.reps, set.clusterReps ?? set.reps)
	if (reps === undefined || reps < 1 || mass === undefined || missed > 0 || brokeWith !== undefined) return undefined
	// "bodyweight + 20 kg" of a movement whose load is all that is lifted.
	if (bodyweight && body.equals(zero)) return undefined
	const reserve = rir ?? (rpe ? reserveOf({ scale: 'rpe', value: rpe }) : zero)
	const repsToFailure = exact(reps).add(reserve)
	if (repsToFailure.compare(mostReps) > 0) return undefined
	const max = estimateMax(inUnit(mass, unit).add(body), repsToFailure, estimator)?.sub(body)
	return max && { logged, set, mass, reps, repsToFailure, max, body }
}
