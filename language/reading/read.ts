import type { Definition } from '../model/definitions.ts'
import type { Fault } from '../model/reading.ts'
import type { Parsed } from '../parser/parse.ts'
import { readBlock } from './block.ts'
import { readBreakdown } from './breakdown.ts'
import { readGym } from './gym.ts'
import { readLifter } from './lifter.ts'
import { readLimits } from './limits.ts'
import { readLog } from './log.ts'
import { readMovement } from './movement.ts'
import { readPlan } from './plan.ts'
import { readProgression } from './progression.ts'
import { Reader } from './reader.ts'
import { readRuleLevels } from './rule-levels.ts'
import { reportSpellings } from './spellings.ts'
import { readTeam } from './team.ts'

/** More messages than this about one definition that does not read tell a coach nothing new. */
const mostSyntaxFaults = 3

/** One parsed definition as plain data, or what is wrong with a text that none could be made of. */
export function readDefinition(
	parsed: Parsed,
	unreadable: readonly Fault[],
): { definition: Definition | undefined; faults: readonly Fault[] } {
	const faults = [...unreadable, ...parsed.faults, ...reportSpellings(parsed.tokens)]
	const node = parsed.tree
	// Where no definition begins, one message says it all.
	if (!node) return { definition: undefined, faults: faults.slice(0, 1) }
	const read = readAs(new Reader(), node, faults)
	const definition = { ...read, faults: worthSaying(read.faults) }
	return { definition, faults: definition.faults }
}

/** The first few that say that a text does not read, and all others. */
function worthSaying(faults: readonly Fault[]): Fault[] {
	const syntax = faults.filter(fault => fault.code === 'syntax').slice(0, mostSyntaxFaults)
	return faults.filter(fault => fault.code !== 'syntax' || syntax.includes(fault))
}

function readAs(reader: Reader, node: NonNullable<Parsed['tree']>, faults: readonly Fault[]): Definition {
	switch (node.$type) {
		case 'Movement':
			return readMovement(reader, node, faults)
		case 'Breakdown':
			return readBreakdown(reader, node, faults)
		case 'Progression':
			return readProgression(reader, node, faults)
		case 'Limits':
			return readLimits(reader, node, faults)
		case 'Gym':
			return readGym(reader, node, faults)
		case 'Lifter':
			return readLifter(reader, node, faults)
		case 'Block':
			return readBlock(reader, node, faults)
		case 'Plan':
			return readPlan(reader, node, faults)
		case 'Log':
			return readLog(reader, node, faults)
		case 'Team':
			return readTeam(reader, node, faults)
		case 'RuleLevels':
			return readRuleLevels(reader, node, faults)
	}
}
