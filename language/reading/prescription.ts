import { exact, hundred, zero } from '../compute/exact.ts'
import type * as tree from '../grammar/generated/ast.ts'
import type {
	Change,
	ChangeStep,
	ChangeUnit,
	Clusters,
	Effort,
	LoadTarget,
	Milestone,
	Prescription,
	SetGroup,
	Tempo,
	Work,
} from '../model/prescription.ts'
import type { CountRange, Exact, ExactRange } from '../model/quantities.ts'
import type { Span } from '../model/text.ts'
import { fewestKilograms } from '../parser/shorthand/loads.ts'
import type { Reader } from './reader.ts'

/** More sets of one movement than this nobody does in a session: it is a slip, and each set becomes an entry of its own. */
export const mostSets = 100
/** Sets of more reps than this are no load and its reps. */
const mostRepsOfLoad = 20
const mostRpe = exact(10)

export function readPrescription(reader: Reader, node: tree.Prescription | undefined): Prescription | undefined {
	if (!node) return undefined
	const groups = (node.groups ?? []).map(group => readSetGroup(reader, group)).filter(group => group !== undefined)
	return groups.length > 0 ? { groups, span: reader.span(node) } : undefined
}

function readSetGroup(reader: Reader, node: tree.SetGroup): SetGroup | undefined {
	const sets = readSets(reader, node)
	const work = node.work && readWork(reader, node.work)
	const clauses = readClauses(reader, node.clauses ?? [])
	if (!sets || !work) return undefined
	if (clauses.clusters) checkClusters(reader, clauses.clusters, work)
	if (clauses.until && !node.upTo && sets.from === sets.to) {
		const span = reader.spanOf(node, 'sets')
		const correction = {
			title: `Write "up to ${sets.to} x"`,
			edits: [{ span: { start: span.start, end: span.start }, text: 'up to ' }],
		}
		const message = `${sets.to} sets in any case, and a stop that may come before them: one of the two. With "up to ${sets.to} x" the stop may end them.`
		reader.fault('syntax', clauses.until.span, message, [correction])
	}
	if (node.ramp && !clauses.ramp) {
		const message = 'A ramp says where it begins and ends: ramp 4 x 4 from 60% to 78%.'
		reader.fault('syntax', reader.span(node), message)
	}
	if (clauses.ramp && !node.ramp) {
		const span = reader.spanOf(node, 'sets')
		const correction = {
			title: 'Write "ramp" before the sets',
			edits: [{ span: { start: span.start, end: span.start }, text: 'ramp ' }],
		}
		reader.fault('syntax', clauses.ramp.span, 'Sets that go from one percent to another begin with "ramp".', [correction])
	}
	const dose = { start: reader.spanOf(node, 'sets').start, end: node.work ? reader.span(node.work).end : reader.span(node).end }
	return { span: reader.span(node), dose, sets: node.upTo ? upTo(reader, node, sets) : sets, work, ...clauses }
}

/** `up to 5`: one set must be done for anyone to know how hard it is. */
function upTo(reader: Reader, node: tree.SetGroup, sets: CountRange): CountRange {
	if (node.sets?.to === undefined) return { from: 1, to: sets.to }
	const start = reader.span(node).start
	const end = reader.spanOf(node, 'sets').start
	const correction = { title: 'Remove "up to"', edits: [{ span: { start, end }, text: '' }] }
	const message = `"up to" goes with one number: up to ${sets.to} sets, or ${sets.from}-${sets.to}.`
	reader.fault('syntax', { start, end: reader.spanOf(node, 'sets').end }, message, [correction])
	return sets
}

/** Clusters are pieces of a set of reps, all of one length. */
function checkClusters(reader: Reader, { reps, span }: Clusters, work: Work): void {
	if (work.kind !== 'reps') {
		reader.fault('syntax', span, 'Clusters are made of reps: 4 x 6 in clusters of 2 resting 20 s.')
		return
	}
	const { from, to } = work.reps
	const wrong = [from, to].find(count => count % reps !== 0 || count === reps)
	if (wrong === undefined) return
	const sizes = Array.from({ length: Math.floor(to / 2) }, (_, index) => index + 1).filter(
		size => from % size === 0 && to % size === 0 && size < from,
	)
	const last = sizes.at(-1)
	const choices = sizes.length < 2 ? String(last) : `${sizes.slice(0, -1).join(', ')} or ${last}`
	const instead = last === undefined ? '' : ` Clusters of ${choices} do.`
	const message =
		wrong <= reps
			? `${wrong} ${wrong === 1 ? 'rep' : 'reps'} in clusters of ${reps}: there is nothing to rest between.${instead}`
			: `${wrong} reps do not make whole clusters of ${reps}.${instead}`
	reader.fault('bad-number', span, message)
}

function readSets(reader: Reader, node: tree.SetGroup): CountRange | undefined {
	const sets = reader.countRange(node.sets, 'Sets')
	if (!node.sets || !sets) return sets
	if (isLoadFirst(node, sets)) {
		const span = { start: reader.span(node.sets).start, end: reader.span(node.work!).end }
		const write = (unit: string) => {
			const text = `1 x ${node.work!.from} at ${node.sets!.from} ${unit}`
			return { title: `Write ${text}`, edits: [{ span, text }] }
		}
		const message = `${node.sets.from} sets of ${node.work!.from}? A load stands behind the reps: 1 x ${node.work!.from} at ${node.sets.from} kg.`
		reader.fault('bad-number', span, message, [write('kg'), write('lb')])
		return { from: Math.min(sets.from, mostSets), to: Math.min(sets.to, mostSets) }
	}
	if (sets.to <= mostSets) return sets
	reader.fault('bad-number', reader.span(node.sets), `${sets.to} sets is more than anyone does; ${mostSets} is the most.`)
	return { from: Math.min(sets.from, mostSets), to: mostSets }
}

/** `100 x 5`: so many sets of some reps nobody does; a load was meant. */
function isLoadFirst({ sets, work, clauses = [] }: tree.SetGroup, { from }: CountRange): boolean {
	const isReps = work?.unit === undefined && work?.to === undefined && Number(work?.from) <= mostRepsOfLoad
	return from >= fewestKilograms && sets?.to === undefined && isReps && !clauses.some(({ $type }) => $type === 'AtClause')
}

function readWork(reader: Reader, node: tree.Work): Work | undefined {
	const { unit, openIn } = node
	const isTime = unit === 's' || unit === 'min'
	if (openIn !== undefined && (openIn === 'time' ? unit !== 'm' : !isTime)) {
		const message =
			openIn === 'time'
				? '"for time" goes with a distance, as fast as possible: 1 x 20 m for time.'
				: '"for reps" goes with a time, as many reps as it holds: 2 x 60 s for reps.'
		reader.fault('syntax', reader.spanOf(node, 'openIn'), message)
	}
	if (unit === 's' || unit === 'm' || unit === 'min') {
		const range = reader.exactRange(node)
		if (!range) return undefined
		if (range.to.equals(0)) {
			reader.fault('bad-number', reader.span(node), `0 ${unit} is no work: say how long or how far.`)
			return undefined
		}
		if (unit === 'm') return { kind: 'carry', metres: range, forTime: openIn === 'time' }
		const extra = reader.exact(node.seconds) ?? zero
		const seconds = unit === 's' ? range : { from: range.from.mul(60).add(extra), to: range.to.mul(60).add(extra) }
		if (openIn !== undefined && openIn !== 'time') return { kind: 'reps-in-time', seconds }
		if (unit === 's') return { kind: 'hold', seconds }
		// `1 x 20 min` is time spent; `3 x 1 min 30 s` is a hold.
		return node.seconds === undefined ? { kind: 'time', seconds } : { kind: 'hold', seconds }
	}
	const reps = reader.countRange(node as unknown as tree.Range, 'Reps')
	return reps && { kind: 'reps', reps, toFailure: node.toFailure ?? false, orMore: node.orMore ?? false }
}

interface Clauses {
	readonly load: LoadTarget | undefined
	readonly ramp: SetGroup['ramp']
	readonly effort: Effort | undefined
	readonly until: Effort | undefined
	readonly clusters: Clusters | undefined
	readonly tempo: Tempo | undefined
	readonly restSeconds: Exact | undefined
	readonly eachSide: boolean
}

/** The clauses of one set group; one of a kind counts, a second one is reported. */
export function readClauses(reader: Reader, clauses: readonly (tree.Clause | tree.LoggedClause)[]): Clauses {
	let load: LoadTarget | undefined
	let ramp: SetGroup['ramp']
	let effort: Effort | undefined
	let until: Effort | undefined
	let clusters: Clusters | undefined
	let tempo: Tempo | undefined
	let restSeconds: Exact | undefined
	let eachSide = false
	const twice = (what: string, before: unknown, node: tree.Clause | tree.LoggedClause) => {
		if (before !== undefined) reader.statedTwice(what, node)
	}
	for (const node of clauses) {
		const span = reader.span(node)
		switch (node.$type) {
			case 'AtClause':
				twice('The load', load, node)
				load ??= readTarget(reader, node)
				break
			case 'BetweenClause': {
				twice('The ramp', ramp, node)
				const from = reader.percent(node, 'from')
				const to = reader.percent(node, 'to')
				if (from && to) ramp ??= { from, to, span }
				break
			}
			case 'EffortClause':
				twice('The effort', effort, node)
				effort ??= readEffort(reader, node)
				break
			case 'UntilClause':
				twice('Where the sets end', until, node)
				until ??= readUntil(reader, node)
				break
			case 'ClustersClause':
			case 'InClause':
				twice('How the set is cut', clusters, node)
				clusters ??= readClusters(reader, node)
				break
			case 'TempoClause':
				twice('The tempo', tempo, node)
				tempo ??= readTempo(reader, node)
				break
			case 'RestClause':
				twice('The rest', restSeconds, node)
				restSeconds ??= readRest(reader, node)
				break
			case 'SideClause':
				eachSide = true
		}
	}
	return { load, ramp, effort, until, clusters, tempo, restSeconds, eachSide }
}

function readTarget(reader: Reader, clause: tree.AtClause): LoadTarget | undefined {
	const span = reader.span(clause)
	const target = clause.target
	if (!target) return undefined
	if (target.$type === 'BodyweightTarget') {
		const mass = reader.mass(target.mass)
		const added = mass && target.sign !== '+' ? { ...mass, amount: mass.amount.neg() } : mass
		return { kind: 'bodyweight', added, span }
	}
	const of = readBase(reader, target)
	if (of === 'bodyweight') return readOfBodyweight(reader, target, span)
	if (target.unit === 'rm') {
		const reps = reader.count(target, 'from', 'Reps')
		return reps === undefined ? undefined : { kind: 'rm', reps, span }
	}
	if (target.percent || target.unit === undefined) {
		if (!target.percent) reader.missingUnit(reader.span(target), target.$cstNode?.text ?? '', ['%', 'kg', 'lb'])
		const percent = reader.percentRange(target)
		return percent && { kind: 'percent', percent, of, span }
	}
	const range = reader.exactRange(target)
	const { unit } = target
	return range && { kind: 'mass', from: { amount: range.from, unit }, to: { amount: range.to, unit }, span }
}

/** `50% of bodyweight`: a percent of another kind, which may well be over 150. */
function readOfBodyweight(reader: Reader, target: tree.NumberTarget, span: Span): LoadTarget | undefined {
	const percent = reader.exactRange(target)
	if (percent) reader.checkBodyweights(percent.to, hundred, reader.span(target))
	return percent && { kind: 'of-bodyweight', percent, span }
}

function readBase(reader: Reader, target: tree.NumberTarget) {
	if (target.topSet) return 'top-set'
	return target.base === undefined
		? undefined
		: reader.word(target, 'base', ['best', 'base', 'bodyweight'] as const, 'what a percent refers to')
}

function readEffort(reader: Reader, node: tree.EffortClause): Effort | undefined {
	const value = reader.exactRange(node)
	if (!value || !node.scale) return undefined
	if (node.scale === 'rpe' && value.to.compare(mostRpe) > 0) {
		reader.fault('bad-number', reader.span(node), `An rpe goes up to 10, not ${value.to.toString()}.`)
		return undefined
	}
	return { scale: node.scale, value: value as ExactRange, atMost: node.atMost ?? false, span: reader.span(node) }
}

function readUntil(reader: Reader, node: tree.UntilClause): Effort | undefined {
	const amount = reader.exact(node.effort)
	if (!amount || !node.scale) return undefined
	if (node.scale === 'rpe' && amount.compare(mostRpe) > 0) {
		reader.fault('bad-number', reader.span(node), `An rpe goes up to 10, not ${node.effort}.`)
		return undefined
	}
	return { scale: node.scale, value: { from: amount, to: amount }, atMost: false, span: reader.span(node) }
}

function readClusters(reader: Reader, node: tree.ClustersClause | tree.InClause): Clusters | undefined {
	const reps = reader.count(node, 'reps', 'Reps')
	const restSeconds = reader.seconds(node.time)
	const span = reader.span(node)
	if (reps === undefined) return undefined
	if (node.time === undefined) {
		const correction = {
			title: 'Write "resting 20 s"',
			edits: [{ span: { start: span.end, end: span.end }, text: ' resting 20 s' }],
		}
		const message = 'How long is the rest between the clusters? In clusters of 2 resting 20 s.'
		reader.fault('syntax', span, message, [correction])
	}
	return { reps, restSeconds: restSeconds ?? zero, span }
}

/** A rest is one time: of a range, the first is read until the coach says which. */
function readRest(reader: Reader, node: tree.RestClause): Exact | undefined {
	if (node.most === undefined) return reader.seconds(node.time)
	const [time, most] = [node.time, node.most]
	const unit = time?.unit ?? most.unit
	if (!time || unit === undefined) {
		const message = 'A rest is one time, with its unit: rest 90 s, rest 2 min.'
		const edits = (text: string) => [{ span: reader.span(node), text }]
		const choices = [`${time?.amount} min`, `${most.amount} min`, `${time?.amount} s`, `${most.amount} s`]
		const corrections = choices.map(text => ({ title: `Write rest ${text}`, edits: edits(`rest ${text}`) }))
		reader.fault('bad-number', reader.span(node), message, corrections)
		return undefined
	}
	const rest = /^rest\b/i.test(node.$cstNode?.text ?? '') ? 'rest ' : ''
	const inUnit = (one: tree.Time) => `${one.amount} ${one.unit ?? unit}${one.seconds === undefined ? '' : ` ${one.seconds} s`}`
	const corrections = [time, most].map(one => ({
		title: `Write rest ${inUnit(one)}`,
		edits: [{ span: reader.span(node), text: `${rest}${inUnit(one)}` }],
	}))
	const message = `A rest is one time, since the length of a session is worked out from it: rest ${inUnit(time)} or rest ${inUnit(most)}. Read as the first.`
	reader.fault('bad-number', reader.span(node), message, corrections)
	const amount = reader.exact(time.amount)
	return amount && (unit === 'min' ? amount.mul(60).add(reader.exact(time.seconds) ?? zero) : amount)
}

/** `4-1-1-0` or `4-1-1`: lowering, pause, lifting, pause at the top; `x` may stand for the lifting alone. */
function readTempo(reader: Reader, node: tree.TempoClause): Tempo | undefined {
	const text = node.tempo?.replace(/–/g, '-').toLowerCase()
	if (!text) return undefined
	const parts = text.split('-')
	const fits =
		(parts.length === 3 || parts.length === 4) &&
		parts.every((part, index) => /^\d{1,2}$/.test(part) || (part === 'x' && index === 2))
	if (!fits) {
		const message = `${node.tempo} is no tempo: it has the seconds of lowering, pause, lifting and pause at the top, as in 4-1-1-0; x may stand for the lifting.`
		reader.fault('bad-number', reader.spanOf(node, 'tempo'), message)
		return undefined
	}
	const [lowering, pause, lifting, top] = parts
	return {
		lowering: Number(lowering),
		pause: Number(pause),
		lifting: lifting === 'x' ? 'x' : Number(lifting),
		top: Number(top ?? 0),
		text,
	}
}

export function readChange(reader: Reader, line: tree.ChangeLine): Change | undefined {
	const step = readStep(reader, line)
	return step && { ...step, each: line.each ?? 'week', span: reader.span(line) }
}

export function readMilestone(reader: Reader, line: tree.MilestoneLine): Milestone | undefined {
	const reached = line.reached && readSetGroup(reader, line.reached)
	const then = line.move ? readNextMovement(reader, line) : readNextStep(reader, line)
	return reached && then && { reached, then, span: reader.span(line) }
}

function readNextMovement(reader: Reader, line: tree.MilestoneLine): Milestone['then'] {
	const movement = reader.reference(line, 'movement', 'movement')
	return { kind: 'move', movement, prescription: readPrescription(reader, line.prescription) }
}

function readNextStep(reader: Reader, line: tree.MilestoneLine): Milestone['then'] | undefined {
	const step = readStep(reader, line)
	return step && { kind: 'change', ...step }
}

export function readStep(reader: Reader, line: tree.ChangeLine | tree.EachTime | tree.MilestoneLine): ChangeStep | undefined {
	const amount = reader.exact(line.amount)
	if (!amount) return undefined
	if (line.unit === undefined) {
		reader.missingUnit(reader.spanOf(line, 'amount'), line.amount ?? '', ['kg', '%', 's', 'reps', 'sets'])
		return undefined
	}
	const unit: ChangeUnit = line.unit === 'rep' ? 'reps' : line.unit === 'set' ? 'sets' : line.unit
	return { amount: line.sign === 'take' ? amount.neg() : amount, unit }
}
