import { exact } from '../../compute/exact.ts'
import { limitsFor } from '../../compute/limits.ts'
import { leastPercent } from '../../compute/percents.ts'
import type { CountRange } from '../../model/quantities.ts'
import type { PlannedItem } from '../../model/schedule.ts'
import { titleOfItem } from '../common/exposures.ts'
import { groupedBy } from '../common/groups.ts'
import { type ItemFault, itemChecks } from '../common/item-checks.ts'
import type { PlacedSession } from '../common/placed-sessions.ts'
import { headOf } from '../common/places.ts'
import { weeksInWords } from '../common/weeks.ts'
import { counted } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import page from './lifts-outside-table.md'

/**
 * Lifts of one lift in one session by intensity zone. Source: Prilepin's table, as two later copies give it; they differ on the edges of
 * the zones, and [70, 80) is taken here. The books that it comes from were not read.
 */
const zones = [
	{ from: exact(0), text: 'under 70%', lifts: { from: 18, to: 30 } },
	{ from: exact(70), text: 'from 70% to under 80%', lifts: { from: 12, to: 24 } },
	{ from: exact(80), text: 'from 80% to under 90%', lifts: { from: 10, to: 20 } },
	{ from: exact(90), text: 'at 90% or more', lifts: { from: 4, to: 10 } },
] as const
type Zone = (typeof zones)[number]

/** The table has no row for longer sets. */
const mostReps = 6

const source = "Prilepin's table, as two later copies give it"

interface LiftsOutside extends ItemFault {
	readonly zone: Zone
	readonly lifts: number
}

export const liftsOutsideTable: Rule = {
	code: 'lifts-outside-table',
	area: 'dose',
	level: 'off',
	summary: 'The number of lifts of a main lift in a session lies outside the published table for its intensity zone.',
	source,
	fix: 'none',
	since: '0.1.0',
	page,
	check: itemChecks<LiftsOutside>({
		faultsIn: (session, whose, programme) => {
			const estimator = limitsFor(whose, programme).estimator?.value ?? 'epley'
			const main = session.items.filter(item => item.working && item.role === 'main')
			return groupedBy(main, item => item.movementName.text).flatMap(same => {
				const sets = same.flatMap(item => item.sets.map(set => ({ item, set, zone: zoneOf(leastPercent(set, item, estimator)) })))
				return outside(same[0], sets, session)
			})
		},
		finding: same => {
			const [{ item, zone }] = same
			const counts = [...new Set(same.map(one => one.lifts))].sort((a, b) => a - b)
			const weeks = weeksInWords(same.map(one => one.session.runWeek))
			const lifts = counts.length === 1 ? counted(counts[0]!, 'lift') : `${counts[0]}-${counts.at(-1)} lifts`
			return {
				message: `${titleOfItem(item)} has ${lifts} a session ${zone.text} in ${weeks}; the table gives ${zone.lifts.from}-${zone.lifts.to} (${source}).`,
				source,
			}
		},
		spanOf: ({ item }) => headOf(item.item),
	}),
}

function zoneOf(percent: ReturnType<typeof leastPercent>): Zone | undefined {
	return percent && zones.findLast(zone => percent.compare(zone.from) >= 0)
}

/** Only where all sets stand in one row of the table: shares of several rows are nobody's table. */
function outside(
	item: PlannedItem,
	sets: readonly { readonly item: PlannedItem; readonly set: PlannedItem['sets'][number]; readonly zone: Zone | undefined }[],
	session: PlacedSession,
): LiftsOutside[] {
	const [first] = sets
	const zone = first?.zone
	const isOneRow = sets.every(one => one.zone === zone && one.set.work.kind === 'reps' && one.set.work.reps.to <= mostReps)
	if (first === undefined || zone === undefined || !isOneRow) return []
	const { from, to } = sets.reduce<CountRange>(
		(sum, { set }) => {
			const reps = set.work.kind === 'reps' ? set.work.reps : { from: 0, to: 0 }
			return { from: sum.from + (set.optional ? 0 : reps.from), to: sum.to + reps.to }
		},
		{ from: 0, to: 0 },
	)
	if (from > zone.lifts.to) return [{ item, set: first.set, cause: `over ${zone.text}`, zone, lifts: from }]
	if (to < zone.lifts.from && !session.deload) return [{ item, set: first.set, cause: `under ${zone.text}`, zone, lifts: to }]
	return []
}
