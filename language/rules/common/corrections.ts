import { covers } from '../../compute/outline/week-choice.ts'
import { outlineBlock } from '../../compute/outline.ts'
import type { Block, Item, Run, Session } from '../../model/definitions.ts'
import type { Programme } from '../../model/programme.ts'
import type { Correction } from '../../model/reading.ts'
import type { Span } from '../../model/text.ts'
import { weekNumbers } from './week-lines.ts'
import { weeksInWords } from './weeks.ts'

/** Layout means nothing; this is how the formatter would write it. */
const itemLineIndent = '\n      '
const runLineIndent = '\n    '
const itemIndent = '\n    '

/**
 * Takes an item out of a block, or skips it in some weeks where it has work in others. Offered only where its session keeps other work in
 * those weeks, and where no item hangs on it.
 */
export function dropped(
	item: Item,
	session: Session,
	weeks: readonly number[],
	block: Block,
	programme: Programme,
	where: string,
): Correction[] {
	const worked = workOf(item, session, block, programme)
	const next = session.items[session.items.indexOf(item) + 1]
	if (next?.withItemAbove || weeks.some(week => !worked.othersIn.has(week))) return []
	const title = programme.find('movement', item.movement.text)?.title?.text ?? item.movement.text
	if (worked.weeks.every(week => weeks.includes(week))) {
		return [{ title: `Drop ${title} ${where}`, edits: [{ span: item.span, text: '' }] }]
	}
	if (weeks.some(week => item.weekLines.some(line => covers(line.weeks, week)))) return []
	return [{ title: `Skip ${title} ${where} in ${weeksInWords(weeks)}`, edits: [skipIn(item, weeks)] }]
}

/** In which weeks an item has work, and in which the rest of its session has. */
function workOf(item: Item, session: Session, block: Block, programme: Programme) {
	const weeks: number[] = []
	const othersIn = new Set<number>()
	for (const { week, sessions } of outlineBlock(block, programme).weeks) {
		const items = sessions.find(each => each.session === session)?.items ?? []
		if (items.some(each => each.item === item && each.sets.length > 0)) weeks.push(week)
		if (items.some(each => each.item !== item && each.working)) othersIn.add(week)
	}
	return { weeks, othersIn }
}

/** A line `week 3: skip` below the item's other week lines. */
export function skipIn(item: Item, weeks: readonly number[]): { span: Span; text: string } {
	const after = item.weekLines.at(-1)?.span.end ?? item.everyWeek?.span.end ?? item.movement.span.end
	return { span: { start: after, end: after }, text: `${itemLineIndent}week ${weekNumbers(weeks)}: skip` }
}

/** A line below a run's own: `move heavy-pull to tuesday`. */
export function runLine(run: Run, line: string): { span: Span; text: string } {
	return { span: { start: run.header.end, end: run.header.end }, text: `${runLineIndent}${line}` }
}

/** Lines below all of a run's own. */
export function lastRunLines(run: Run, lines: readonly string[]): { span: Span; text: string } {
	return { span: { start: run.span.end, end: run.span.end }, text: lines.map(line => `${runLineIndent}${line}`).join('') }
}

/** Items below all of a session's own. */
export function sessionLines(session: Session, lines: readonly string[]): { span: Span; text: string } {
	return { span: { start: session.span.end, end: session.span.end }, text: lines.map(line => `${itemIndent}${line}`).join('') }
}
