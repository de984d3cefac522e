import { decimal, exact, hundred, zero } from '../../compute/exact.ts'
import { type Limit, limitsFor } from '../../compute/limits.ts'
import type { Block, Lifter } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { CountRange } from '../../model/quantities.ts'
import type { PlacedSession } from '../common/placed-sessions.ts'
import { findingsOn, type PlanFinding } from '../common/run-findings.ts'
import { blockWeeks, type CalendarWeek, calendarWeeks, type WeekInRow } from '../common/week-rows.ts'
import { weeksInWords } from '../common/weeks.ts'
import { counted } from '../common/words.ts'
import type { Rule } from '../rule.ts'
import page from './no-lighter-week.md'

export const noLighterWeek: Rule = {
	code: 'no-lighter-week',
	area: 'dose',
	level: 'info',
	summary: 'More weeks in a row than the limit, and none of them lighter.',
	source: 'the `a lighter week every … weeks` of the limits',
	fix: 'none',
	since: '0.1.0',
	page,
	check: {
		block: checkBlock,
		plan: (plan, programme) => findingsOn(plan, programme, ofLifter),
	},
}

/** A week with so many percent of the sets of the week before, or fewer, is a lighter one (common practice). */
const lighterPercent = exact(70)

/** Weeks in a row with full work, where there are more of them than the limit. */
function longRows<W extends WeekInRow<PlacedSession>>(weeks: readonly W[], limit: CountRange): readonly (readonly W[])[] {
	const rows: W[][] = []
	let row: W[] = []
	for (const week of weeks) {
		const last = row.at(-1)
		const isFull = week.hasWork && !week.deload && !(last !== undefined && isLighter(week, last))
		if (isFull) row.push(week)
		else row = []
		if (row.length === limit.to + 1) rows.push(row)
	}
	return rows
}

function isLighter(week: WeekInRow<PlacedSession>, last: WeekInRow<PlacedSession>): boolean {
	return setsOf(week).mul(hundred).compare(setsOf(last).mul(lighterPercent)) <= 0
}

/** Working sets that are sure to be done. */
function setsOf({ sessions }: WeekInRow<PlacedSession>) {
	const items = sessions.flatMap(session => session.items.filter(item => item.working))
	return items.reduce((sum, { sets }) => sum.add(sets.filter(set => !set.optional).length), zero)
}

function rowsInBlock(block: Block, programme: Programme): readonly (readonly WeekInRow<PlacedSession>[])[] {
	const limit = limitsFor(block, programme).lighterWeekEvery
	return limit ? longRows(blockWeeks(block, programme), limit.value) : []
}

function checkBlock(block: Block, programme: Programme): Finding[] {
	const limit = limitsFor(block, programme).lighterWeekEvery
	if (limit === undefined) return []
	return rowsInBlock(block, programme).map(row => ({
		span: block.weeks?.span ?? block.header,
		...said(row.length, weeksInWords(row.map(each => each.week)), limit),
	}))
}

/** Over the blocks of a lifter together, where no block is too long by itself. */
function ofLifter(lifter: Lifter, programme: Programme): readonly PlanFinding[] {
	const limit = limitsFor(lifter.name.text, programme).lighterWeekEvery
	if (limit === undefined) return []
	return longRows(calendarWeeks(lifter, programme), limit.value).flatMap((row): PlanFinding[] => {
		const blocks = new Set(row.flatMap(week => week.sessions.map(session => session.run.block)))
		const where = overflow(row, limit.value)
		if (where === undefined || [...blocks].some(block => rowsInBlock(block, programme).length > 0)) return []
		const when = `from ${row[0]?.monday ?? ''}`
		return [{ plan: where.plan, finding: { span: where.run.run.header, ...said(row.length, when, limit) } }]
	})
}

/** The first week that is one too many: its run is where it shows. */
function overflow(row: readonly CalendarWeek[], limit: CountRange) {
	return row[limit.to]?.sessions.find(session => session.items.some(item => item.working))
}

function said(count: number, when: string, limit: Limit<CountRange>): Omit<Finding, 'span'> {
	const { from, to } = limit.value
	const every = from === to ? counted(to, 'week') : `${from}-${to} weeks`
	return {
		message: `${counted(count, 'week')} in a row (${when}) without a lighter one: no deload, no week off, none with ${decimal(lighterPercent)}% of the sets of the week before or fewer; a lighter week comes every ${every} (${limit.origin}). Asked about it, 246 people took one every 5.6 weeks on average (Rogerson 2024).`,
		source: limit.origin,
		related: [{ definition: limit.definition, span: limit.span, message: 'The limit stands here.' }],
	}
}
