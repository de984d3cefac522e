import { decimal, exact } from '../compute/exact.ts'
import { schedulePlan } from '../compute/schedule.ts'
import { averagePercent, type LiftTotals } from '../compute/volume/lift-totals.ts'
import type { LinkTotals } from '../compute/volume/totals.ts'
import { blockVolume, planVolume, type WeekVolume } from '../compute/volume.ts'
import type { Block, Plan } from '../model/definitions.ts'
import type { Programme } from '../model/programme.ts'
import type { CalendarDate, Exact, ExactRange, Unit } from '../model/quantities.ts'
import type { PlannedSession, ScheduledSession } from '../model/schedule.ts'
import { type Link, links } from '../model/vocabulary.ts'

/**
 * What a block or a plan adds up to, week by week. The shape is the JSON that `volume --format json` prints, version 1: it is stable.
 * Figures are strings where they are not whole numbers.
 */
export interface WeeklyVolume {
	readonly version: 1
	/** Name of the block or plan. */
	readonly of: string
	/** Of the tonnage; `null` for a block without a plan. */
	readonly unit: Unit | null
	readonly weeks: readonly VolumeWeek[]
}

export interface VolumeWeek {
	/** Week of the plan, or of the block where there is no plan. */
	readonly week: number
	readonly block: string
	readonly blockWeek: number
	/** Monday; `null` for a block without a plan. */
	readonly from: CalendarDate | null
	readonly deload: boolean
	readonly sessions: number
	/** Low end of the estimated length of the week's sessions. */
	readonly minutes: number
	/** Every movement with working sets. */
	readonly lifts: Readonly<Record<string, LiftVolume>>
	/** Hard sets a muscle, by its shares; low end. */
	readonly muscles: Readonly<Record<string, string>>
	/** High end of the muscles whose sets are a range. */
	readonly musclesTo: Readonly<Record<string, string>>
	/** By the first link of each movement. */
	readonly links: Readonly<Record<Link, LinkVolume>>
	/** Sets whose load or length cannot be known: left out of the totals above, never counted as 0. */
	readonly excludedSets: number
}

interface LowHigh<T> {
	readonly low: T
	readonly high: T
}

/** Hard sets and seconds under tension, at the low end; `…To` is the high end where that differs, else `null`. */
interface LinkVolume {
	readonly sets: string
	readonly setsTo: string | null
	readonly seconds: number
	readonly secondsTo: number | null
}

export interface LiftVolume {
	readonly title: string
	/** Dates with a working item of it. */
	readonly sessions: number
	/** Low end. */
	readonly sets: number
	/** High end where that differs, else `null`. */
	readonly setsTo: number | null
	readonly reps: LowHigh<number>
	/** In the plan's unit; `null` for a block without a lifter. */
	readonly tonnage: LowHigh<string> | null
	/** Sets × reps × percent, for a block without a lifter. */
	readonly relative: LowHigh<string> | null
	/** Weighted by reps; low end, where percents are ranges. */
	readonly averagePercent: string | null
	readonly averagePercentTo: string | null
	readonly topPercent: string | null
	readonly topPercentTo: string | null
	/** Lifts in the zones [0, 70), [70, 80), [80, 90) and [90, ∞) percent. */
	readonly zones: readonly LowHigh<number>[]
	/** Under tension. */
	readonly seconds: LowHigh<number>
	readonly holdSeconds: LowHigh<number>
	readonly carryMetres: LowHigh<number>
	readonly excludedSets: number
}

/** Percents to a tenth: more would be read as more than an estimate says. */
const percentPlaces = 1

/** What a plan adds up to with its lifter's loads, or a block without a lifter. */
export function weeklyVolume(of: Plan | Block, programme: Programme): WeeklyVolume {
	const name = of.name.text
	if (of.kind === 'plan') {
		const { unit } = schedulePlan(of, programme)
		const { weeks } = planVolume(of, programme)
		return { version: 1, of: name, unit, weeks: weeks.map(week => volumeWeek(week, true, programme)) }
	}
	const { weeks } = blockVolume(of, programme)
	return { version: 1, of: name, unit: null, weeks: weeks.map(week => volumeWeek(week, false, programme)) }
}

function volumeWeek<S extends PlannedSession | ScheduledSession>(
	week: WeekVolume<S>,
	hasLoads: boolean,
	programme: Programme,
): VolumeWeek {
	const { totals } = week
	const lifts = [...totals.lifts]
	const muscles = [...totals.muscles].sort(([a], [b]) => (a < b ? -1 : 1))
	return {
		week: week.week,
		block: week.block.name.text,
		blockWeek: week.runWeek,
		from: week.monday ?? null,
		deload: week.deload,
		sessions: week.sessions.filter(({ session }) => session.items.some(item => item.sets.length > 0)).length,
		minutes: Math.round(totals.seconds.from.valueOf() / 60),
		lifts: Object.fromEntries(lifts.map(([name, lift]) => [name, liftVolume(name, lift, hasLoads, programme)])),
		muscles: Object.fromEntries(muscles.map(([muscle, sets]) => [muscle, decimal(sets.from)])),
		musclesTo: Object.fromEntries(muscles.flatMap(([muscle, sets]) => (isRange(sets) ? [[muscle, decimal(sets.to)]] : []))),
		links: Object.fromEntries(links.map(link => [link, linkVolume(totals.links.get(link))])) as Record<Link, LinkVolume>,
		excludedSets: lifts.reduce((sum, [, lift]) => sum + lift.excludedSets, 0),
	}
}

function liftVolume(name: string, lift: LiftTotals, hasLoads: boolean, programme: Programme): LiftVolume {
	const average = averagePercent(lift)
	return {
		title: programme.find('movement', name)?.title?.text ?? name,
		sessions: lift.exposures.size,
		sets: lift.sets.from,
		setsTo: lift.sets.to === lift.sets.from ? null : lift.sets.to,
		reps: { low: lift.reps.from, high: lift.reps.to },
		tonnage: hasLoads ? { low: decimal(lift.tonnage.from), high: decimal(lift.tonnage.to) } : null,
		relative: hasLoads ? null : { low: decimal(lift.relative.from), high: decimal(lift.relative.to) },
		averagePercent: percent(average?.from),
		averagePercentTo: average && isRange(average) ? percent(average.to) : null,
		topPercent: percent(lift.top?.from),
		topPercentTo: lift.top && isRange(lift.top) ? percent(lift.top.to) : null,
		zones: lift.zones.map(zone => ({ low: zone.from, high: zone.to })),
		seconds: lowHigh(lift.underTension),
		holdSeconds: lowHigh(lift.hold),
		carryMetres: lowHigh(lift.carry),
		excludedSets: lift.excludedSets,
	}
}

function linkVolume(totals: LinkTotals | undefined): LinkVolume {
	const { sets, seconds } = totals ?? { sets: none, seconds: none }
	return {
		sets: decimal(sets.from),
		setsTo: isRange(sets) ? decimal(sets.to) : null,
		seconds: seconds.from.valueOf(),
		secondsTo: isRange(seconds) ? seconds.to.valueOf() : null,
	}
}

const none: ExactRange = { from: exact(0), to: exact(0) }

function isRange(range: ExactRange): boolean {
	return !range.from.equals(range.to)
}

function lowHigh(range: ExactRange): LowHigh<number> {
	return { low: range.from.valueOf(), high: range.to.valueOf() }
}

function percent(value: Exact | undefined): string | null {
	return value === undefined ? null : decimal(value, percentPlaces)
}
