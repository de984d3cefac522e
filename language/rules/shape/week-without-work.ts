import type { Block, Item } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { PlannedItem } from '../../model/schedule.ts'
import { skippedIn } from '../common/corrections.ts'
import { titleOfItem } from '../common/exposures.ts'
import { groupedBy } from '../common/groups.ts'
import { headOf } from '../common/places.ts'
import { type Proposal, soundOnes, withItem } from '../common/proposals.ts'
import { weekLineWithWeeks, weeksOf } from '../common/week-lines.ts'
import { weeksInWords } from '../common/weeks.ts'
import type { Rule } from '../rule.ts'
import { sessionsInWeeks } from './missing-work.ts'
import page from './week-without-work.md'

const code = 'week-without-work'

export const weekWithoutWork: Rule = {
	code,
	area: 'shape',
	level: 'warning',
	summary: 'An item has nothing to do in a week, and does not say that it rests.',
	source: "the language's own rules",
	fix: 'to confirm',
	since: '0.1.0',
	page,
	check: { block: checkBlock },
}

function checkBlock(block: Block, programme: Programme): Finding[] {
	const unsaid = sessionsInWeeks(block, programme)
		.filter(session => !session.isWhollyUnsaid)
		.flatMap(({ week, unsaid: items }) => items.map(item => ({ week, item })))
	return groupedBy(unsaid, one => String(one.item.item.span.start)).map(same => {
		const [{ item: planned }] = same
		const { item } = planned
		const weeks = same.map(one => one.week)
		return {
			span: headOf(item),
			message: messageOf(planned, weeks),
			corrections: soundOnes(code, block, programme, () => (item.weekLines.length === 0 ? [] : sayings(item, weeks, block))),
		}
	})
}

function messageOf(planned: PlannedItem, weeks: readonly number[]): string {
	const title = titleOfItem(planned)
	if (planned.item.weekLines.length === 0) {
		return `${title} has no sets. Write them behind it, as in 4 x 5 at 70%, or week by week, as in week 1: 4 x 5 at 70%.`
	}
	return `${title} has nothing to do in ${weeksInWords(weeks)}. Write its sets for ${weeks.length === 1 ? 'that week' : 'those weeks'}, or "skip" where it rests.`
}

function sayings(item: Item, weeks: readonly number[], block: Block): Proposal<Block>[] {
	return [skippedIn(item, weeks, block, `Skip it in ${weeksInWords(weeks)}`), ...repeated(item, weeks, block)]
}

/** The line of the week before goes on. */
function repeated(item: Item, weeks: readonly number[], block: Block): Proposal<Block>[] {
	const before = (weeks[0] ?? 1) - 1
	const isOneStretch = weeks.every((week, index) => week === before + 1 + index)
	const line = item.weekLines.find(each => weeksOf(each.weeks).includes(before))
	// A line for several weeks would begin to follow `each week add …`.
	if (!isOneStretch || line?.prescription === undefined || item.changes.length > 0) return []
	const all = [...weeksOf(line.weeks), ...weeks]
	const longer = { ...line, weeks: all.map(week => ({ from: week, to: week })) }
	const weekLines = item.weekLines.map(each => (each === line ? longer : each))
	return [
		{
			correction: { title: `Repeat week ${before} in ${weeksInWords(weeks)}`, edits: [weekLineWithWeeks(line, all)] },
			changed: withItem(block, item, one => ({ ...one, weekLines })),
		},
	]
}
