import type { Definition, Plan } from '../../language/model/definitions.ts'
import type { Stale } from '../../language/reports/preview.ts'
import type { Folder } from '../../language/workspace/folder.ts'
import { titleOf } from '../lookup.ts'
import type { Found } from './subject.ts'

/** What of a subject cannot be read at the moment. */
export function staleOf(found: Found): Stale | null {
	if ('plan' in found) return staleOfPlan(found.plan, found.folder)
	const definition = 'block' in found ? found.block : 'team' in found ? found.team : found.log
	if (!isUnreadable(definition)) return null
	const name =
		definition.kind === 'log'
			? (found.folder.find('lifter', definition.name.text)?.title?.text ?? definition.name.text)
			: undefined
	return {
		message: `${name === undefined ? titleOf(definition) : `The log of ${name}`} cannot be read at the moment.`,
		blocks: null,
	}
}

/** Where what was on show has gone with a text that cannot be read. */
export const brokenAway: Stale = { message: 'The text of what was shown here cannot be read at the moment.', blocks: null }

function staleOfPlan(plan: Plan, folder: Folder): Stale | null {
	const lifter = folder.find('lifter', plan.lifter.text)
	if (isUnreadable(plan)) return { message: `The plan ${titleOf(plan)} cannot be read at the moment.`, blocks: null }
	if (lifter && isUnreadable(lifter))
		return { message: `${titleOf(lifter)}'s own page cannot be read at the moment.`, blocks: null }
	const broken = [...new Set(plan.runs.map(run => run.block.text))].filter(name => isUnreadable(folder.find('block', name)))
	if (broken.length === 0) return null
	const titles = broken.map(name => folder.find('block', name)?.title?.text ?? name)
	return { message: `${titles.join(', ')} cannot be read at the moment.`, blocks: broken }
}

function isUnreadable(definition: Definition | undefined): boolean {
	return definition === undefined || definition.faults.some(fault => fault.code === 'syntax')
}
