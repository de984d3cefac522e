import type * as tree from '../grammar/generated/ast.ts'
import type { Bar, Gym } from '../model/definitions.ts'
import type { Mass, Unit } from '../model/quantities.ts'
import type { Fault } from '../model/reading.ts'
import type { Fact } from '../model/text.ts'
import { fact, type Reader } from './reader.ts'

export function readGym(reader: Reader, node: tree.Gym, faults: readonly Fault[]): Gym {
	const bars: Bar[] = []
	const stacks: Gym['stacks'][number][] = []
	const fixed: Gym['fixed'][number][] = []
	const equipment: Fact<string>[] = []
	let plates: Gym['plates']
	let collars: Gym['collars']
	let dumbbells: Gym['dumbbells']
	let round: Gym['round'] = 'nearest'
	for (const line of node.lines ?? []) {
		const span = reader.span(line)
		if (reader.common(line, reader.span(node))) continue
		switch (line.$type) {
			case 'BarLine': {
				const mass = reader.mass(line.mass)
				if (mass) bars.push({ name: reader.name(line, 'bar'), mass, span })
				break
			}
			case 'PlatesLine':
				if (reader.first('plates', line)) plates = { value: readPlates(reader, line), span }
				break
			case 'CollarsLine':
				if (reader.first('collars', line)) collars = fact(reader.mass(line.mass), span)
				break
			case 'DumbbellsLine': {
				const steps = readSteps(reader, line)
				if (reader.first('dumbbells', line)) dumbbells = fact(steps, span)
				break
			}
			case 'StackLine': {
				const steps = readSteps(reader, line)
				if (steps) stacks.push({ name: reader.name(line, 'machine'), ...steps, span })
				break
			}
			case 'FixedLine': {
				const masses = reader.masses(line.masses).filter(mass => mass !== undefined)
				fixed.push({ name: reader.name(line, 'implement'), masses, span })
				break
			}
			case 'EquipmentLine':
				if (reader.first('equipment', line))
					equipment.push(...line.names.map((name, index) => ({ value: name, span: reader.spanOf(line, 'names', index) })))
				break
			case 'RoundLine':
				if (reader.first('round', line)) round = line.direction ?? 'nearest'
		}
	}
	return { kind: 'gym', bars, plates, collars, dumbbells, stacks, fixed, equipment, round, ...reader.frame(node, faults) }
}

function readPlates(reader: Reader, line: tree.PlatesLine) {
	const masses = reader.masses(line.plates.map(plate => plate.mass))
	return line.plates.flatMap((plate, index) => {
		const mass = masses[index]
		const count = reader.count(plate, 'count', 'Discs')
		return mass ? [{ mass, count, span: reader.span(plate) }] : []
	})
}

/** `2-50 kg by 2 kg`: the unit after the range is the step's where it is left out. */
function readSteps(reader: Reader, line: tree.DumbbellsLine | tree.StackLine): { from: Mass; to: Mass; by: Mass } | undefined {
	const range = line.range && reader.exactRange(line.range)
	const by = reader.mass(line.step)
	if (!range || !by) return undefined
	const unit: Unit = line.unit ?? by.unit
	if (by.amount.compare(0) <= 0) {
		reader.fault('bad-number', reader.span(line.step), 'The step between two masses cannot be 0.')
		return undefined
	}
	return { from: { amount: range.from, unit }, to: { amount: range.to, unit }, by }
}
