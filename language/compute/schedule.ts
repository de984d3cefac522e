import type { Lifter, Plan } from '../model/definitions.ts'
import type { Programme } from '../model/programme.ts'
import type { CalendarDate, Unit, Weekday } from '../model/quantities.ts'
import type {
	BlockOutline,
	LeftOutSession,
	PlannedItem,
	PlannedSession,
	PlannedWeek,
	Schedule,
	ScheduledItem,
	ScheduledRun,
	ScheduledSession,
} from '../model/schedule.ts'
import type { Estimator } from '../model/vocabulary.ts'
import { addDays, weekdayIndex } from './calendar.ts'
import { hundred } from './exact.ts'
import { limitsFor } from './limits.ts'
import { withLoads } from './loads.ts'
import { isMovable } from './outline/placements.ts'
import { outlineBlock, workOutOutline } from './outline.ts'
import { type ChangedBlock, changedBlock } from './schedule/changed-block.ts'
import { placedRuns } from './schedule/placed-runs.ts'
import { gymUnit, planUnit } from './schedule/plan-unit.ts'
import { firstPlanDay, planWeekOf } from './schedule/plan-week.ts'
import { compareParts } from './session-days.ts'
import { gymAt } from './training-place.ts'

/** A plan with its dates, and the loads of its lifter with the way of each; kept until something that it read changes. */
export function schedulePlan(plan: Plan, programme: Programme): Schedule {
	return programme.derived(plan, workOutSchedule)
}

/** What all sessions of a plan share. */
interface PlanSetting {
	readonly plan: Plan
	readonly programme: Programme
	readonly lifter: Lifter | undefined
	readonly unit: Unit
	readonly estimator: Estimator
	/** `undefined` where nothing gives a date, and there are no sessions. */
	readonly firstDay: CalendarDate | undefined
}

function workOutSchedule(plan: Plan, programme: Programme): Schedule {
	const lifter = programme.find('lifter', plan.lifter.text)
	const runs = placedRuns(plan, programme)
	const firstDay = firstPlanDay(plan, runs)
	const unit = planUnit(firstDay === undefined ? undefined : gymAt(lifter, firstDay, programme), lifter)
	const estimator = limitsFor(lifter?.name.text, programme).estimator?.value ?? 'epley'
	const setting: PlanSetting = { plan, programme, lifter, unit, estimator, firstDay }
	const sessions: ScheduledSession[] = []
	const leftOut: LeftOutSession[] = []
	for (const run of runs) {
		const changed = changedBlock(run.block, run.run)
		for (const week of outlineOf(run, changed, programme).weeks) {
			for (const session of week.sessions) {
				const scheduled = dateSession(session, week, run, changed, setting)
				if ('why' in scheduled) leftOut.push(scheduled)
				else sessions.push(scheduled)
			}
		}
	}
	// Sorting is stable: sessions of one time stay in the order of their block.
	sessions.sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : compareParts(a.part, b.part)))
	return { plan, lifter, unit, runs, sessions, leftOut }
}

function outlineOf(run: ScheduledRun, changed: ChangedBlock, programme: Programme): BlockOutline {
	return changed.block === run.block ? outlineBlock(run.block, programme) : workOutOutline(changed.block, programme)
}

function dateSession(
	planned: PlannedSession,
	week: PlannedWeek,
	run: ScheduledRun,
	changed: ChangedBlock,
	setting: PlanSetting,
): ScheduledSession | LeftOutSession {
	const { plan, programme, lifter } = setting
	const { session, day, items } = planned
	const left = { run, session, day, blockWeek: week.week }
	const weekday = weekdayFor(planned, plan, changed)
	if (weekday === undefined) return { ...left, why: 'no-day' }
	const date = addDays(run.monday, 7 * (week.week - 1) + weekdayIndex(weekday))
	if (plan.start !== undefined && date < plan.start.value) return { ...left, why: 'before-start' }
	const gym = gymAt(lifter, date, programme)
	const unit = gymUnit(gym) ?? setting.unit
	const touched = items.map((item): PlannedItem & Pick<ScheduledItem, 'changedBy' | 'insteadOf'> => ({
		...item,
		...(changed.itemChanges.get(item.item) ?? { changedBy: undefined, insteadOf: undefined }),
	}))
	return {
		run,
		session,
		blockWeek: week.week,
		date,
		weekday,
		part: day?.part,
		planWeek: planWeekOf(date, setting.firstDay ?? date),
		deload: week.deload,
		gym,
		uses: lifter?.uses ?? [],
		items: withLoads(touched, item => ({
			name: item.movementName.text,
			movement: item.movement,
			lifter,
			firstDay: run.firstDay,
			unit,
			estimator: setting.estimator,
			scale: changed.scales.get(item.movementName.text) ?? hundred,
			programme,
			gym,
			swappedFor: item.changedBy === 'swap' ? item.insteadOf?.text : undefined,
		})),
	}
}

/** The weekday that a run moves a session of one day to, else its day's own, else the plan's for its `day N`. */
function weekdayFor({ session, day }: PlannedSession, plan: Plan, changed: ChangedBlock): Weekday | undefined {
	const ofDay = day?.number === undefined ? undefined : plan.days?.value[day.number - 1]
	return (isMovable(session, changed.block) ? changed.moves.get(session.name.text) : undefined) ?? day?.weekday ?? ofDay
}
