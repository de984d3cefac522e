import type { Base, Lifter, Movement } from '../../model/definitions.ts'
import type { Programme } from '../../model/programme.ts'
import type { CalendarDate, Exact, ExactRange, Mass, Unit } from '../../model/quantities.ts'
import type { LoadReference, PlannedLoad, PlannedSet, Steps } from '../../model/schedule.ts'
import type { Estimator } from '../../model/vocabulary.ts'
import { estimatorSource, estimatorTitle, shareAt, shareText } from '../estimates.ts'
import { decimal, exact, hundred, larger, one, share, zero } from '../exact.ts'
import { inUnit, massText } from '../mass.ts'
import { bodyIn, noBodyweight, referenceFor, referenceSteps, titleOf, type Unknown } from './reference.ts'
import { repsToFailure } from './reps-to-failure.ts'
import { massRangeText, rangeText, signedMassText } from './wording.ts'

/** Whose load it is, for which movement, and from when. */
export interface LoadOwner {
	readonly name: string
	readonly movement: Movement | undefined
	readonly lifter: Lifter | undefined
	/** The first day of the run: the best in use is the latest one known by then. */
	readonly firstDay: CalendarDate
	/** Of every mass that comes out. */
	readonly unit: Unit
	readonly estimator: Estimator
	/** Percent that the plan scales the movement's exact loads to; 100 where it does not. */
	readonly scale: Exact
	readonly programme: Programme
}

/** A load before it is rounded to what can be loaded. */
export interface ExactLoad {
	readonly range: ExactRange
	readonly steps: Steps
}

/**
 * The exact load that a set asks for, with its way; `undefined` where it asks for none, or refers to another set (`at 92% of top set`,
 * a computed warm-up), whose load on the bar must be known first. `reference` is what the owner's percents refer to.
 */
export function exactLoad(
	set: PlannedSet,
	owner: LoadOwner,
	reference: LoadReference | Unknown,
): ExactLoad | Unknown | undefined {
	const { load } = set
	switch (load.kind) {
		case 'none':
		case 'warm-up':
			return undefined
		case 'percent':
			return load.of === 'top-set' ? undefined : ofPercent(load, load.of, owner, reference)
		case 'mass': {
			const from = inUnit(load.from, owner.unit).mul(load.share)
			const to = inUnit(load.to, owner.unit).mul(load.share)
			const steps = () => {
				const written = `${rangeText({ from: load.from.amount, to: load.to.amount })} ${load.to.unit}`
				const lighter = load.share.equals(one)
					? ''
					: `, ${decimal(load.share.mul(hundred))}% of it: ${massRangeText({ from, to }, owner.unit)}`
				// In another unit than the gym's, so that what follows can be compared.
				const inGym = load.to.unit === owner.unit || lighter !== '' ? '' : ` = ${massRangeText({ from, to }, owner.unit)}`
				return [{ text: `Written load: ${written}${inGym}${lighter}.` }]
			}
			return adjusted({ from, to }, steps, load, owner)
		}
		case 'bodyweight':
			return ofBodyweight(load, owner)
		case 'of-bodyweight':
			return ofBodyweightShare(load, owner)
		case 'rm':
			return ofReps({ from: exact(load.reps), to: exact(load.reps) }, load, owner, reference)
		case 'effort': {
			const reps = repsToFailure(set)
			if (reps !== undefined) return ofReps(reps, load, owner, reference)
			const reason = 'No formula gives the load of a set in clusters from its effort: write a percent or a mass.'
			return { missing: 'own-load', reason }
		}
	}
}

/** The reference of an owner's percents. */
export function referenceOf(owner: LoadOwner): LoadReference | Unknown {
	const { name, movement, lifter, firstDay, unit, estimator, programme } = owner
	return referenceFor(name, movement, lifter, firstDay, unit, estimator, programme)
}

function ofPercent(
	load: PlannedLoad & { kind: 'percent' },
	of: 'best' | 'base',
	owner: LoadOwner,
	reference: LoadReference | Unknown,
): ExactLoad | Unknown {
	const found = of === 'base' ? baseOf(owner, reference) : bestOf(owner, reference)
	if ('missing' in found) return found
	const range = { from: share(load.percent.from, found.amount), to: share(load.percent.to, found.amount) }
	const text = () =>
		`${rangeText(load.percent)}% of ${massText({ amount: found.amount, unit: owner.unit })} = ${massRangeText(range, owner.unit)}.`
	return adjusted(range, () => [...found.steps(), { text: text() }], load, owner)
}

interface Whole {
	/** What the percents are taken of. */
	readonly amount: Exact
	readonly steps: Steps
}

function bestOf(owner: LoadOwner, reference: LoadReference | Unknown): Whole | Unknown {
	if ('missing' in reference) return reference
	return {
		amount: reference.amount,
		steps: () => referenceSteps(reference, titleOf(owner.name, owner.programme), owner.estimator, owner.programme),
	}
}

/** The base of the lift that `percent of` names: a share of its best, or a mass. */
function baseOf(owner: LoadOwner, reference: LoadReference | Unknown): Whole | Unknown {
	const { lifter, movement, name, programme, unit } = owner
	const lift = movement?.percentOf?.movement.text ?? name
	const base = lifter?.bases.findLast(each => each.movement.text === lift)
	if (lifter === undefined || base === undefined) {
		if (lifter === undefined) return { missing: 'lifter', reason: 'The plan names no lifter whose base it could be.' }
		const reason = `${titleOf(lifter.name.text, programme, 'lifter')} has no base of ${titleOf(lift, programme)}.`
		return { missing: 'base', reason }
	}
	const found = baseAmount(base, owner, reference)
	if ('missing' in found || movement?.percentOf === undefined || movement.percentOf.share.equals(hundred)) return found
	const part = movement.percentOf.share
	const amount = share(part, found.amount)
	const text = () => `${titleOf(name, programme)} counts from ${decimal(part)}% of it: ${massText({ amount, unit })}.`
	return { amount, steps: () => [...found.steps(), { text: text() }] }
}

function baseAmount(base: Base, owner: LoadOwner, reference: LoadReference | Unknown): Whole | Unknown {
	const { programme, unit } = owner
	const lift = titleOf(base.movement.text, programme)
	if (base.share === undefined) {
		const amount = base.mass === undefined ? zero : inUnit(base.mass, unit)
		return { amount, steps: () => [{ text: `Base of ${lift}: ${massText({ amount, unit })}.` }] }
	}
	if ('missing' in reference) return reference
	const part = base.share
	const amount = share(part, reference.max)
	const text = () =>
		`Base of ${lift}: ${decimal(part)}% of ${massText({ amount: reference.max, unit })} = ${massText({ amount, unit })}.`
	const whole = { ...reference, share: hundred }
	return { amount, steps: () => [...referenceSteps(whole, lift, owner.estimator, programme), { text: text() }] }
}

/** The load for so many reps to failure: the inverse of the estimated max. More reps, less load. */
function ofReps(
	reps: ExactRange,
	load: PlannedLoad & { kind: 'rm' | 'effort' },
	owner: LoadOwner,
	reference: LoadReference | Unknown,
): ExactLoad | Unknown {
	const { estimator, unit } = owner
	const whole = bestOf(owner, reference)
	if ('missing' in whole) return whole
	const least = shareAt(reps.to, estimator)
	const most = shareAt(reps.from, estimator)
	if (least === undefined || most === undefined) {
		const reason = `${estimatorTitle(estimator)} gives no load for ${rangeText(reps)} reps to failure.`
		return { missing: 'best', reason }
	}
	const body = bodyIn(owner.movement, owner.lifter, unit)
	if (body === undefined) return noBodyweight(owner.lifter, owner.name, owner.programme)
	const all = whole.amount.add(body)
	const at = (part: Exact) => all.mul(part).sub(body).mul(load.share)
	const range = { from: at(least), to: at(most) }
	const text = () => {
		const withBody = body.equals(zero) ? '' : `, with ${massText({ amount: body, unit })} of bodyweight`
		const lighter = load.share.equals(1) ? '' : `, at ${decimal(load.share.mul(hundred))}% of that load`
		const formula = reps.from.equals(reps.to)
			? shareText(reps.to, estimator)
			: `${shareText(reps.to, estimator)}; ${shareText(reps.from, estimator)}`
		return `Load for ${rangeText(reps)} reps to failure (${formula})${withBody}${lighter}: ${massRangeText(range, unit)}.`
	}
	return adjusted(range, () => [...whole.steps(), { text: text(), source: estimatorSource(estimator) }], load, owner)
}

/**
 * Bodyweight and what is added to it. Where the movement's load is what is added (`load added`), that alone is the load, and the
 * lifter's bodyweight does not matter.
 */
function ofBodyweight(load: PlannedLoad & { kind: 'bodyweight' }, owner: LoadOwner): ExactLoad | Unknown {
	const { movement, unit } = owner
	const written = load.extra === undefined ? zero : inUnit(load.extra, unit).mul(load.share)
	const added = load.added.reduce((sum, mass) => sum.add(inUnit(mass, unit)), written)
	const extra = share(owner.scale, added)
	if (movement?.loadAdded) {
		const text = () =>
			extra.equals(zero) ? 'Bodyweight, nothing added.' : `Bodyweight ${signedMassText(extra, unit)}: the load is what is added.`
		return { range: { from: extra, to: extra }, steps: () => [{ text: text() }] }
	}
	const bodyweight = bodyweightOf(owner)
	if ('missing' in bodyweight) return bodyweight
	const total = bodyweight.amount.add(extra)
	const steps = () => {
		const sum = extra.equals(zero) ? '' : ` ${signedMassText(extra, unit)} = ${massText({ amount: total, unit })}`
		return [{ text: `Bodyweight ${massText({ amount: bodyweight.amount, unit })}${sum}.` }]
	}
	return { range: { from: total, to: total }, steps }
}

/** A percent of the bodyweight: the load itself, or, where the movement says `load added`, what is added. */
function ofBodyweightShare(load: PlannedLoad & { kind: 'of-bodyweight' }, owner: LoadOwner): ExactLoad | Unknown {
	const { unit } = owner
	const bodyweight = bodyweightOf(owner)
	if ('missing' in bodyweight) return bodyweight
	const range = { from: share(load.percent.from, bodyweight.amount), to: share(load.percent.to, bodyweight.amount) }
	const text = () =>
		`${rangeText(load.percent)}% of bodyweight, ${massText({ amount: bodyweight.amount, unit })} = ${massRangeText(range, unit)}.`
	return adjusted(range, () => [{ text: text() }], load, owner)
}

/** In the unit of the loads. */
function bodyweightOf({ lifter, programme, unit }: LoadOwner): { readonly amount: Exact } | Unknown {
	const bodyweight = lifter?.bodyweight?.value
	if (bodyweight !== undefined) return { amount: inUnit(bodyweight, unit) }
	const who = lifter === undefined ? 'The lifter' : titleOf(lifter.name.text, programme, 'lifter')
	return { missing: 'bodyweight', reason: `${who} has no bodyweight written down.` }
}

/** What progression lines have added, then what the plan scales the movement to; never less than nothing. */
function adjusted(range: ExactRange, steps: Steps, load: { readonly added: readonly Mass[] }, owner: LoadOwner): ExactLoad {
	const { unit, scale } = owner
	const added = load.added.reduce((sum, mass) => sum.add(inUnit(mass, unit)), zero)
	const isChanged = !added.equals(zero)
	const isScaled = !scale.equals(hundred)
	if (!isChanged && !isScaled) return { range, steps }
	const changed = isChanged ? { from: larger(range.from.add(added), zero), to: larger(range.to.add(added), zero) } : range
	const scaled = isScaled ? { from: share(scale, changed.from), to: share(scale, changed.to) } : changed
	return {
		range: scaled,
		steps: () => [
			...steps(),
			...(isChanged ? [{ text: `Changed so far: ${signedMassText(added, unit)} = ${massRangeText(changed, unit)}.` }] : []),
			...(isScaled ? [{ text: `The plan scales it to ${decimal(scale)}%: ${massRangeText(scaled, unit)}.` }] : []),
		],
	}
}
