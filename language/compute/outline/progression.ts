import type { Block, Item } from '../../model/definitions.ts'
import type { Change, ChangeStep, Effort, Work } from '../../model/prescription.ts'
import type { CountRange, Exact, ExactRange } from '../../model/quantities.ts'
import type { PlannedLoad } from '../../model/schedule.ts'
import { exact, larger, one, smaller, zero } from '../exact.ts'
import type { Placement } from './placements.ts'
import type { PlannedGroup } from './planned-group.ts'
import { covers, isProgressed, lineOf } from './week-choice.ts'

const highestRpe = exact(10)

/** How often the changes of an item have acted. */
export interface ChangeCounts {
	readonly week: number
	readonly session: number
}

export const noChanges: ChangeCounts = { week: 0, session: 0 }

/**
 * How often `each week …` and `each session …` have acted on an item, for each time that its session stands in the block, in the order of
 * the days: once for each week, or session, after the first one with work. Both rest in deload weeks and where the week has a line of its
 * own, and go on after them.
 */
export function changeCounts(item: Item, block: Block, placements: readonly Placement[]): readonly ChangeCounts[] {
	let weekOfFirst: number | undefined
	let lastCounted = 0
	let counts = noChanges
	return placements.map(({ week }) => {
		const line = lineOf(item, week)
		const isWritten = line === undefined ? item.everyWeek !== undefined : line.prescription !== undefined
		// A week in which a plan has another movement in its place does not count.
		const hasWork = isWritten && !covers(item.notInWeeks ?? [], week)
		const moves = hasWork && isProgressed(item, line) && !covers(block.deload?.weeks ?? [], week)
		if (weekOfFirst === undefined) {
			if (hasWork) weekOfFirst = lastCounted = week
		} else if (moves) {
			counts = { week: week === lastCounted ? counts.week : counts.week + 1, session: counts.session + 1 }
			lastCounted = week
		}
		return isProgressed(item, line) ? counts : noChanges
	})
}

/** The group after its item's changes have acted so often. Sets and reps stay at 1 or more, no load falls below nothing. */
export function progressed(group: PlannedGroup, changes: readonly Change[], counts: ChangeCounts): PlannedGroup {
	return changes.reduce((result, change) => changed(result, change, change.amount.mul(exact(counts[change.each]))), group)
}

/** The group with so much more of a unit; what the unit says nothing of stays as it is. */
export function changed(group: PlannedGroup, { unit }: Pick<ChangeStep, 'unit'>, amount: Exact): PlannedGroup {
	if (amount.equals(zero)) return group
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
		case 'rpe':
			return {
				...group,
				effort: group.effort && effortPlus(group.effort, amount),
				until: group.until && effortPlus(group.until, amount),
			}
	}
}

/** An rpe stays from 1 to 10, and what is said in reps in reserve has as many fewer, down to none. */
function effortPlus(effort: Effort, amount: Exact): Effort {
	const { from, to } = rangePlus(
		effort.value,
		effort.scale === 'rpe' ? amount : amount.neg(),
		effort.scale === 'rpe' ? one : zero,
	)
	if (effort.scale === 'rir') return { ...effort, value: { from, to } }
	return { ...effort, value: { from: smaller(from, highestRpe), to: smaller(to, highestRpe) } }
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

/** A point of the reference (70 → 71), or of the bodyweight; never a hundredth of the load. */
function pointsPlus(load: PlannedLoad, points: Exact): PlannedLoad {
	if (load.kind !== 'of-bodyweight' && (load.kind !== 'percent' || load.of === 'top-set')) return load
	return { ...load, percent: rangePlus(load.percent, points, zero) }
}

function countsPlus(range: CountRange, amount: Exact): CountRange {
	const whole = Math.trunc(amount.valueOf())
	return { from: Math.max(range.from + whole, 1), to: Math.max(range.to + whole, 1) }
}

function rangePlus(range: ExactRange, amount: Exact, least: Exact): ExactRange {
	return { from: larger(range.from.add(amount), least), to: larger(range.to.add(amount), least) }
}
