import type { DayMove, Lifter, Plan } from '../model/definitions.ts'
import type { Programme } from '../model/programme.ts'
import type { CalendarDate, Unit } from '../model/quantities.ts'
import type { LeftOutSession, PlannedItem, Schedule, ScheduledRun, ScheduledSession } from '../model/schedule.ts'
import type { Estimator } from '../model/vocabulary.ts'
import { weekdayOf } from './calendar.ts'
import { hundred } from './exact.ts'
import { limitsFor } from './limits.ts'
import { withLoads } from './loads.ts'
import { type ItemChange, unchanged } from './schedule/changed-block.ts'
import { gymUnit, planUnit } from './schedule/plan-unit.ts'
import { firstPlanDay, planWeekOf } from './schedule/plan-week.ts'
import { type PlacedSession, runSessions } from './schedule/run-sessions.ts'
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
	const placed = runSessions(plan, programme)
	const runs = placed.map(({ run }) => run)
	const firstDay = firstPlanDay(plan, runs)
	const unit = planUnit(firstDay === undefined ? undefined : gymAt(lifter, firstDay, programme), lifter)
	const estimator = limitsFor(lifter?.name.text, programme).estimator?.value ?? 'epley'
	const setting: PlanSetting = { plan, programme, lifter, unit, estimator, firstDay }
	const scheduled = placed.flatMap(({ run, sessions: own }) => own.map(session => dateSession(session, run, setting)))
	const leftOut = scheduled.filter((session): session is LeftOutSession => 'why' in session)
	const sessions = scheduled.filter((session): session is ScheduledSession => !('why' in session))
	// Sorting is stable: sessions of one time stay in the order of their block.
	sessions.sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : compareParts(a.part, b.part)))
	return { plan, lifter, unit, runs, sessions, leftOut }
}

function dateSession(placed: PlacedSession, run: ScheduledRun, setting: PlanSetting): ScheduledSession | LeftOutSession {
	const { plan, programme, lifter } = setting
	const { planned, changed, blockWeek, runWeek, deload, meant, date: given, overrun } = placed
	const { session, day, items } = planned
	const left = { run, session, day, blockWeek, runWeek }
	if (given === undefined || meant === undefined) return { ...left, why: 'no-day' }
	if (plan.start !== undefined && meant < plan.start.value) return { ...left, why: 'before-start' }
	if (overrun) return { ...left, why: 'overrun' }
	const move = dayMove(session.name.text, given, run, plan)
	const date = move?.to ?? given
	const gym = gymAt(lifter, date, programme)
	const unit = gymUnit(gym) ?? setting.unit
	const touched = items.map((item): PlannedItem & ItemChange => ({
		...item,
		...(changed.itemChanges.get(item.item) ?? unchanged),
	}))
	return {
		run,
		session,
		blockWeek,
		runWeek,
		date,
		weekday: weekdayOf(date),
		meant,
		movedFrom: move?.from,
		part: day?.part,
		planWeek: planWeekOf(date, setting.firstDay ?? date),
		deload,
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
			swappedFor: item.prescribedIn === 'block' ? item.insteadOf?.text : undefined,
		})),
	}
}

/** The line that moves a session of one day: of its run, or of the plan. */
function dayMove(session: string, date: CalendarDate, { run }: ScheduledRun, plan: Plan): DayMove | undefined {
	const ofRun = run.changes.filter(change => change.kind === 'move-day')
	return [...ofRun, ...plan.moves].find(move => move.session.text === session && move.from === date)
}
