import type { Block, Definition, Plan, Run } from '../../language/model/definitions.ts'
import { type Role, roles } from '../../language/model/vocabulary.ts'
import type { Folder } from '../../language/workspace/folder.ts'

/** Where something is to be completed. */
export interface Place {
	readonly uri: string
	readonly folder: Folder
	/** The definition that the cursor stands in, as it reads now. */
	readonly current: Definition | undefined
	/** The cursor, counted from the beginning of the definition. */
	readonly offset: number
	/** The definition's text up to the word at the cursor. */
	readonly before: string
	/** The plan whose lifter and gym count here. */
	readonly plan: Plan | undefined
}

/** The run of a plan that the cursor stands in. */
export function runAt({ current, offset }: Place): Run | undefined {
	return current?.kind === 'plan' ? current.runs.findLast(run => run.span.start < offset) : undefined
}

/** The block that is meant: the one at hand, or the one that the run at hand runs. */
export function blockAt(place: Place): Block | undefined {
	if (place.current?.kind === 'block') return place.current
	const run = runAt(place)
	return run && place.folder.find('block', run.block.text)
}

/** The role that stands before the cursor. */
export function roleBefore({ before }: Place): Role | undefined {
	const word = /([a-z-]+)\s+$/.exec(before)?.[1]
	return roles.find(role => role === word)
}
