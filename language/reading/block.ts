import type * as tree from '../grammar/generated/ast.ts'
import type { Block, Deload, Gate, Item, Session, Turn, WeekLine } from '../model/definitions.ts'
import type { Change, Milestone } from '../model/prescription.ts'
import type { CountRange } from '../model/quantities.ts'
import type { Fault } from '../model/reading.ts'
import type { Name, QuotedText, Span } from '../model/text.ts'
import { readGate } from './gate.ts'
import { readChange, readMilestone, readPrescription } from './prescription.ts'
import { fact, type Reader } from './reader.ts'
import { readSessionDays } from './session-days.ts'
import { checkTurns, readTurn } from './turn.ts'

/** Nobody plans a block of more weeks than a year has. */
const mostWeeks = 52

export function readBlock(reader: Reader, node: tree.Block, faults: readonly Fault[]): Block {
	const targets: Name[] = []
	const answers: Name[] = []
	const requires: Gate[] = []
	const turns: Turn[] = []
	const sessions: Session[] = []
	let weeks: Block['weeks']
	let deload: Deload | undefined
	let percentsOf: Block['percentsOf']
	for (const line of node.lines ?? []) {
		const span = reader.span(line)
		if (reader.common(line, reader.span(node))) continue
		if (line.$type !== 'Session' && sessions.length > 0) {
			const message = 'This line is about the whole block, so it stands above its first session.'
			reader.fault('syntax', span, message)
		}
		switch (line.$type) {
			case 'WeeksLine':
				if (reader.first('weeks', line)) weeks = fact(readWeeks(reader, line), span)
				break
			case 'DeloadLine':
				if (reader.first('deload', line)) deload = readDeload(reader, line)
				break
			case 'TargetsLine': {
				const names = reader.referencesIn(line, 'movements', 'movement')
				if (reader.first('targets', line)) targets.push(...names)
				break
			}
			case 'AnswersLine': {
				const names = reader.referencesIn(line, 'breakdowns', 'breakdown')
				if (reader.first('answers', line)) answers.push(...names)
				break
			}
			case 'PercentsOfLine':
				if (reader.first('percents of', line))
					percentsOf = fact(reader.word(line, 'base', ['best', 'base'] as const, 'what percents refer to'), span)
				break
			case 'RequiresLine': {
				const gate = readGate(reader, line.gate)
				if (gate) requires.push(gate)
				break
			}
			case 'TurnLine':
				turns.push(readTurn(reader, line))
				break
			case 'Session':
				sessions.push(readSession(reader, line))
		}
	}
	checkTurns(reader, turns, sessions)
	return { kind: 'block', weeks, deload, targets, answers, percentsOf, requires, turns, sessions, ...reader.frame(node, faults) }
}

function readWeeks(reader: Reader, line: tree.WeeksLine): number | undefined {
	const count = reader.count(line, 'count', 'Weeks')
	if (count === undefined || count <= mostWeeks) return count
	const message = `${count} weeks is more than a year; a block has ${mostWeeks} weeks at most.`
	reader.fault('bad-number', reader.spanOf(line, 'count'), message)
	return mostWeeks
}

function readDeload(reader: Reader, line: tree.DeloadLine): Deload {
	const share = (of: 'sets' | 'load') => {
		const found = (line.shares ?? []).find(part => part.of === of)
		return found && reader.percent(found, 'percent')
	}
	return { weeks: readWeekNumbers(reader, line.weeks), sets: share('sets'), load: share('load'), span: reader.span(line) }
}

function readWeekNumbers(reader: Reader, ranges: readonly tree.Range[] | undefined): CountRange[] {
	return (ranges ?? []).map(range => reader.countRange(range, 'Weeks')).filter(range => range !== undefined)
}

function readSession(reader: Reader, node: tree.Session): Session {
	const items: Item[] = []
	const notes: QuotedText[] = []
	const span = reader.span(node)
	for (const line of node.lines ?? []) {
		if (reader.common(line, span, notes)) continue
		if (line.$type === 'Item') items.push(readItem(reader, line))
	}
	const name = reader.name(node, 'name')
	const title = reader.title(node, 'name', 'title')
	const { days, end } = readSessionDays(reader, node.days)
	const header = { start: span.start, end: end ?? title?.span.end ?? name.span.end }
	return { name, title, days, items, notes, header, span }
}

function readItem(reader: Reader, node: tree.Item): Item {
	const span = reader.span(node)
	const weekLines: WeekLine[] = []
	const changes: Change[] = []
	const milestones: Milestone[] = []
	const notes: QuotedText[] = []
	let withItemAbove = false
	const movement = reader.reference(node, 'movement', 'movement')
	const everyWeek = readPrescription(reader, node.prescription)
	for (const line of node.lines ?? []) {
		if (reader.common(line, span, notes)) continue
		switch (line.$type) {
			case 'WeekLine':
				weekLines.push(readWeekLine(reader, line))
				break
			case 'ChangeLine': {
				const change = readChange(reader, line)
				if (change) changes.push(change)
				break
			}
			case 'MilestoneLine': {
				const milestone = readMilestone(reader, line)
				if (milestone) milestones.push(milestone)
				break
			}
			case 'WithAboveLine':
				withItemAbove = true
		}
	}
	const role = node.role ?? 'accessory'
	return { role, movement, everyWeek, weekLines, changes, milestones, withItemAbove, notes, span }
}

function readWeekLine(reader: Reader, line: tree.WeekLine): WeekLine {
	const weeks = readWeekNumbers(reader, line.weeks)
	const span: Span = reader.span(line)
	return { weeks, skip: line.skip ?? false, prescription: readPrescription(reader, line.prescription), span }
}
