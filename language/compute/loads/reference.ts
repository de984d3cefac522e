import type { Best, Lifter, Movement } from '../../model/definitions.ts'
import type { Programme } from '../../model/programme.ts'
import type { CalendarDate, Exact, Unit } from '../../model/quantities.ts'
import type { LoadReference, MissingFact, Step } from '../../model/schedule.ts'
import type { Estimator } from '../../model/vocabulary.ts'
import { estimateMax, estimateText, estimatorSource, estimatorTitle } from '../estimates.ts'
import { decimal, exact, hundred, one, share, zero } from '../exact.ts'
import { inUnit, massText } from '../mass.ts'

/** Why a load cannot be known. */
export interface Unknown {
	readonly missing: MissingFact
	/** In a coach's words. */
	readonly reason: string
}

/** Reps to failure above which an estimate is uncertain. Source: Reynolds, Gordon, Robergs 2006, J Strength Cond Res 20(3):584-592. */
const certainReps = exact(10)

/** The latest best dated on or before a day; one without a date counts as always known, and gives way to any that has one. */
function latestBest(lifter: Lifter, movement: string, day: CalendarDate): Best | undefined {
	let latest: Best | undefined
	for (const best of lifter.bests) {
		if (best.movement.text !== movement || (best.on ?? day) > day) continue
		if (latest === undefined || (best.on ?? '') >= (latest.on ?? '')) latest = best
	}
	return latest
}

/**
 * What a percent of a movement's best refers to, on a day: the latest best of the lift that its `percent of` names, at the share stated
 * there; without that fact, the movement's own. It never switches to another lift by itself.
 */
export function referenceFor(
	name: string,
	movement: Movement | undefined,
	lifter: Lifter | undefined,
	day: CalendarDate,
	unit: Unit,
	estimator: Estimator,
	programme: Programme,
): LoadReference | Unknown {
	if (lifter === undefined) return { missing: 'lifter', reason: 'The plan names no lifter whose best it could be.' }
	const lift = movement?.percentOf?.movement.text ?? name
	const best = latestBest(lifter, lift, day)
	if (best === undefined) {
		const later = lifter.bests.some(each => each.movement.text === lift)
		const title = titleOf(lift, programme)
		const reason = later
			? `The bests of ${title} are all dated after ${day}, the first day of this block.`
			: `${titleOf(lifter.name.text, programme, 'lifter')} has no best of ${title} yet.`
		return { missing: 'best', reason }
	}
	const repsToFailure = exact(best.reps ?? 1).add(best.reserve)
	const body = bodyIn(programme.find('movement', lift), lifter, unit)
	const isEstimated = !repsToFailure.equals(one)
	if (isEstimated && body === undefined) return noBodyweight(lifter, lift, programme)
	// Reps take the body with them: the formula sees all that is lifted.
	const whole = estimateMax(inUnit(best.mass, unit).add(body ?? zero), repsToFailure, estimator)
	const max = whole?.sub(body ?? zero)
	if (max === undefined) {
		const reason = `${estimatorTitle(estimator)} gives no max for ${decimal(repsToFailure)} reps to failure (best of ${titleOf(lift, programme)}).`
		return { missing: 'best', reason }
	}
	const percent = movement?.percentOf?.share ?? hundred
	const amount = share(percent, max)
	if (amount.compare(zero) <= 0)
		return { missing: 'best', reason: `No percent can be taken of ${titleOf(lift, programme)} at ${massText({ amount, unit })}.` }
	return {
		movementName: lift,
		best,
		repsToFailure,
		estimated: isEstimated,
		uncertain: repsToFailure.compare(certainReps) > 0,
		max,
		body,
		share: percent,
		amount,
		unit,
	}
}

/**
 * What the body adds to a load in formulas of reps: nothing where the load is all that is lifted, the bodyweight where the load is on top
 * of it; `undefined` where that is not written down.
 */
export function bodyIn(movement: Movement | undefined, lifter: Lifter | undefined, unit: Unit): Exact | undefined {
	if (!movement?.loadAdded) return zero
	return lifter?.bodyweight && inUnit(lifter.bodyweight.value, unit)
}

/** Why reps on top of bodyweight say nothing. */
export function noBodyweight(lifter: Lifter | undefined, lift: string, programme: Programme): Unknown {
	const who = lifter === undefined ? 'The lifter' : titleOf(lifter.name.text, programme, 'lifter')
	const reason = `Reps of ${titleOf(lift, programme)} take the body with them, and ${who} has no bodyweight written down.`
	return { missing: 'bodyweight', reason }
}

/** "Best of Deadlift: 160 kg on 2026-09-12", and how the max follows from it. */
export function referenceSteps(
	reference: LoadReference,
	title: string,
	estimator: Estimator,
	programme: Programme,
): readonly Step[] {
	const { best, max, unit, repsToFailure } = reference
	const lift = titleOf(reference.movementName, programme)
	const inPlanUnit = best.mass.unit === unit ? '' : ` = ${massText({ amount: inUnit(best.mass, unit), unit })}`
	const set = best.reps === undefined ? '' : ` x ${best.reps}`
	const reserve = best.reserve.equals(0) ? '' : ` with ${decimal(best.reserve)} in reserve`
	const date = best.on === undefined ? '' : ` on ${best.on}`
	const steps: Step[] = [{ text: `Best of ${lift}: ${massText(best.mass)}${inPlanUnit}${set}${reserve}${date}.` }]
	if (reference.estimated) {
		const body = reference.body ?? zero
		const formula = estimateText({ amount: inUnit(best.mass, unit).add(body), unit }, repsToFailure, estimator)
		const doubt = reference.uncertain ? ' More than 10 reps to failure: uncertain.' : ''
		const mass = (amount: Exact) => massText({ amount, unit })
		const way = body.equals(zero)
			? `Estimated max: ${formula} = ${mass(max)}.`
			: `Estimated max, with ${mass(body)} of bodyweight: ${formula} = ${mass(max.add(body))}, of which ${mass(max)} are added.`
		steps.push({
			text: `${way}${doubt}`,
			source: estimatorSource(estimator),
		})
	}
	if (!reference.share.equals(hundred)) {
		const amount = massText({ amount: reference.amount, unit })
		steps.push({ text: `${title} counts from ${decimal(reference.share)}% of it: ${amount}.` })
	}
	return steps
}

/** What people see of a name: its title, where it has one. */
export function titleOf(name: string, programme: Programme, kind: 'movement' | 'lifter' = 'movement'): string {
	return programme.find(kind, name)?.title?.text ?? name
}
