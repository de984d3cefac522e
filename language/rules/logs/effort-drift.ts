import { reserveOf } from '../../compute/effort.ts'
import { decimal, exact, larger, zero } from '../../compute/exact.ts'
import { type DatedEntry, entriesOf } from '../../compute/logged-sessions.ts'
import type { Lifter, Log, LoggedLift, LoggedSet } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { Exact } from '../../model/quantities.ts'
import type { ScheduledSet } from '../../model/schedule.ts'
import { groupedBy } from '../common/groups.ts'
import type { DatedSession } from '../common/placed-sessions.ts'
import { itemPlaces } from '../common/plan-sets.ts'
import { titleOf } from '../common/titles.ts'
import { inWords } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import page from './effort-drift.md'
import { plannedSessions } from './planned-sessions.ts'

const sessionsInARow = 3
/** Points past the planned effort. */
const least = exact(1)
/** Percent of the load for each point: 2 for a half. Source: Helms et al. 2023. */
const percentForAPoint = exact(4)

export const effortDrift: Rule = {
	code: 'effort-drift',
	area: 'logs',
	level: 'info',
	summary: 'Logged efforts are past the planned ones by 1 or more in three sessions in a row.',
	source: 'Helms et al. 2023: 2% of the load for each half point outside the planned range; three sessions are common practice',
	fix: 'none',
	since: '0.1.0',
	page,
	check: { log: checkLog },
}

/** A lift in a session, by what was planned and what was logged. */
interface Rated {
	readonly logged: DatedEntry
	readonly lift: LoggedLift
	readonly planned: { readonly session: DatedSession; readonly item: DatedSession['items'][number] }
	/** Mean of the sets, in points of exertion; below 0 where it was easier. */
	readonly over: Exact
}

/** On the log that holds the last of the three, so long as no later session of the lift has come back. */
function checkLog(log: Log, programme: Programme): Finding[] {
	const lifter = programme.find('lifter', log.name.text)
	if (lifter === undefined) return []
	return groupedBy(ratedLifts(lifter, programme), one => one.lift.movement.text).flatMap((rated): Finding[] => {
		const last = rated.slice(-sessionsInARow)
		const latest = last.at(-1)
		if (last.length < sessionsInARow || latest?.logged.log !== log || last.some(one => one.over.compare(least) < 0)) return []
		const mean = last.reduce((sum, one) => sum.add(one.over), zero).div(exact(last.length))
		const points = inWords(last.map(one => `${decimal(one.over, 1)} on ${one.logged.on}`))
		return [
			{
				span: latest.lift.span,
				message: `${titleOf('movement', latest.lift.movement.text, programme)} was harder than planned in ${sessionsInARow} sessions in a row: by ${points} points of effort, where ${decimal(least)} is the limit (common practice). The published correction is 2% of the load for each half point (Helms et al. 2023): ${decimal(mean.mul(percentForAPoint), 0)}% less here.`,
				source: 'Helms et al. 2023',
				related: itemPlaces(
					last.map(one => one.planned),
					'The effort is planned here.',
				),
			},
		]
	})
}

function ratedLifts(lifter: Lifter, programme: Programme): readonly Rated[] {
	const planned = plannedSessions(lifter, programme)
	return entriesOf(lifter, programme).flatMap(logged => {
		const [session] = planned.get(logged.entry) ?? []
		if (session === undefined || logged.entry.missed) return []
		return logged.entry.lifts.flatMap((lift): Rated[] => {
			const item = session.items.find(one => one.working && one.movementName.text === lift.movement.text)
			const over = item && meanOver(item.sets, lift.sets)
			return item === undefined || over === undefined ? [] : [{ logged, lift, planned: { session, item }, over }]
		})
	})
}

/** Set by set, where both say an effort. */
function meanOver(planned: readonly ScheduledSet[], logged: readonly LoggedSet[]): Exact | undefined {
	const differences = logged.flatMap((set, index) => {
		const rated = set.rpe ?? (set.rir && reserveOf({ scale: 'rpe', value: set.rir }))
		const asked = planned[index] && hardest(planned[index])
		return rated === undefined || asked === undefined ? [] : [rated.sub(asked)]
	})
	if (differences.length === 0) return undefined
	return differences.reduce((sum, each) => sum.add(each), zero).div(exact(differences.length))
}

/** The upper end of the exertion that a set asks for. */
function hardest({ effort }: ScheduledSet): Exact | undefined {
	if (effort === undefined) return undefined
	return effort.scale === 'rpe' ? effort.value.to : larger(exact(10).sub(effort.value.from), exact(10).sub(effort.value.to))
}
