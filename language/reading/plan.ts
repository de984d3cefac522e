import type * as tree from '../grammar/generated/ast.ts'
import type { Item, Plan, Run, RunChange } from '../model/definitions.ts'
import { weekdays } from '../model/quantities.ts'
import type { Fault } from '../model/reading.ts'
import type { QuotedText } from '../model/text.ts'
import { readPrescription } from './prescription.ts'
import { fact, type Reader } from './reader.ts'

export function readPlan(reader: Reader, node: tree.Plan, faults: readonly Fault[]): Plan {
	const lifter = reader.reference(node, 'lifter', 'lifter')
	const runs: Run[] = []
	const meets: Plan['meets'][number][] = []
	let start: Plan['start']
	let days: Plan['days']
	if (!node.lifter && faults.length === 0) {
		const message = 'A plan says for whom it is: plan mara-autumn for mara-lind.'
		reader.fault('syntax', reader.spanOf(node, 'name'), message)
	}
	for (const line of node.lines ?? []) {
		const span = reader.span(line)
		if (reader.common(line, reader.span(node))) continue
		switch (line.$type) {
			case 'StartLine':
				if (reader.first('start', line)) start = fact(reader.date(line, 'date'), span)
				break
			case 'DaysLine':
				if (reader.first('days', line)) days = fact(reader.weekdays(line, 'days'), span)
				break
			case 'MeetLine': {
				const on = reader.date(line, 'date')
				if (on) meets.push({ on, title: reader.text(line, 'title'), span })
				break
			}
			case 'Run':
				runs.push(readRun(reader, line))
		}
	}
	return { kind: 'plan', lifter, start, days, runs, meets, ...reader.frame(node, faults) }
}

function readRun(reader: Reader, node: tree.Run): Run {
	const span = reader.span(node)
	const notes: QuotedText[] = []
	const changes: RunChange[] = []
	const block = reader.reference(node, 'block', 'block')
	const from = reader.date(node, 'date')
	for (const line of node.lines ?? []) {
		if (reader.common(line, span, notes)) continue
		const change = readRunChange(reader, line)
		if (change) changes.push(change)
	}
	const headerEnd = node.date === undefined ? block.span.end : reader.spanOf(node, 'date').end
	return { block, from, changes, notes, header: { start: span.start, end: headerEnd }, span }
}

function readRunChange(reader: Reader, line: tree.RunLine): RunChange | undefined {
	const span = reader.span(line)
	switch (line.$type) {
		case 'SwapLine': {
			const from = reader.reference(line, 'movement', 'movement')
			const to = reader.reference(line, 'other', 'movement')
			return { kind: 'swap', from, to, because: reader.text(line, 'reason'), span }
		}
		case 'AddLine': {
			const because = reader.text(line, 'reason')
			return { kind: 'add', item: readAdded(reader, line), session: reader.name(line, 'session'), because, span }
		}
		case 'DropLine':
			return {
				kind: 'drop',
				movement: reader.reference(line, 'movement', 'movement'),
				because: reader.text(line, 'reason'),
				span,
			}
		case 'ScaleLine': {
			const movement = reader.reference(line, 'movement', 'movement')
			const share = reader.percent(line, 'share')
			return share && { kind: 'scale', movement, share, because: reader.text(line, 'reason'), span }
		}
		case 'MoveLine': {
			const to = reader.word(line, 'day', weekdays, 'a day of the week')
			return to && { kind: 'move', session: reader.name(line, 'session'), to, because: reader.text(line, 'reason'), span }
		}
		default:
			return undefined
	}
}

function readAdded(reader: Reader, line: tree.AddLine): Item {
	return {
		role: line.role ?? 'accessory',
		movement: reader.reference(line, 'movement', 'movement'),
		everyWeek: readPrescription(reader, line.prescription),
		weekLines: [],
		changes: [],
		milestones: [],
		withItemAbove: false,
		notes: [],
		span: reader.span(line),
	}
}
