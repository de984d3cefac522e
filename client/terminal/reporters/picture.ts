import type { Block, Plan } from '../../../language/model/definitions.ts'
import { pictureOfBlock, pictureOfPlan } from '../../../language/reports/picture.ts'
import type { Picture, PreviewProblem } from '../../../language/reports/preview.ts'
import type { ShownProblem } from '../checking/check-result.ts'
import { judge } from '../checking/judge.ts'
import type { Workspace } from '../workspace/workspace.ts'

/**
 * What a page or a file about a plan or block is made from.
 * @param paths Files whose problems belong to it.
 */
export function pictureOf(of: Plan | Block, workspace: Workspace, paths: readonly string[]): Picture {
	const problems = judge(workspace, paths).problems.filter(problem => problem.level !== 'hint')
	const surroundings = { problems: problems.map(openProblem) }
	return of.kind === 'plan'
		? pictureOfPlan(of, workspace.folder, surroundings)
		: pictureOfBlock(of, workspace.folder, surroundings)
}

function openProblem({ file, line, column, endLine, endColumn, code, level, message, source }: ShownProblem): PreviewProblem {
	const start = { line: line - 1, character: column - 1 }
	const end = { line: endLine - 1, character: endColumn - 1 }
	// A page leads to no text: it shows the path, and no address of this machine.
	return { file, line, column, code, level, message, source, place: { uri: file, range: { start, end } } }
}
