import type * as tree from '../grammar/generated/ast.ts'
import type { Progression, ProgressionStep } from '../model/definitions.ts'
import type { Fault } from '../model/reading.ts'
import { readGate } from './gate.ts'
import type { Reader } from './reader.ts'

export function readProgression(reader: Reader, node: tree.Progression, faults: readonly Fault[]): Progression {
	const steps: ProgressionStep[] = []
	for (const line of node.lines ?? []) {
		if (reader.common(line, reader.span(node)) || line.$type !== 'StepLine') continue
		const movement = reader.reference(line, 'movement', 'movement')
		steps.push({ movement, after: readGate(reader, line.gate), span: reader.span(line) })
	}
	return { kind: 'progression', steps, ...reader.frame(node, faults) }
}
