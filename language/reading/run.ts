import type * as tree from '../grammar/generated/ast.ts'
import type { MemberDays, MemberRun, Run, RunChange } from '../model/definitions.ts'
import type { ChangeStep } from '../model/prescription.ts'
import type { QuotedText, Span } from '../model/text.ts'
import { MemberLines } from './member-lines.ts'
import type { PlanDaysReader } from './plan-days.ts'
import { readStep } from './prescription.ts'
import type { Reader } from './reader.ts'
import { readRunChange } from './run-change.ts'

/** Nobody runs a block more often than a year has weeks. */
const mostTimes = 52

/** A run with its lines. Pauses below it are the plan's, and so is what a member's lines say of days: both are added to what is there. */
export function readRun(reader: Reader, node: tree.Run, days: PlanDaysReader, members: MemberDays[]): Run {
	const span = reader.span(node)
	const notes: QuotedText[] = []
	const changes: RunChange[] = []
	const ofMembers: MemberRun[] = []
	const block = reader.reference(node, 'block', 'block')
	const from = reader.date(node, 'date')
	const times = readTimes(reader, node)
	const eachTime = readEachTime(reader, node)
	const lines = node.lines ?? []
	const firstFor = lines.findIndex(line => line.$type === 'ForLine')
	const forAll = firstFor < 0 ? lines : lines.slice(0, firstFor)
	for (const line of lines) {
		if (reader.common(line, span, notes)) continue
		if (line.$type === 'PauseLine') days.read(line)
		else if (line.$type === 'ForLine') {
			const own = new MemberLines(reader, line, span, true)
			members.push(...own.days())
			ofMembers.push(own.ofRun())
		} else {
			const change = readRunChange(reader, line)
			if (change) changes.push(change)
		}
	}
	const header = { start: span.start, end: headerEnd(reader, node, block.span) }
	const last = forAll.at(-1)
	const linesEnd = last ? placeBehind(reader.span(last)) : placeBehind(header)
	const tail = placeBehind(span)
	return { block, from, times, eachTime, changes, notes, header, span, members: ofMembers, linesEnd, tail }
}

function placeBehind({ end }: Span): Span {
	return { start: end, end }
}

function headerEnd(reader: Reader, node: tree.Run, block: Span): number {
	const last = node.eachTime ? reader.span(node.eachTime) : undefined
	const date = node.date === undefined ? undefined : reader.spanOf(node, 'date')
	// The word after the number is a token of its own: "2 times".
	const times = node.times === undefined ? undefined : reader.wordAfter(node, 'times')
	return Math.max(block.end, last?.end ?? 0, date?.end ?? 0, times?.end ?? 0)
}

function readTimes(reader: Reader, node: tree.Run): number {
	const times = reader.count(node, 'times', 'Times') ?? 1
	if (times <= mostTimes) return times
	reader.fault(
		'bad-number',
		reader.spanOf(node, 'times'),
		`${times} times is more than a year has weeks; ${mostTimes} is the most.`,
	)
	return mostTimes
}

function readEachTime(reader: Reader, node: tree.Run): ChangeStep | undefined {
	if (!node.eachTime) return undefined
	if (node.times === undefined) {
		const message = '"each time" is about a block that is run more than once: run wave 2 times, each time add 2.5 kg.'
		reader.fault('syntax', reader.span(node.eachTime), message)
	}
	return readStep(reader, node.eachTime)
}
