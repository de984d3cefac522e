import type { Definition } from '../../../language/model/definitions.ts'
import { judge } from '../checking/judge.ts'
import { say } from '../output.ts'
import { exitStatus } from '../refusal.ts'
import { counted } from '../text/words.ts'
import type { Workspace } from '../workspace/workspace.ts'

/** The files in which definitions stand, by their paths in the workspace; built-in ones stand in none. */
export function filesOf(workspace: Workspace, definitions: readonly (Definition | undefined)[]): string[] {
	const places = definitions.flatMap(one => (one ? (workspace.folder.placeOf(one, one.span) ?? []) : []))
	const paths = new Set(places.map(place => workspace.pathOf(place.uri)))
	return [...paths].filter(where => workspace.files.has(where)).sort()
}

/**
 * Says what may be missing from a result: files that could not be opened, and errors in the texts that it is made of. The result is
 * given all the same.
 * @param paths The files that it is made of.
 * @returns the status that follows.
 */
export function sayWhatIsMissing(workspace: Workspace, paths: readonly string[]): number {
	for (const { path, reason } of workspace.closed) say(`"${path}" cannot be opened: ${reason}.`)
	const noText = [...workspace.files.values()].filter(file => file.fault).map(file => file.path)
	const errors = judge(workspace, [...new Set([...paths, ...noText])]).problems.filter(problem => problem.level === 'error')
	if (errors.length > 0) {
		say(`Note: "barstave check" finds ${counted(errors.length, 'error')} in the texts that this is made of.`)
	}
	return workspace.closed.length > 0 ? exitStatus.refused : exitStatus.clean
}
