import { covers } from '../../compute/outline/week-choice.ts'
import { outlineBlock } from '../../compute/outline.ts'
import type { Block, Item, Run, Session, WeekLine } from '../../model/definitions.ts'
import type { Programme } from '../../model/programme.ts'
import type { TextEdit } from '../../model/reading.ts'
import { type Proposal, withItem } from './proposals.ts'
import { weekNumbers } from './week-lines.ts'
import { weeksInWords } from './weeks.ts'

/** Layout means nothing; this is how the formatter would write it. */
const itemLineIndent = '\n      '
const runLineIndent = '\n    '
const memberLineIndent = '\n      '
const itemIndent = '\n    '

/** Takes an item out of a block, or skips it in some weeks where it has work in others. */
export function dropped(
	item: Item,
	weeks: readonly number[],
	block: Block,
	programme: Programme,
	where: string,
): Proposal<Block>[] {
	const title = programme.find('movement', item.movement.text)?.title?.text ?? item.movement.text
	const worked = outlineBlock(block, programme).weeks.filter(({ sessions }) =>
		sessions.some(({ items }) => items.some(planned => planned.item === item && planned.sets.length > 0)),
	)
	if (worked.every(({ week }) => weeks.includes(week))) {
		const correction = { title: `Drop ${title} ${where}`, edits: [{ span: item.span, text: '' }] }
		return [{ correction, changed: withItem(block, item, () => undefined) }]
	}
	if (weeks.some(week => item.weekLines.some(line => covers(line.weeks, week)))) return []
	return [skippedIn(item, weeks, block, `Skip ${title} ${where} in ${weeksInWords(weeks)}`)]
}

/** A line `week 3: skip` below the item's other week lines. */
export function skippedIn(item: Item, weeks: readonly number[], block: Block, title: string): Proposal<Block> {
	const after = item.weekLines.at(-1)?.span.end ?? item.everyWeek?.span.end ?? item.movement.span.end
	const span = { start: after, end: after }
	const line: WeekLine = { weeks: weeks.map(week => ({ from: week, to: week })), skip: true, prescription: undefined, span }
	return {
		correction: { title, edits: [{ span, text: `${itemLineIndent}week ${weekNumbers(weeks)}: skip` }] },
		changed: withItem(block, item, one => ({ ...one, weekLines: [...one.weekLines, line] })),
	}
}

/** A line below a run's own: `move heavy-pull to tuesday`. In a member's plan it holds for that member alone. */
export function runLine(run: Run, line: string): TextEdit {
	return forMember(run, [line], { span: { start: run.header.end, end: run.header.end }, text: `${runLineIndent}${line}` })
}

/** Lines below all of a run's own. In a member's plan they hold for that member alone. */
export function lastRunLines(run: Run, lines: readonly string[]): TextEdit {
	const text = lines.map(line => `${runLineIndent}${line}`).join('')
	return forMember(run, lines, { span: run.linesEnd, text })
}

function forMember({ forMember: member, tail }: Run, lines: readonly string[], forAll: TextEdit): TextEdit {
	if (member === undefined) return forAll
	const text = lines.map(line => `${memberLineIndent}${line}`).join('')
	return { span: tail, text: `${runLineIndent}for ${member}${text}`, forAll }
}

/** Items below all of a session's own. */
export function sessionLines(session: Session, lines: readonly string[]): TextEdit {
	return { span: { start: session.span.end, end: session.span.end }, text: lines.map(line => `${itemIndent}${line}`).join('') }
}
