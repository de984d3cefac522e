import { exact, zero } from '../compute/exact.ts'
import type * as tree from '../grammar/generated/ast.ts'
import type { Cleared, Log, LogEntry, LoggedLift, LoggedSet } from '../model/definitions.ts'
import type { Exact } from '../model/quantities.ts'
import type { Fault } from '../model/reading.ts'
import type { Name, QuotedText } from '../model/text.ts'
import { fewestKilograms } from '../parser/shorthand/loads.ts'
import { mostSets, readClauses } from './prescription.ts'
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
	reportLoadFirst(reader, groups)
	const facts = covered(groups.map(group => readFacts(reader, group)))
	const sets = groups.flatMap((group, index) => {
		const set = readLoggedSet(reader, group, facts[index]!)
		if (!set) return []
		const count = reader.count(group, 'sets', 'Sets') ?? 1
		return Array.from({ length: Math.min(count, mostSets) }, () => set)
	})
	return { movement, sets, span: reader.span(line) }
}

/** `in 14.2 s`; `in clusters of 2` is a clause of the set like others. */
const isTook = (clause: tree.LoggedClause): clause is tree.InClause => clause.$type === 'InClause' && clause.reps === undefined

/** What is written behind an amount. */
interface Facts {
	/** What holds for a set, apart from its time; `undefined` where nothing is written. */
	readonly clauses:
		| (ReturnType<typeof readClauses> & { readonly missed: number; readonly brokeWith: Name | undefined })
		| undefined
	readonly tookSeconds: Exact | undefined
}

function readFacts(reader: Reader, node: tree.LoggedGroup): Facts {
	const written = node.clauses ?? []
	const [took, second] = written.filter(isTook)
	const others = written.filter(clause => !isTook(clause))
	const missed = others.find(clause => clause.$type === 'MissedClause')
	const broke = others.find(clause => clause.$type === 'BrokeClause')
	if (second) reader.statedTwice('The time', second)
	for (const clause of others) checkLoad(reader, clause)
	if (missed) checkMissed(reader, node, missed)
	return {
		clauses:
			others.length === 0
				? undefined
				: {
						...readClauses(reader, others),
						missed: missed ? (reader.count(missed, 'count', 'Missed reps', 0) ?? 0) : 0,
						brokeWith: broke && reader.reference(broke, 'breakdown', 'breakdown'),
					},
		tookSeconds: took && readTook(reader, node, took),
	}
}

/** What was on the bar is a mass: a share of something else says what was planned. */
function checkLoad(reader: Reader, clause: tree.LoggedClause): void {
	if (clause.$type !== 'AtClause' || clause.target?.$type !== 'NumberTarget') return
	const { percent, unit, to } = clause.target
	const span = reader.span(clause)
	if (percent || unit === 'rm') {
		reader.fault('syntax', span, 'A log says what was on the bar, in kg or lb: at 112.5 kg.')
	} else if (unit !== undefined && to !== undefined) {
		reader.fault(
			'syntax',
			span,
			`A log has one load for a set; where they differ, each set has its own: 5 at 100 kg, 5 at 105 kg.`,
		)
	}
}

/** Nobody misses more reps than were tried. */
function checkMissed(reader: Reader, node: tree.LoggedGroup, missed: tree.MissedClause): void {
	const tried = reader.exact(node.amount)
	const count = reader.exact(missed.count)
	if (node.unit !== undefined || !tried || !count || count.compare(tried) <= 0) return
	const message = `${missed.count} missed of ${node.amount} ${node.amount === '1' ? 'rep' : 'reps'}: the reps that were tried stand first, those that did not go behind "missed".`
	reader.fault('bad-number', reader.span(missed), message)
}

/** A distance takes a time, and so many reps are done in one; a hold is a time itself. */
function readTook(reader: Reader, node: tree.LoggedGroup, took: tree.InClause): Exact | undefined {
	const seconds = reader.seconds(took.took)
	const span = reader.span(took)
	if (seconds?.equals(0))
		reader.fault('bad-number', reader.span(took.took ?? took), 'Nothing is done in no time: say how long it took.')
	if (node.unit !== 's' && node.unit !== 'min') return seconds
	const correction = { title: 'Remove the second time', edits: [{ span, text: '' }] }
	const message = 'A hold is a time already. "in" goes with a distance, 20 m in 14.2 s, or with reps, 25 in 60 s.'
	reader.fault('syntax', span, message, [correction])
	return undefined
}

/**
 * In `8, 8, 7 at 40 kg` what is written last covers the list: a set with nothing of its own has what the next one has. A time leaves the
 * rest open: in `20 m in 14.2 s, 20 m in 13.8 s at 60 kg` each has its own time, and both the load.
 */
function covered(facts: readonly Facts[]): Facts[] {
	let behind: Facts | undefined
	return facts
		.toReversed()
		.map(({ clauses, tookSeconds }) => {
			behind = {
				clauses: clauses ?? behind?.clauses,
				tookSeconds: tookSeconds ?? (clauses === undefined ? behind?.tookSeconds : undefined),
			}
			return behind
		})
		.reverse()
}

/** `did deadlift 100x5, 110x3`: loads and their reps, in the place of sets and reps. */
function reportLoadFirst(reader: Reader, groups: readonly tree.LoggedGroup[]): void {
	const swapped = groups.filter(
		({ sets, unit, clauses = [] }) =>
			Number(sets) >= fewestKilograms && unit === undefined && !clauses.some(({ $type }) => $type === 'AtClause'),
	)
	const [first] = swapped
	if (!first) return
	const spanOf = (group: tree.LoggedGroup) => ({
		start: reader.spanOf(group, 'sets').start,
		end: reader.spanOf(group, 'amount').end,
	})
	const write = (unit: string) => ({
		title: `Write ${first.amount} at ${first.sets} ${unit}${swapped.length > 1 ? ', and the others so' : ''}`,
		edits: swapped.map(group => ({ span: spanOf(group), text: `${group.amount} at ${group.sets} ${unit}` })),
	})
	const span = { start: spanOf(first).start, end: spanOf(swapped[swapped.length - 1]!).end }
	const message = `${first.sets} sets of ${first.amount}? A load stands behind the reps: ${first.amount} at ${first.sets} kg.`
	reader.fault('bad-number', span, message, [write('kg'), write('lb')])
}

function readLoggedSet(reader: Reader, node: tree.LoggedGroup, { clauses, tookSeconds }: Facts): LoggedSet | undefined {
	const amount = reader.exact(node.amount)
	if (!amount) return undefined
	const { load, effort } = clauses ?? {}
	const inSeconds = node.unit === 'min' ? amount.mul(60).add(reader.exact(node.seconds) ?? zero) : amount
	const isReps = node.unit === undefined || node.unit === 'reps' || node.unit === 'rep'
	const isHold = node.unit === 's' || node.unit === 'min'
	return {
		reps: isReps ? reader.count(node, 'amount', 'Reps', 0) : undefined,
		seconds: isHold ? inSeconds : undefined,
		metres: node.unit === 'm' ? amount : undefined,
		tookSeconds: isHold ? undefined : tookSeconds,
		mass: load?.kind === 'mass' ? load.from : load?.kind === 'bodyweight' ? load.added : undefined,
		bodyweight: load?.kind === 'bodyweight',
		rpe: effort?.scale === 'rpe' ? effort.value.from : undefined,
		rir: effort?.scale === 'rir' ? effort.value.from : undefined,
		missed: clauses?.missed ?? 0,
		clusterReps: clauses?.clusters?.reps,
		brokeWith: clauses?.brokeWith,
		tempo: clauses?.tempo,
		eachSide: clauses?.eachSide ?? false,
		span: reader.span(node),
	}
}
