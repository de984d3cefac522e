import { decimal, hundred } from '../../compute/exact.ts'
import type { RelatedPlace } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { CalendarDate, Exact } from '../../model/quantities.ts'
import type { Schedule, ScheduledItem, ScheduledRun, ScheduledSession, ScheduledSet } from '../../model/schedule.ts'
import { groupedBy } from './groups.ts'
import { distinctPlaces } from './places.ts'
import { titleOf } from './titles.ts'
import { weeksInWords } from './weeks.ts'

/** Sets of one movement in one run that are heavier than a percent of a lift. */
export interface SetsOver {
	readonly run: ScheduledRun
	readonly movement: string
	readonly weeks: readonly number[]
	/** Percents of the lift, lowest and highest. */
	readonly from: Exact
	readonly to: Exact
	/** "80%" */
	readonly limit: string
	readonly places: readonly RelatedPlace[]
}

interface Over {
	readonly session: ScheduledSession
	readonly item: ScheduledItem
	readonly set: ScheduledSet
	readonly percent: Exact
}

/**
 * The sets of a plan that are above a percent of a lift, by run and movement: by the exact load, however it is written, and where the
 * coach left room by the low end. `concerns` says which items count on which day.
 */
export function setsOver(
	schedule: Schedule,
	limit: Exact,
	concerns: (item: ScheduledItem, date: CalendarDate) => boolean,
): readonly SetsOver[] {
	const over = schedule.sessions.flatMap(session =>
		session.items
			.filter(item => concerns(item, session.date))
			.flatMap(item => {
				const known = item.sets.flatMap(set => {
					const percent = set.optional ? undefined : percentOfLift(set)
					return percent ? [{ session, item, set, percent }] : []
				})
				return known
					.filter(one => one.percent.compare(limit) > 0)
					.sort((a, b) => b.percent.compare(a.percent))
					.slice(0, 1)
			}),
	)
	return groupedBy(over, one => `${one.session.run.run.span.start} ${one.item.movementName.text}`).map(same => {
		const [{ session, item }] = same
		const percents = same.map(one => one.percent).sort((a, b) => a.compare(b))
		return {
			run: session.run,
			movement: item.movementName.text,
			weeks: same.map(one => one.session.runWeek),
			from: percents[0]!,
			to: percents.at(-1)!,
			limit: `${decimal(limit, 1)}%`,
			places: distinctPlaces(same.map(one => placeOver(one, schedule))),
		}
	})
}

/** A movement that counts from a share of the lift's best is lighter, in percent of the lift, than its own percent says. */
function percentOfLift({ computed }: ScheduledSet): Exact | undefined {
	const { percent, reference } = computed
	return percent && reference && percent.from.mul(reference.share).div(hundred)
}

/** The heaviest set itself: it stands in the block, or in the run that prescribes it. */
function placeOver({ session, item, set, percent }: Over, { plan }: Schedule): RelatedPlace {
	const definition = item.prescribedIn === 'plan' ? plan : session.run.block
	return { definition, span: set.group.span, message: `${decimal(percent, 1)}% on ${session.date}.` }
}

/** "Deadlift is at 82.5-85% in weeks 2-4" */
export function overPercent({ movement, weeks, from, to }: SetsOver, programme: Programme): string {
	const [low, high] = [decimal(from, 1), decimal(to, 1)]
	return `${titleOf('movement', movement, programme)} is at ${low === high ? low : `${low}-${high}`}% in ${weeksInWords(weeks)}`
}
