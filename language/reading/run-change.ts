import type * as tree from '../grammar/generated/ast.ts'
import type { Item, RunChange } from '../model/definitions.ts'
import { readPrescription } from './prescription.ts'
import type { Reader } from './reader.ts'

/** A line that changes the block that a plan runs; `undefined` for any other line, and for one that lacks what it is about. */
export function readRunChange(reader: Reader, line: tree.PlanLine | tree.RunLine | tree.MemberLine): RunChange | undefined {
	const span = reader.span(line)
	switch (line.$type) {
		case 'SwapLine':
			return readSwap(reader, line)
		case 'AddLine': {
			const because = reader.text(line, 'reason')
			return { kind: 'add', item: readAdded(reader, line), session: reader.name(line, 'session'), because, span }
		}
		case 'DropLine': {
			const movement = reader.reference(line, 'movement', 'movement')
			return { kind: 'drop', movement, because: reader.text(line, 'reason'), span }
		}
		case 'ScaleLine': {
			const movement = reader.reference(line, 'movement', 'movement')
			const share = reader.percent(line, 'share')
			return share && { kind: 'scale', movement, share, because: reader.text(line, 'reason'), span }
		}
		case 'MoveLine':
			return readMove(reader, line)
		default:
			return undefined
	}
}

function readSwap(reader: Reader, line: tree.SwapLine): RunChange {
	const span = reader.span(line)
	const from = reader.reference(line, 'movement', 'movement')
	const to = reader.reference(line, 'other', 'movement')
	const prescription = readPrescription(reader, line.prescription)
	const weeks = (line.weeks ?? []).map(range => reader.countRange(range, 'Weeks')).filter(range => range !== undefined)
	const because = reader.text(line, 'reason')
	return { kind: 'swap', from, to, prescription, weeks: weeks.length > 0 ? weeks : undefined, because, span }
}

function readMove(reader: Reader, line: tree.MoveLine): RunChange | undefined {
	const span = reader.span(line)
	const session = reader.name(line, 'session')
	const because = reader.text(line, 'reason')
	if (line.date !== undefined) {
		const from = reader.date(line, 'date')
		const to = reader.date(line, 'toDate')
		return from === undefined || to === undefined
			? undefined
			: { kind: 'move-day', session, from, fromSpan: reader.spanOf(line, 'date'), to, because, span }
	}
	const to = reader.weekday(line, 'day')
	return to && { kind: 'move', session, to, because, span }
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
