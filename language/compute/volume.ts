import type { Block, Plan } from '../model/definitions.ts'
import type { Programme } from '../model/programme.ts'
import type { CalendarDate, Unit } from '../model/quantities.ts'
import type {
	BlockOutline,
	PlannedItem,
	PlannedSession,
	PlannedSet,
	Schedule,
	ScheduledItem,
	ScheduledRun,
	ScheduledSession,
} from '../model/schedule.ts'
import type { Estimator } from '../model/vocabulary.ts'
import { sessionSeconds } from './duration.ts'
import { limitsFor } from './limits.ts'
import { covers } from './outline/week-choice.ts'
import { outlineBlock } from './outline.ts'
import { firstPlanDay, planWeekOf } from './schedule/plan-week.ts'
import { schedulePlan } from './schedule.ts'
import { dayText } from './session-days.ts'
import { alikeSets } from './volume/alike-sets.ts'
import { plannedWeight, scheduledWeight } from './volume/set-weight.ts'
import { noTotals, type SetWeight, setTotals, sumTotals, type Totals } from './volume/totals.ts'

/** What a block or a plan adds up to: every item, session and week. */
export interface Volume<S extends PlannedSession | ScheduledSession> {
	readonly weeks: readonly WeekVolume<S>[]
	readonly totals: Totals
}

export interface WeekVolume<S extends PlannedSession | ScheduledSession> {
	/** Week of the plan; of the block, where there is no plan. */
	readonly week: number
	readonly block: Block
	readonly blockWeek: number
	/** Week of the run, from 1: counted through where the block is run several times. */
	readonly runWeek: number
	/** `undefined` without a plan. */
	readonly run: ScheduledRun | undefined
	readonly monday: CalendarDate | undefined
	readonly deload: boolean
	readonly sessions: readonly SessionVolume<S>[]
	readonly totals: Totals
}

interface SessionVolume<S extends PlannedSession | ScheduledSession> {
	readonly session: S
	readonly items: readonly { readonly item: S['items'][number]; readonly totals: Totals }[]
	readonly totals: Totals
}

/** The volume of a plan with its lifter's loads, week by week through its blocks; kept until something that it read changes. */
export function planVolume(plan: Plan, programme: Programme): Volume<ScheduledSession> {
	return programme.derived(plan, workOutPlanVolume)
}

/** The volume of a block without a lifter, in percents of whatever the reference will be; kept until something that it read changes. */
export function blockVolume(block: Block, programme: Programme): Volume<PlannedSession> {
	return programme.derived(block, workOutBlockVolume)
}

function workOutPlanVolume(plan: Plan, programme: Programme): Volume<ScheduledSession> {
	return scheduleVolume(schedulePlan(plan, programme))
}

function workOutBlockVolume(block: Block, programme: Programme): Volume<PlannedSession> {
	const estimator = limitsFor(block, programme).estimator?.value ?? 'epley'
	return outlineVolume(outlineBlock(block, programme), estimator)
}

/** The same for a schedule at hand. A week has the sessions of one run: where runs overlap, a calendar week is there for each. */
function scheduleVolume(schedule: Schedule): Volume<ScheduledSession> {
	const firstDay = firstPlanDay(schedule.plan, schedule.runs)
	const weeks = schedule.runs.flatMap(run =>
		run.mondays.map((monday, index): WeekVolume<ScheduledSession> => {
			const runWeek = index + 1
			const blockWeek = (index % run.blockWeeks) + 1
			const ofWeek = schedule.sessions.filter(session => session.run === run && session.runWeek === runWeek)
			const sessions = ofWeek.map(session =>
				sessionVolume(session, item => scheduledItemTotals(item, session.date, schedule.unit)),
			)
			return {
				week: planWeekOf(monday, firstDay ?? monday),
				block: run.block,
				blockWeek,
				runWeek,
				run,
				monday,
				deload: covers(run.block.deload?.weeks ?? [], blockWeek),
				sessions,
				totals: sumTotals(sessions.map(session => session.totals)),
			}
		}),
	)
	return { weeks, totals: sumTotals(weeks.map(week => week.totals)) }
}

/** The same for an outline at hand; `estimator` says what share of the max an effort or a rep max is. */
function outlineVolume(outline: BlockOutline, estimator: Estimator): Volume<PlannedSession> {
	const weeks = outline.weeks.map((week): WeekVolume<PlannedSession> => {
		const sessions = week.sessions.map(planned => {
			const day = `week ${week.week} ${planned.day === undefined ? planned.session.name.text : dayText({ ...planned.day, part: undefined })}`
			return sessionVolume(planned, item => plannedItemTotals(item, day, estimator))
		})
		return {
			week: week.week,
			block: outline.block,
			blockWeek: week.week,
			runWeek: week.week,
			run: undefined,
			monday: undefined,
			deload: week.deload,
			sessions,
			totals: sumTotals(sessions.map(session => session.totals)),
		}
	})
	return { weeks, totals: sumTotals(weeks.map(week => week.totals)) }
}

function sessionVolume<S extends PlannedSession | ScheduledSession>(
	session: S,
	totalsOf: (item: S['items'][number]) => Totals,
): SessionVolume<S> {
	const items = (session.items as readonly S['items'][number][]).map(item => ({ item, totals: totalsOf(item) }))
	const length: Totals = { ...noTotals, seconds: sessionSeconds(session.items) }
	return { session, items, totals: sumTotals([...items.map(item => item.totals), length]) }
}

/** The totals of an item of a plan; tonnage in `unit`. */
function scheduledItemTotals(item: ScheduledItem, date: CalendarDate, unit: Unit): Totals {
	return itemTotals(item, date, set => scheduledWeight(set, unit))
}

/** The totals of an item of a block; `day` is its day in the block's week. */
function plannedItemTotals(item: PlannedItem, day: string, estimator: Estimator): Totals {
	return itemTotals(item, day, set => plannedWeight(set, item, estimator))
}

/** Sets that are done alike are worked out once. */
function itemTotals<S extends PlannedSet>(
	item: PlannedItem & { readonly sets: readonly S[] },
	exposure: string,
	weightOf: (set: S) => SetWeight,
): Totals {
	return sumTotals(alikeSets(item.sets).map(({ set, count }) => setTotals(set, item, exposure, weightOf(set), count)))
}
