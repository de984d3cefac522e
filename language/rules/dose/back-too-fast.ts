import { daysBetween } from '../../compute/calendar.ts'
import { decimal, exact, hundred, zero } from '../../compute/exact.ts'
import { lastTrainingWeek } from '../../compute/outline.ts'
import type { Lifter } from '../../model/definitions.ts'
import type { RelatedPlace } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import { titleOfItem } from '../common/exposures.ts'
import { liftedKilograms } from '../common/lifted.ts'
import type { DatedSession } from '../common/placed-sessions.ts'
import { distinctPlaces, placeOfItem } from '../common/places.ts'
import { findingsOn, type PlanFinding } from '../common/run-findings.ts'
import { topLoads } from '../common/top-loads.ts'
import { isBeforeAMeet } from '../common/training-weeks.ts'
import { type CalendarWeek, calendarWeeks } from '../common/week-rows.ts'
import { counted, inWords } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import page from './back-too-fast.md'

export const backTooFast: Rule = {
	code: 'back-too-fast',
	area: 'dose',
	level: 'warning',
	summary: 'The first week after two weeks or more without training is nearly as hard as the last one before.',
	source: 'common practice',
	fix: 'none',
	since: '0.1.0',
	page,
	check: { plan: (plan, programme) => findingsOn(plan, programme, ofLifter) },
}

/** So many days without a session are a break (common practice). */
const breakDays = 14
/** What the first week back may have of the last training week, in percent: of the sets, and of the top load of a main lift. */
const mostSets = exact(70)
const mostLoad = exact(90)

function ofLifter(lifter: Lifter, programme: Programme): readonly PlanFinding[] {
	const weeks = calendarWeeks(lifter, programme)
	// A meet's last days are lighter than what comes after the break should be.
	const meets = programme.plansOf(lifter.name.text).flatMap(plan => plan.meets.map(meet => meet.on))
	const building = weeks.filter(week => !isBeforeAMeet(week.monday, meets))
	const working = weeks.flatMap(week => week.sessions.filter(isWorking).map(session => ({ week, session })))
	return working.flatMap(({ week, session }, index): PlanFinding[] => {
		const before = working[index - 1]?.session
		const off = before === undefined ? 0 : daysBetween(before.date, session.date) - 1
		const last = before && off >= breakDays ? lastTrainingWeek(building, week.week) : undefined
		return before && last?.isWhole ? comeBack(week, last, before, session, off, lifter) : []
	})
}

function isWorking({ items }: DatedSession): boolean {
	return items.some(item => item.working)
}

function comeBack(
	week: CalendarWeek,
	last: CalendarWeek,
	before: DatedSession,
	first: DatedSession,
	off: number,
	lifter: Lifter,
): PlanFinding[] {
	const sets = setsOf(week, 'sure').div(setsOf(last, 'all')).mul(hundred)
	const heavy = heavyLifts(week, last, lifter)
	const said: string[] = []
	const places: RelatedPlace[] = []
	if (sets.compare(mostSets) > 0)
		said.push(`has ${decimal(sets, 0)}% of the sets of the week of ${last.monday} (${decimal(mostSets)}% is enough)`)
	if (heavy.length > 0) {
		const lifts = heavy.map(({ item, percent }) => `${titleOfItem(item)} at ${decimal(percent, 0)}%`)
		said.push(`has ${inWords(lifts)} of that week's top load (${decimal(mostLoad)}% is enough)`)
		places.push(...heavy.map(({ item, session }) => placeOfItem(item, session, `On ${session.date}.`)))
	}
	if (said.length === 0) return []
	const { plan, run } = first
	return [
		{
			plan,
			finding: {
				span: run.run.header,
				message: `After ${counted(off, 'day')} without training (since ${before.date}) the first week back, of ${week.monday}, ${inWords(said)} (common practice). Begin with less.`,
				source: 'common practice',
				related: distinctPlaces(places),
			},
		},
	]
}

/** Main work of the first week back that is nearly as heavy as before, or heavier. */
function heavyLifts(week: CalendarWeek, last: CalendarWeek, lifter: Lifter) {
	const tops = (of: CalendarWeek) => topLoads(of.sessions, (set, item) => liftedKilograms(set, item, lifter))
	const before = tops(last)
	return [...tops(week)].flatMap(([movement, { item, session, load }]) => {
		const was = before.get(movement)?.load.to
		if (item.role !== 'main' || was === undefined || was.compare(zero) <= 0) return []
		const percent = load.from.div(was).mul(hundred)
		return percent.compare(mostLoad) > 0 ? [{ item, session, percent }] : []
	})
}

/** Working sets: those that are sure to be done, or all that may be. */
function setsOf({ sessions }: CalendarWeek, which: 'sure' | 'all') {
	const sets = sessions.flatMap(session => session.items.filter(item => item.working).flatMap(item => item.sets))
	return exact(sets.filter(set => which === 'all' || !set.optional).length)
}
