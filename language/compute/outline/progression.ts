import type { Block, Item } from '../../model/definitions.ts'
import type { Change, Work } from '../../model/prescription.ts'
import type { CountRange, Exact, ExactRange } from '../../model/quantities.ts'
import type { PlannedLoad } from '../../model/schedule.ts'
import { exact, larger, one, zero } from '../exact.ts'
import type { PlannedGroup } from './planned-group.ts'
import { covers, isProgressed, lineOf } from './week-choice.ts'

/**
 * How often `each week …` has acted by a week: once for each week after the item's first one with work. It rests in deload weeks and in
 * weeks that have a line of their own, and goes on after them.
 */
export function changeCount(item: Item, block: Block, week: number): number {
	let first: number | undefined
	let count = 0
	for (let each = 1; each <= week; each++) {
		const line = lineOf(item, each)
		const hasWork = line === undefined ? item.everyWeek !== undefined : line.prescription !== undefined
		if (first === undefined) first = hasWork ? each : undefined
		else if (hasWork && isProgressed(item, line) && !covers(block.deload?.weeks ?? [], each)) count++
	}
	return count
}

/** The group after its item's changes have acted `count` times. Sets and reps stay at 1 or more, no load falls below nothing. */
export function progressed(group: PlannedGroup, changes: readonly Change[], count: number): PlannedGroup {
	return count === 0 ? group : changes.reduce((result, change) => changed(result, change, change.amount.mul(exact(count))), group)
}

function changed(group: PlannedGroup, { unit }: Change, amount: Exact): PlannedGroup {
	switch (unit) {
		case 'sets':
			return { ...group, sets: countsPlus(group.sets, amount) }
		case 'reps':
		case 's':
		case 'm':
			return { ...group, work: workPlus(group.work, amount, unit) }
		case 'kg':
		case 'lb':
			return { ...group, load: loadPlus(group.load, { amount, unit }) }
		case '%':
			return { ...group, load: pointsPlus(group.load, amount) }
	}
}

function workPlus(work: Work, amount: Exact, unit: 'reps' | 's' | 'm'): Work {
	if (work.kind === 'reps') return unit === 'reps' ? { ...work, reps: countsPlus(work.reps, amount) } : work
	if (work.kind === 'carry') return unit === 'm' ? { ...work, metres: rangePlus(work.metres, amount, one) } : work
	return unit === 's' ? { ...work, seconds: rangePlus(work.seconds, amount, one) } : work
}

/** A share of the top set follows the top set, which has its own share in the progression. */
function loadPlus(load: PlannedLoad, amount: { amount: Exact; unit: 'kg' | 'lb' }): PlannedLoad {
	if (load.kind === 'none' || load.kind === 'warm-up' || (load.kind === 'percent' && load.of === 'top-set')) return load
	return { ...load, added: [...load.added, amount] }
}

/** A point of the reference (70 → 71), never a hundredth of the load. */
function pointsPlus(load: PlannedLoad, points: Exact): PlannedLoad {
	if (load.kind !== 'percent' || load.of === 'top-set') return load
	return { ...load, percent: rangePlus(load.percent, points, zero) }
}

function countsPlus(range: CountRange, amount: Exact): CountRange {
	const whole = Math.trunc(amount.valueOf())
	return { from: Math.max(range.from + whole, 1), to: Math.max(range.to + whole, 1) }
}

function rangePlus(range: ExactRange, amount: Exact, least: Exact): ExactRange {
	return { from: larger(range.from.add(amount), least), to: larger(range.to.add(amount), least) }
}
