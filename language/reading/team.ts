import type * as tree from '../grammar/generated/ast.ts'
import type { Team, TrainsAt } from '../model/definitions.ts'
import type { Fault } from '../model/reading.ts'
import type { Name } from '../model/text.ts'
import { readTrainsAt } from './gate.ts'
import type { Reader } from './reader.ts'

export function readTeam(reader: Reader, node: tree.Team, faults: readonly Fault[]): Team {
	const members: Name[] = []
	const trainsAt: TrainsAt[] = []
	for (const line of node.lines ?? []) {
		if (reader.common(line, reader.span(node))) continue
		if (line.$type === 'MembersLine') {
			const names = reader.referencesIn(line, 'lifters', 'lifter')
			if (reader.first('members', line)) members.push(...names)
		}
		if (line.$type === 'TrainsAtLine') {
			const stay = readTrainsAt(reader, line)
			if (stay.from || stay.to || reader.first('trains at', line)) trainsAt.push(stay)
		}
	}
	return { kind: 'team', members, trainsAt, ...reader.frame(node, faults) }
}
