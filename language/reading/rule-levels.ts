import type * as tree from '../grammar/generated/ast.ts'
import type { RuleLevels } from '../model/definitions.ts'
import type { Fault } from '../model/reading.ts'
import { levels } from '../model/vocabulary.ts'
import type { Reader } from './reader.ts'

export function readRuleLevels(reader: Reader, node: tree.RuleLevels, faults: readonly Fault[]): RuleLevels {
	const lines: RuleLevels['levels'][number][] = []
	for (const line of node.lines ?? []) {
		if (reader.common(line, reader.span(node)) || line.$type !== 'LevelLine') continue
		const rule = reader.name(line, 'rule')
		if (reader.first(rule.text, line))
			lines.push({ rule, level: reader.word(line, 'level', levels, 'a level'), span: reader.span(line) })
	}
	return { kind: 'rules', levels: lines, ...reader.frame(node, faults) }
}
