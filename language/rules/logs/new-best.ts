import { daysBetween } from '../../compute/calendar.ts'
import { reserveOf } from '../../compute/effort.ts'
import { estimateMax, estimateText, estimatorSource } from '../../compute/estimates.ts'
import { decimal, exact, hundred, zero } from '../../compute/exact.ts'
import { limitsFor } from '../../compute/limits.ts'
import { inUnit, massText } from '../../compute/mass.ts'
import type { Best, Lifter, LoggedSet } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { Exact, Mass } from '../../model/quantities.ts'
import type { Estimator } from '../../model/vocabulary.ts'
import { groupedBy } from '../common/groups.ts'
import { titleOf } from '../common/titles.ts'
import { counted } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import { type DatedEntry, entriesOf } from './logged-sessions.ts'
import page from './new-best.md'

/** Percent over the best from which an estimate is worth writing down. */
const least = exact(1)
/** Source: Reynolds, Gordon, Robergs 2006, J Strength Cond Res 20(3):584-592. */
const mostReps = exact(10)

export const newBest: Rule = {
	code: 'new-best',
	area: 'logs',
	level: 'info',
	summary: 'A logged set gives an estimate of 1% or more over the best of the lift.',
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
	readonly repsToFailure: Exact
	/** In the unit of the best. */
	readonly max: Exact
}

function checkLifter(lifter: Lifter, programme: Programme): Finding[] {
	const limit = limitsFor(lifter.name.text, programme).estimator
	const estimator = limit?.value ?? 'epley'
	return groupedBy(lifter.bests, best => best.movement.text).flatMap(bests => {
		const best = bests.reduce((latest, next) => ((next.on ?? '') >= (latest.on ?? '') ? next : latest))
		return check(best, lifter, estimator, programme)
	})
}

function check(best: Best, lifter: Lifter, estimator: Estimator, programme: Programme): Finding[] {
	const { unit } = best.mass
	const lift = best.movement.text
	const max = estimateMax(best.mass.amount, exact(best.reps ?? 1).add(best.reserve), estimator)
	// What hangs on the body makes only a part of such a load.
	if (max === undefined || max.compare(zero) <= 0 || programme.find('movement', lift)?.loadAdded) return []
	const shown = entriesOf(lifter, programme)
		.filter(({ on }) => best.on === undefined || daysBetween(best.on, on) > 0)
		.flatMap(logged => logged.entry.lifts.filter(one => one.movement.text === lift).map(one => ({ logged, sets: one.sets })))
		.flatMap(({ logged, sets }) => sets.flatMap(set => shownBy(set, logged, best, estimator) ?? []))
	const top = shown.sort((a, b) => b.max.compare(a.max))[0]
	if (top === undefined) return []
	const over = top.max.div(max).sub(exact(1)).mul(hundred)
	if (over.compare(least) < 0) return []
	const { logged, set, mass, repsToFailure } = top
	const reps = set.reps ?? 1
	const estimate = estimateText({ amount: inUnit(mass, unit), unit }, repsToFailure, estimator)
	const said = `${massText({ amount: exact(decimal(top.max, 1)), unit })} (${estimate})`
	const effort = set.rpe ? ` rpe ${decimal(set.rpe)}` : set.rir ? ` rir ${decimal(set.rir)}` : ''
	const line = `best ${lift} ${massText(mass)}${reps === 1 && effort === '' ? '' : ` x ${reps}`}${effort} on ${logged.on}`
	const against =
		best.reps === undefined ? massText(best.mass) : `${massText({ amount: exact(decimal(max, 1)), unit })} (estimated)`
	const title = titleOf('movement', lift, programme)
	return [
		{
			span: best.span,
			message: `On ${logged.on}, ${counted(reps, 'rep')} of ${title} at ${massText(mass)}${effort} give a max of ${said}, ${decimal(over, 1)}% over the best of ${against}; from ${decimal(least)}% on it is worth writing down (common practice).`,
			source: estimatorSource(estimator),
			related: [{ definition: logged.log, span: set.span, message: 'The set stands here.' }],
			// One lift stays in one unit.
			corrections:
				mass.unit === unit
					? [
							{
								title: `Write this best of ${title}`,
								edits: [{ span: { start: best.span.end, end: best.span.end }, text: `\n  ${line}` }],
							},
						]
					: [],
		},
	]
}

/** All reps made, position kept, and near enough to failure to say something of the max. */
function shownBy(set: LoggedSet, logged: DatedEntry, best: Best, estimator: Estimator): Shown | undefined {
	const { reps, mass, bodyweight, missed, brokeWith, rpe, rir } = set
	if (reps === undefined || reps < 1 || mass === undefined || bodyweight || missed > 0 || brokeWith !== undefined)
		return undefined
	const reserve = rir ?? (rpe ? reserveOf({ scale: 'rpe', value: rpe }) : zero)
	const repsToFailure = exact(reps).add(reserve)
	if (repsToFailure.compare(mostReps) > 0) return undefined
	const max = estimateMax(inUnit(mass, best.mass.unit), repsToFailure, estimator)
	return max && { logged, set, mass, repsToFailure, max }
}
