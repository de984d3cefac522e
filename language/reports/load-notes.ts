import { compare, decimal } from '../compute/exact.ts'
import type { SetGroup } from '../model/prescription.ts'
import type { Exact, Unit } from '../model/quantities.ts'
import type { Schedule, ScheduledItem, ScheduledSet } from '../model/schedule.ts'

/** What a percent comes to for one lifter, in a few words beside it. */
export interface LoadNote {
	/** "112.5 kg", "95-125 kg", "80 → 87.5 kg" from the first week to the last. */
	readonly text: string
	/** "Week 1: 80 kg": one line for each load, with the weeks that have it. */
	readonly lines: readonly string[]
}

/** The loads of one week. */
interface WeekLoads {
	readonly week: number
	readonly low: Exact
	readonly high: Exact
	readonly unit: Unit
	readonly hands: number
}

/**
 * The loads behind the percents of a plan's texts, each by the sets that ask for it: those of a block, and those that the plan adds. Weeks
 * that the deload line fills, and movements that the plan has put in place of others, are not what is written there and are left out;
 * so is what cannot be known.
 */
export function loadNotes(schedule: Schedule): ReadonlyMap<SetGroup, LoadNote> {
	const loads = new Map<SetGroup, WeekLoads[]>()
	for (const { items, planWeek } of schedule.sessions) {
		for (const item of items) {
			if (item.from === 'deload-fill' || item.from === 'computed-warm-up') continue
			for (const set of item.sets) {
				// What the block writes for a movement says nothing about the one in its place.
				const isMeant = item.changedBy !== 'swap' || item.prescribedIn === 'plan'
				const load = isMeant && asksForPercent(set.group) ? loadsOf(set, item, planWeek) : undefined
				if (load) loads.set(set.group, together(loads.get(set.group) ?? [], load))
			}
		}
	}
	return new Map([...loads].map(([group, weeks]) => [group, noteOf(weeks)]))
}

/** Does it say a percent, whatever of? */
function asksForPercent({ load, ramp }: SetGroup): boolean {
	return ramp !== undefined || load?.kind === 'percent' || load?.kind === 'of-bodyweight'
}

function loadsOf({ computed }: ScheduledSet, { movement }: ScheduledItem, week: number): WeekLoads | undefined {
	const { load, loadTo, unit } = computed
	return load && { week, low: load, high: loadTo ?? load, unit, hands: movement?.hands ?? 1 }
}

/** The loads of one week are one stretch, from the least to the most. */
function together(weeks: readonly WeekLoads[], next: WeekLoads): WeekLoads[] {
	const same = weeks.find(one => one.week === next.week)
	if (!same) return [...weeks, next]
	const both = {
		...same,
		low: compare(next.low, same.low) < 0 ? next.low : same.low,
		high: compare(next.high, same.high) > 0 ? next.high : same.high,
	}
	return weeks.map(one => (one === same ? both : one))
}

function noteOf(weeks: readonly WeekLoads[]): LoadNote {
	const first = weeks[0]!
	const last = weeks.at(-1)!
	const [from, to] = [stretch(first), stretch(last)]
	const byLoad = Map.groupBy(weeks, week => `${stretch(week)} ${week.unit}${week.hands > 1 ? ' in each hand' : ''}`)
	const lines = [...byLoad].map(([text, of]) => `Week ${of.map(one => one.week).join(', ')}: ${text}`)
	return { text: `${from === to ? from : `${from} → ${to}`} ${last.unit}`, lines }
}

function stretch({ low, high }: WeekLoads): string {
	return low.equals(high) ? decimal(low) : `${decimal(low)}-${decimal(high)}`
}
