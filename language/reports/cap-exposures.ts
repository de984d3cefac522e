import { mondayOf } from '../compute/calendar.ts'
import { countsForCap, leastDays } from '../compute/caps.ts'
import { decimal } from '../compute/exact.ts'
import { limitsFor } from '../compute/limits.ts'
import { outlineBlock } from '../compute/outline.ts'
import { schedulePlan } from '../compute/schedule.ts'
import { dayText } from '../compute/session-days.ts'
import { planVolume } from '../compute/volume.ts'
import type { Block, FrequencyCap, Movement, Plan } from '../model/definitions.ts'
import type { Programme } from '../model/programme.ts'
import type { CalendarDate } from '../model/quantities.ts'
import type { PlannedItem } from '../model/schedule.ts'
import type { Estimator } from '../model/vocabulary.ts'
import { sourceOf } from './origin.ts'

/** A movement that may be trained so often in a week, and how often it is. */
export interface CappedMovement {
	readonly movement: string
	readonly title: string
	/** Sessions a week at the most. */
	readonly cap: number
	/** Only days with a set at or above this percent count; `null`: every day. */
	readonly fromPercent: string | null
	/** Where the cap comes from; `null`: the coach's own text. */
	readonly source: string | null
	/** Days that count, one number for each week of the weekly volume. */
	readonly exposures: readonly number[]
}

/** A day of a week, with the items of one movement. */
interface DayItems {
	readonly week: string
	readonly day: string
	readonly isPlaced: boolean
	readonly item: PlannedItem
}

/**
 * The exposures of each capped movement that a plan trains, over all plans of its lifter: a calendar week, not a plan, is what a body has
 * to bear.
 */
export function capsOfPlan(plan: Plan, programme: Programme): readonly CappedMovement[] {
	const weeks = planVolume(plan, programme).weeks.map(({ monday }) => monday ?? '')
	const estimator = limitsFor(plan.lifter.text, programme).estimator?.value ?? 'epley'
	const own = new Set(schedulePlan(plan, programme).sessions.flatMap(({ items }) => workingMovements(items)))
	const others = programme.plansOf(plan.lifter.text).filter(other => other !== plan)
	const days = [plan, ...others].flatMap(one =>
		schedulePlan(one, programme).sessions.flatMap(({ date, items }) =>
			items.map((item): DayItems => ({ week: mondayOf(date), day: date, isPlaced: true, item })),
		),
	)
	return cappedMovements(days, weeks, own, estimator, programme)
}

/** The same for a block alone, whoever runs it: `on day 1` counts with the known weekdays as few days as they can be together. */
export function capsOfBlock(block: Block, programme: Programme): readonly CappedMovement[] {
	const { weeks } = outlineBlock(block, programme)
	const estimator = limitsFor(undefined, programme).estimator?.value ?? 'epley'
	const days = weeks.flatMap(({ week, sessions }) =>
		sessions.flatMap(({ session, day, items }) =>
			items.map((item): DayItems => {
				const dayName = day === undefined ? session.name.text : dayText({ ...day, part: undefined })
				return { week: String(week), day: dayName, isPlaced: day?.weekday !== undefined, item }
			}),
		),
	)
	const own = new Set(workingMovements(days.map(({ item }) => item)))
	return cappedMovements(
		days,
		weeks.map(({ week }) => String(week)),
		own,
		estimator,
		programme,
	)
}

function workingMovements(items: readonly PlannedItem[]): string[] {
	return items.filter(({ working }) => working).map(({ movementName }) => movementName.text)
}

function cappedMovements(
	days: readonly DayItems[],
	weeks: readonly (CalendarDate | string)[],
	own: ReadonlySet<string>,
	estimator: Estimator,
	programme: Programme,
): CappedMovement[] {
	const byMovement = Map.groupBy(days, ({ item }) => item.movementName.text)
	return [...byMovement].flatMap(([name, ofMovement]) => {
		const movement = ofMovement[0]?.item.movement
		if (movement === undefined || !own.has(name)) return []
		const byWeek = Map.groupBy(ofMovement, ({ week }) => week)
		return movement.caps.map(cap => cappedMovement(movement, cap, byWeek, weeks, estimator, programme))
	})
}

function cappedMovement(
	movement: Movement,
	cap: FrequencyCap,
	byWeek: ReadonlyMap<string, readonly DayItems[]>,
	weeks: readonly string[],
	estimator: Estimator,
	programme: Programme,
): CappedMovement {
	const exposuresIn = (week: string) => {
		const days = Map.groupBy(byWeek.get(week) ?? [], ({ day }) => day)
		const counted = [...days.values()].filter(all =>
			countsForCap(
				cap,
				all.map(({ item }) => item),
				estimator,
			),
		)
		return leastDays(counted.map(([first]) => first?.isPlaced ?? false))
	}
	return {
		movement: movement.name.text,
		title: movement.title?.text ?? movement.name.text,
		cap: cap.sessions,
		fromPercent: cap.fromPercent ? decimal(cap.fromPercent) : null,
		source: sourceOf(movement, programme),
		exposures: weeks.map(exposuresIn),
	}
}
