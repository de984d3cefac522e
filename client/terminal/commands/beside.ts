import type { Definition } from '../../../language/model/definitions.ts'
import { counted } from '../../views/reader/words.ts'
import { judge } from '../checking/judge.ts'
import { say } from '../output.ts'
import { exitStatus } from '../refusal.ts'
import type { Workspace } from '../workspace/workspace.ts'

/**
 * Says what may be missing from a result: files that could not be opened, and errors in the texts that it is made of. The result is
 * given all the same.
 * @returns the status that follows.
 */
export function sayWhatIsMissing(workspace: Workspace, madeOf: readonly (Definition | undefined)[]): number {
	for (const { path, reason } of workspace.closed) say(`"${path}" cannot be opened: ${reason}.`)
	const places = madeOf.flatMap(one => (one ? (workspace.folder.placeOf(one, one.span) ?? []) : []))
	const paths = new Set(places.map(place => workspace.pathOf(place.uri)))
	const noText = [...workspace.files.values()].filter(file => file.fault).map(file => file.path)
	const errors = judge(workspace, [...new Set([...paths, ...noText])]).problems.filter(problem => problem.level === 'error')
	if (errors.length > 0) {
		say(`Note: "barstave check" finds ${counted(errors.length, 'error')} in the texts that this is made of.`)
	}
	return workspace.closed.length > 0 ? exitStatus.refused : exitStatus.clean
}
