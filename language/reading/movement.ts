import { exact, hundred, one } from '../compute/exact.ts'
import type * as tree from '../grammar/generated/ast.ts'
import type { FrequencyCap, Gate, Movement, MuscleShare } from '../model/definitions.ts'
import type { Fault } from '../model/reading.ts'
import type { Fact } from '../model/text.ts'
import { links, muscles, patterns, roles } from '../model/vocabulary.ts'
import { readGate } from './gate.ts'
import { fact, type Reader } from './reader.ts'

type Mutable<T> = { -readonly [K in keyof T]: T[K] }

export function readMovement(reader: Reader, node: tree.Movement, faults: readonly Fault[]): Movement {
	const shares: MuscleShare[] = []
	const equipment: Fact<string>[] = []
	const caps: FrequencyCap[] = []
	const gates: Gate[] = []
	const order: Mutable<Movement['order'][number]>[] = []
	const facts: Partial<Mutable<Movement>> = {}
	for (const line of node.lines ?? []) {
		const span = reader.span(line)
		if (reader.common(line, reader.span(node))) continue
		switch (line.$type) {
			case 'PatternLine':
				if (reader.first('pattern', line)) facts.pattern = fact(reader.word(line, 'pattern', patterns, 'a pattern'), span)
				break
			case 'TrainsLine':
				if (reader.first('trains', line)) facts.trains = fact(reader.words(line, 'links', links, 'a link of the chain'), span)
				break
			case 'MusclesLine':
				if (reader.first('muscles', line)) shares.push(...readShares(reader, line))
				break
			case 'RoleLine':
				if (reader.first('role', line)) facts.roles = fact(reader.words(line, 'roles', roles, 'a role'), span)
				break
			case 'EquipmentLine':
				if (reader.first('equipment', line))
					equipment.push(...line.names.map((name, index) => ({ value: name, span: reader.spanOf(line, 'names', index) })))
				break
			case 'DoseLine':
				if (reader.first(line.what, line)) readDose(reader, line, facts)
				break
			case 'RepsLine':
				if (reader.first('reps', line)) facts.reps = readReps(reader, line)
				break
			case 'CapLine': {
				const fromPercent = reader.percent(line, 'percent')
				const sessions = reader.count(line, 'sessions', 'Sessions')
				if (fromPercent === undefined && !reader.first('at most', line)) break
				if (sessions !== undefined) caps.push({ sessions, fromPercent, span })
				break
			}
			case 'ApartLine':
				if (reader.first('apart', line)) facts.apartDays = fact(reader.count(line, 'days', 'Days'), span)
				break
			case 'PercentOfLine': {
				const movement = reader.reference(line, 'movement', 'movement')
				if (reader.first('percent of', line))
					facts.percentOf = { movement, share: reader.percent(line, 'share') ?? hundred, span }
				break
			}
			case 'RequiresLine': {
				const gate = readGate(reader, line.gate)
				if (gate) gates.push(gate)
				break
			}
			case 'OrderLine': {
				const pattern = reader.word(line, 'pattern', patterns, 'a pattern')
				if (pattern && line.side) order.push({ side: line.side, pattern, span })
				break
			}
			case 'LoadLine':
				if (!reader.first('load', line)) break
				if (line.added) facts.loadAdded = true
				else facts.hands = reader.count(line, 'hands', 'Hands') ?? 1
		}
	}
	return {
		kind: 'movement',
		pattern: facts.pattern,
		trains: facts.trains,
		muscles: shares,
		roles: facts.roles,
		equipment,
		sets: facts.sets,
		reps: facts.reps,
		holdSeconds: facts.holdSeconds,
		carryMetres: facts.carryMetres,
		intensity: facts.intensity,
		caps,
		apartDays: facts.apartDays,
		percentOf: facts.percentOf,
		gates,
		order,
		hands: facts.hands ?? 1,
		loadAdded: facts.loadAdded ?? false,
		...reader.frame(node, faults),
	}
}

function readShares(reader: Reader, line: tree.MusclesLine): MuscleShare[] {
	return line.shares.flatMap(node => {
		const muscle = reader.word(node, 'muscle', muscles, 'a muscle')
		return muscle ? [{ muscle, share: reader.exact(node.share) ?? one, span: reader.span(node) }] : []
	})
}

function readDose(reader: Reader, line: tree.DoseLine, facts: Partial<Mutable<Movement>>): void {
	const span = reader.span(line)
	const range = line.range && reader.exactRange(line.range)
	switch (line.what) {
		case 'sets':
			facts.sets = fact(reader.countRange(line.range, 'Sets'), span)
			break
		case 'hold': {
			if (line.unit === undefined && line.range)
				reader.missingUnit(reader.span(line.range), line.range.$cstNode?.text ?? '', ['s'])
			const seconds = line.unit === 'min' ? exact(60) : one
			facts.holdSeconds = range && { value: { from: range.from.mul(seconds), to: range.to.mul(seconds) }, span }
			break
		}
		case 'carry':
			if (line.unit === undefined && line.range)
				reader.missingUnit(reader.span(line.range), line.range.$cstNode?.text ?? '', ['m'])
			facts.carryMetres = fact(range, span)
			break
		case 'intensity':
			facts.intensity = fact(line.range && reader.percentRange(line.range), span)
	}
}

function readReps(reader: Reader, line: tree.RepsLine): Movement['reps'] {
	const value = reader.countRange(line.range, 'Reps')
	const orOneSetOf = reader.countRange(line.orOneSetOf, 'Reps')
	return value && { value, orOneSetOf, span: reader.span(line) }
}
