import { daysBetween } from '../../compute/calendar.ts'
import { covers } from '../../compute/outline/week-choice.ts'
import { schedulePlan } from '../../compute/schedule.ts'
import type { Block, Lifter, Plan } from '../../model/definitions.ts'
import type { Programme } from '../../model/programme.ts'
import type { CalendarDate } from '../../model/quantities.ts'
import type { PlannedItem, ScheduledRun } from '../../model/schedule.ts'
import { groupedBy } from './groups.ts'
import { blockSessions, type DatedSession, lifterSessions, type PlacedSession } from './placed-sessions.ts'
import { plansRunning } from './plans-running.ts'

/** A week of a run in which the lifter trains as usual. */
export interface TrainingWeek {
	readonly plan: Plan
	readonly run: ScheduledRun
	/** Of the block, from 1. */
	readonly blockWeek: number
	/** Of the run, from 1. */
	readonly runWeek: number
	readonly monday: CalendarDate
	/** Of this run. */
	readonly own: readonly DatedSession[]
	/** Of all the lifter's plans. */
	readonly sessions: readonly DatedSession[]
}

/** A meet's last days do not build: so many before it are no training weeks. */
const daysBeforeAMeet = 14

/**
 * The training weeks of all plans of a lifter: whole weeks with work, no deload, not the last two before a meet. A week whose sessions
 * have no day, or of which a part lies before the start, is none: what it holds cannot be known.
 */
export function trainingWeeks(lifter: Lifter, programme: Programme): readonly TrainingWeek[] {
	return programme.derived(lifter, workOutTrainingWeeks)
}

function workOutTrainingWeeks(lifter: Lifter, programme: Programme): readonly TrainingWeek[] {
	const plans = programme.plansOf(lifter.name.text)
	const meets = plans.flatMap(plan => plan.meets.map(meet => meet.on))
	const byMonday = new Map(groupedBy(lifterSessions(lifter, programme), one => one.monday).map(week => [week[0].monday, week]))
	return plans.flatMap(plan => {
		const { runs, leftOut } = schedulePlan(plan, programme)
		return runs.flatMap(run =>
			run.mondays.flatMap((monday, index): TrainingWeek[] => {
				const runWeek = index + 1
				const blockWeek = (index % run.blockWeeks) + 1
				const isTorn = run.tornMondays.includes(monday)
				const sessions = byMonday.get(monday) ?? []
				const own = sessions.filter(one => one.plan === plan && one.run === run)
				const known = !isTorn && monday >= run.firstDay && !leftOut.some(left => left.run === run && left.runWeek === runWeek)
				const trains = own.some(hasWork) && !isDeload(run.block, blockWeek) && !isBeforeAMeet(monday, meets)
				return known && trains ? [{ plan, run, blockWeek, runWeek, monday, own, sessions }] : []
			}),
		)
	})
}

/** The training weeks of a block, whatever the lifter; those that stand before a meet in every plan that runs it are none. */
export function blockTrainingWeeks(
	block: Block,
	programme: Programme,
): readonly { readonly week: number; readonly sessions: readonly PlacedSession[] }[] {
	const runs = plansRunning(block, programme).flatMap(plan => {
		const meets = plan.meets.map(meet => meet.on)
		return schedulePlan(plan, programme)
			.runs.filter(run => run.block === block)
			.map(({ mondays, blockWeeks }) => (week: number) => {
				// Of a block that is run several times, each time.
				const ofWeek = mondays.filter((_, index) => index % blockWeeks === week - 1)
				return ofWeek.every(monday => isBeforeAMeet(monday, meets))
			})
	})
	return groupedBy(blockSessions(block, programme), session => String(session.blockWeek))
		.map(sessions => ({ week: sessions[0].blockWeek, sessions }))
		.filter(({ week, sessions }) => sessions.some(hasWork) && !isDeload(block, week))
		.filter(({ week }) => runs.length === 0 || !runs.every(isBeforeMeet => isBeforeMeet(week)))
}

function hasWork(session: { readonly items: readonly PlannedItem[] }): boolean {
	return session.items.some(item => item.working)
}

function isDeload(block: Block, week: number): boolean {
	return covers(block.deload?.weeks ?? [], week)
}

/** Is the week of that monday one of the last two before a meet? */
export function isBeforeAMeet(monday: CalendarDate, meets: readonly CalendarDate[]): boolean {
	return meets.some(meet => {
		const days = daysBetween(monday, meet)
		return days >= 0 && days <= daysBeforeAMeet
	})
}
