import type { Block, Item, WeekLine } from '../../model/definitions.ts'
import type { Finding } from '../../model/problem.ts'
import type { Programme } from '../../model/programme.ts'
import type { Correction } from '../../model/reading.ts'
import { weekLineWithWeeks, weeksOf } from '../common/week-lines.ts'
import { weeksInWords } from '../common/weeks.ts'
import type { Rule } from '../rule.ts'
import page from './week-stated-twice.md'

export const weekStatedTwice: Rule = {
	code: 'week-stated-twice',
	area: 'shape',
	level: 'error',
	summary: 'Two lines of an item cover the same week.',
	source: "the language's own rules",
	fix: 'to confirm',
	since: '0.1.0',
	page,
	check: { block: checkBlock },
}

function checkBlock(block: Block, programme: Programme): Finding[] {
	return block.sessions.flatMap(session => session.items).flatMap(item => checkItem(item, block, programme))
}

function checkItem(item: Item, block: Block, programme: Programme): Finding[] {
	const title = programme.find('movement', item.movement.text)?.title?.text ?? item.movement.text
	return item.weekLines.flatMap((line, index): Finding[] => {
		const earlier = item.weekLines.slice(0, index)
		const stated = (week: number) => earlier.find(other => weeksOf(other.weeks).includes(week))
		const twice = weeksOf(line.weeks).filter(stated)
		const first = twice[0] === undefined ? undefined : stated(twice[0])
		if (first === undefined) return []
		const weeks = weeksInWords(twice)
		return [
			{
				span: line.span,
				message: `${title} has work for ${weeks} twice: the line above counts, this one does not. Keep one of them.`,
				related: [{ definition: block, span: first.span, message: 'This line counts.' }],
				corrections: [without(line, twice, 'Keep the line above'), without(first, twice, 'Keep this line')],
			},
		]
	})
}

/** A line without the weeks that another one has. */
function without(line: WeekLine, weeks: readonly number[], title: string): Correction {
	const left = weeksOf(line.weeks).filter(week => !weeks.includes(week))
	const edit = left.length === 0 ? { span: line.span, text: '' } : weekLineWithWeeks(line, left)
	return { title: `${title} for ${weeksInWords(weeks)}`, edits: [edit] }
}
