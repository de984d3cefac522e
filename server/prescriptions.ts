import type { Definition, Item, Run } from '../language/model/definitions.ts'
import type { Prescription, SetGroup } from '../language/model/prescription.ts'

/** Every set group of a block, and of a plan what it adds and puts in place of something, as they stand in the text. */
export function groupsIn(definition: Definition): SetGroup[] {
	const ofItems = itemsIn(definition).flatMap(item => [item.everyWeek, ...item.weekLines.map(line => line.prescription)])
	return [...ofItems, ...swapsIn(definition)].flatMap(prescription => prescription?.groups ?? [])
}

/** The items of a block, and of a plan those that it adds. */
export function itemsIn(definition: Definition): readonly Item[] {
	if (definition.kind === 'block') return definition.sessions.flatMap(session => session.items)
	if (definition.kind !== 'plan') return []
	return definition.runs.flatMap(changesOf).flatMap(change => (change.kind === 'add' ? [change.item] : []))
}

function swapsIn(definition: Definition): (Prescription | undefined)[] {
	if (definition.kind !== 'plan') return []
	return definition.runs.flatMap(changesOf).flatMap(change => (change.kind === 'swap' ? [change.prescription] : []))
}

/** What a run changes, for all and for single members. */
function changesOf(run: Run) {
	return [...run.changes, ...run.members.flatMap(member => member.changes)]
}
