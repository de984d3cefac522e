import { one } from '../compute/exact.ts'
import type * as tree from '../grammar/generated/ast.ts'
import type { Gate, GateLoad, HowOften, TrainsAt } from '../model/definitions.ts'
import type { Reader } from './reader.ts'

/** More sets or sessions than this no gate asks for: it is a slip. */
const mostOften = 100

/** What must be shown, or, in `passed` lines, what was. */
export function readGate(reader: Reader, node: tree.Gate | undefined): Gate | undefined {
	if (!node) return undefined
	const span = reader.span(node)
	const movement = node.movement ? reader.reference(node, 'movement', 'movement') : undefined
	if (node.signOff || !movement) return node.signOff ? { kind: 'sign-off', movement, span } : undefined
	const often = readHowOften(reader, node)
	if (node.time) {
		const seconds = reader.seconds(node.time)
		return seconds && { kind: 'hold', movement, seconds, with: readGateLoad(reader, node.load), often, span }
	}
	if (node.reps !== undefined) {
		const reps = reader.count(node, 'reps', 'Reps')
		return reps === undefined ? undefined : { kind: 'reps', movement, reps, at: readGateLoad(reader, node.load), often, span }
	}
	const at = readGateLoad(reader, node.load)
	return at && { kind: 'load', movement, at, often, span }
}

function readHowOften(reader: Reader, node: tree.Gate): HowOften {
	return { sets: readOften(reader, node, 'sets', 'Sets'), sessions: readOften(reader, node, 'sessions', 'Sessions') }
}

function readOften(reader: Reader, node: tree.Gate, property: 'sets' | 'sessions', what: string): number {
	const count = reader.count(node, property, what) ?? 1
	if (count <= mostOften) return count
	reader.fault('bad-number', reader.spanOf(node, property), `${count} is more than a gate asks for; ${mostOften} is the most.`)
	return mostOften
}

function readGateLoad(reader: Reader, node: tree.GateLoad | undefined): GateLoad | undefined {
	if (node?.times === undefined) return reader.mass(node?.mass)
	const bodyweights = reader.exact(node.times)
	if (bodyweights) reader.checkBodyweights(bodyweights, one, reader.spanOf(node, 'times'))
	return bodyweights && { bodyweights }
}

export function readTrainsAt(reader: Reader, line: tree.TrainsAtLine): TrainsAt {
	const from = reader.date(line, 'fromDate')
	const to = reader.date(line, 'toDate')
	if (from && to && to < from) reader.endBeforeStart(reader.spanOf(line, 'toDate'), from, to)
	return { gym: reader.reference(line, 'gym', 'gym'), from, to, span: reader.span(line) }
}
