import type * as tree from '../grammar/generated/ast.ts'
import type { Gate, TrainsAt } from '../model/definitions.ts'
import type { Reader } from './reader.ts'

/** What must be shown, or, in `passed` lines, what was. */
export function readGate(reader: Reader, node: tree.Gate | undefined): Gate | undefined {
	if (!node) return undefined
	const span = reader.span(node)
	const movement = node.movement ? reader.reference(node, 'movement', 'movement') : undefined
	if (node.signOff || !movement) return node.signOff ? { kind: 'sign-off', movement, span } : undefined
	if (node.time) {
		const seconds = reader.seconds(node.time)
		return seconds && { kind: 'hold', movement, seconds, with: reader.mass(node.mass), span }
	}
	if (node.reps !== undefined) {
		const reps = reader.count(node, 'reps', 'Reps')
		return reps === undefined ? undefined : { kind: 'reps', movement, reps, at: reader.mass(node.mass), span }
	}
	const at = reader.mass(node.mass)
	return at && { kind: 'load', movement, at, span }
}

export function readTrainsAt(reader: Reader, line: tree.TrainsAtLine): TrainsAt {
	const from = reader.date(line, 'fromDate')
	const to = reader.date(line, 'toDate')
	if (from && to && to < from) reader.endBeforeStart(reader.spanOf(line, 'toDate'), from, to)
	return { gym: reader.reference(line, 'gym', 'gym'), from, to, span: reader.span(line) }
}
