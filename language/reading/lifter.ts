import { reserveOf } from '../compute/effort.ts'
import { exact, zero } from '../compute/exact.ts'
import type * as tree from '../grammar/generated/ast.ts'
import type { Avoid, Base, Best, Fails, Keep, Lifter, Passed, TrainsAt, Uses } from '../model/definitions.ts'
import type { Exact } from '../model/quantities.ts'
import type { Fault } from '../model/reading.ts'
import { patterns } from '../model/vocabulary.ts'
import { readGate, readTrainsAt } from './gate.ts'
import { fact, type Reader } from './reader.ts'

export function readLifter(reader: Reader, node: tree.Lifter, faults: readonly Fault[]): Lifter {
	const trainsAt: TrainsAt[] = []
	const bests: Best[] = []
	const bases: Base[] = []
	const fails: Fails[] = []
	const keeps: Keep[] = []
	const passed: Passed[] = []
	const avoids: Avoid[] = []
	const uses: Uses[] = []
	let bodyweight: Lifter['bodyweight']
	let available: Lifter['available']
	for (const line of node.lines ?? []) {
		const span = reader.span(line)
		if (reader.common(line, reader.span(node))) continue
		switch (line.$type) {
			case 'TrainsAtLine': {
				const stay = readTrainsAt(reader, line)
				if (stay.from || stay.to || reader.first('trains at', line)) trainsAt.push(stay)
				break
			}
			case 'BodyweightLine':
				if (reader.first('bodyweight', line)) bodyweight = fact(reader.mass(line.mass), span)
				break
			case 'BestLine': {
				const best = readBest(reader, line)
				if (best) bests.push(best)
				break
			}
			case 'BaseLine': {
				const base = readBase(reader, line)
				if (reader.first(`base ${base.movement.text}`, line)) bases.push(base)
				break
			}
			case 'FailsLine': {
				const movement = reader.reference(line, 'movement', 'movement')
				const breakdown = reader.reference(line, 'breakdown', 'breakdown')
				fails.push({ movement, breakdown, above: reader.percent(line, 'above'), ...reader.bounds(line.spans), span })
				break
			}
			case 'KeepLine': {
				const movement = reader.reference(line, 'movement', 'movement')
				const to = reader.percent(line, 'percent')
				const dates = reader.bounds(line.spans)
				if (to) keeps.push({ movement, to, ...dates, because: reader.text(line, 'reason'), span })
				break
			}
			case 'PassedLine': {
				const gate = readGate(reader, line.gate)
				const on = reader.date(line, 'date')
				if (gate?.movement) passed.push({ gate, on, because: reader.text(line, 'reason'), span })
				break
			}
			case 'AvailableLine':
				if (reader.first('available', line)) available = fact(reader.weekdays(line, 'days'), span)
				break
			case 'AvoidLine':
				avoids.push(readAvoid(reader, line))
				break
			case 'UsesLine': {
				const implement = reader.name(line, 'implement')
				const insteadOf = reader.name(line, 'insteadOf')
				// Half a line uses nothing; the parser has said so.
				if (implement.text === '' || insteadOf.text === '') break
				if (reader.first(`uses … as ${insteadOf.text}`, line)) uses.push({ implement, insteadOf, span })
			}
		}
	}
	const frame = reader.frame(node, faults)
	return { kind: 'lifter', trainsAt, bodyweight, bests, bases, fails, keeps, passed, available, avoids, uses, ...frame }
}

function readBest(reader: Reader, line: tree.BestLine): Best | undefined {
	const movement = reader.reference(line, 'movement', 'movement')
	const mass = reader.mass(line.mass)
	const reps = reader.count(line, 'reps', 'Reps')
	const on = reader.date(line, 'date')
	return mass && { movement, mass, reps, reserve: readReserve(reader, line) ?? zero, on, span: reader.span(line) }
}

/** Reps in reserve of `rpe 9` or `rir 1`. */
function readReserve(reader: Reader, line: tree.BestLine): Exact | undefined {
	const value = reader.exact(line.effort)
	if (!value || !line.scale) return undefined
	if (line.scale === 'rpe' && value.compare(exact(10)) > 0) {
		reader.fault('bad-number', reader.spanOf(line, 'effort'), `An rpe goes up to 10, not ${line.effort}.`)
		return undefined
	}
	return reserveOf({ scale: line.scale, value })
}

function readBase(reader: Reader, line: tree.BaseLine): Base {
	const movement = reader.reference(line, 'movement', 'movement')
	const span = reader.span(line)
	const amount = reader.exact(line.amount)
	if (line.unit === 'kg' || line.unit === 'lb')
		return { movement, share: undefined, mass: amount && { amount, unit: line.unit }, span }
	if (line.unit === undefined && amount) reader.missingUnit(reader.spanOf(line, 'amount'), line.amount, ['%', 'kg', 'lb'])
	return { movement, share: reader.percent(line, 'amount'), mass: undefined, span }
}

function readAvoid(reader: Reader, line: tree.AvoidLine): Avoid {
	const movement = line.movement ? reader.reference(line, 'movement', 'movement') : undefined
	const pattern = line.pattern ? reader.word(line, 'pattern', patterns, 'a pattern') : undefined
	return { movement, pattern, ...reader.bounds(line.spans), because: reader.text(line, 'reason'), span: reader.span(line) }
}
