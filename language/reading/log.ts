import { exact, zero } from '../compute/exact.ts'
import type * as tree from '../grammar/generated/ast.ts'
import type { Cleared, Log, LogEntry, LoggedLift, LoggedSet } from '../model/definitions.ts'
import type { Fault } from '../model/reading.ts'
import type { Name, QuotedText } from '../model/text.ts'
import { readClauses } from './prescription.ts'
import type { Reader } from './reader.ts'

const mostFelt = exact(10)

export function readLog(reader: Reader, node: tree.Log, faults: readonly Fault[]): Log {
	const entries: LogEntry[] = []
	const cleared: Cleared[] = []
	reader.reference(node, 'lifter', 'lifter')
	for (const line of node.lines ?? []) {
		if (reader.common(line, reader.span(node))) continue
		if (line.$type === 'LogEntry') entries.push(readEntry(reader, line))
		if (line.$type === 'ClearedLine')
			cleared.push({ on: reader.date(line, 'date'), because: reader.text(line, 'reason'), span: reader.span(line) })
	}
	return { kind: 'log', entries, cleared, ...reader.frame(node, faults) }
}

function readEntry(reader: Reader, node: tree.LogEntry): LogEntry {
	const lifts: LoggedLift[] = []
	const hurt: QuotedText[] = []
	const notes: QuotedText[] = []
	let felt: LogEntry['felt']
	const span = reader.span(node)
	for (const line of node.lines ?? []) {
		if (reader.common(line, span, notes)) continue
		switch (line.$type) {
			case 'DidLine':
				lifts.push(readLift(reader, line))
				break
			case 'FeltLine':
				felt ??= readFelt(reader, line)
				break
			case 'HurtLine': {
				const text = reader.text(line, 'text')
				if (text) hurt.push(text)
			}
		}
	}
	return {
		on: reader.date(node, 'date'),
		session: sessionOf(reader, node),
		missed: node.missed !== undefined,
		because: reader.text(node, 'reason'),
		lifts,
		felt,
		hurt,
		notes,
		span,
	}
}

function sessionOf(reader: Reader, node: tree.LogEntry): Name | undefined {
	if (node.missed !== undefined) return reader.name(node, 'missed')
	return node.session === undefined ? undefined : reader.name(node, 'session')
}

function readFelt(reader: Reader, line: tree.FeltLine): LogEntry['felt'] {
	const rating = reader.exact(line.rating)
	const seconds = reader.seconds(line.time)
	if (!rating || !seconds) return undefined
	if (rating.compare(mostFelt) > 0) {
		reader.fault('bad-number', reader.spanOf(line, 'rating'), `How a session felt is rated from 0 to 10, not ${line.rating}.`)
		return undefined
	}
	return { rating, seconds, span: reader.span(line) }
}

function readLift(reader: Reader, line: tree.DidLine): LoggedLift {
	const movement = reader.reference(line, 'movement', 'movement')
	const groups = line.groups ?? []
	const sets: LoggedSet[] = []
	let coveredUntil = -1
	for (const [index, group] of groups.entries()) {
		// In `8, 8, 7 at 80 kg` the clause covers the list: what has none takes that of the next one that has.
		if (coveredUntil < index) {
			const next = groups.findIndex((one, at) => at >= index && (one.clauses ?? []).length > 0)
			coveredUntil = next < 0 ? groups.length : next
		}
		const clauses = groups[coveredUntil]?.clauses ?? []
		const set = readLoggedSet(reader, group, clauses, clauses === group.clauses)
		if (!set) continue
		const count = reader.count(group, 'sets', 'Sets') ?? 1
		for (let done = 0; done < Math.min(count, 100); done++) sets.push(set)
	}
	return { movement, sets, span: reader.span(line) }
}

function readLoggedSet(
	reader: Reader,
	node: tree.LoggedGroup,
	clauses: readonly tree.LoggedClause[],
	own: boolean,
): LoggedSet | undefined {
	const amount = reader.exact(node.amount)
	if (!amount) return undefined
	// Clauses that another group lends have been read, and their faults reported, there.
	const quiet = own ? reader : Object.assign(Object.create(reader), { faults: [], references: [] })
	const read = readClauses(quiet, clauses)
	const missed = clauses.find(clause => clause.$type === 'MissedClause')
	const broke = clauses.find(clause => clause.$type === 'BrokeClause')
	const effort = read.effort?.value.from
	const inSeconds = node.unit === 'min' ? amount.mul(60).add(reader.exact(node.seconds) ?? zero) : amount
	const isReps = node.unit === undefined || node.unit === 'reps' || node.unit === 'rep'
	return {
		reps: isReps ? reader.count(node, 'amount', 'Reps', 0) : undefined,
		seconds: node.unit === 's' || node.unit === 'min' ? inSeconds : undefined,
		metres: node.unit === 'm' ? amount : undefined,
		mass: read.load?.kind === 'mass' ? read.load.from : read.load?.kind === 'bodyweight' ? read.load.added : undefined,
		bodyweight: read.load?.kind === 'bodyweight',
		rpe: read.effort?.scale === 'rpe' ? effort : undefined,
		rir: read.effort?.scale === 'rir' ? effort : undefined,
		missed: missed ? (quiet.count(missed, 'count', 'Missed reps', 0) ?? 0) : 0,
		clusterReps: read.clusters?.reps,
		brokeWith: broke && quiet.reference(broke, 'breakdown', 'breakdown'),
		tempo: read.tempo,
		eachSide: read.eachSide,
		span: reader.span(node),
	}
}
