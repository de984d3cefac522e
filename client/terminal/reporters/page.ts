import type { Block, Plan } from '../../../language/model/definitions.ts'
import { pictureOfBlock, pictureOfPlan } from '../../../language/reports/picture.ts'
import type { Picture, PreviewProblem } from '../../../language/reports/preview.ts'
import type { ShownProblem } from '../checking/check-result.ts'
import { judge } from '../checking/judge.ts'
import type { Workspace } from '../workspace/workspace.ts'

/** Which parts of a page are wanted. */
export interface PageParts {
	/** The load sheet, of one week of the plan or of all. */
	readonly sheet: boolean
	readonly week?: number | undefined
	readonly volume: boolean
}

/**
 * A plan or a block as one HTML file that needs nothing else: the picture that the editor's preview shows.
 * @param paths Files whose problems stand on the page.
 */
export async function pageOf(
	of: Plan | Block,
	workspace: Workspace,
	paths: readonly string[],
	parts: PageParts,
): Promise<string> {
	const problems = judge(workspace, paths).problems.filter(problem => problem.level !== 'hint')
	const surroundings = { problems: problems.map(openProblem) }
	const picture =
		of.kind === 'plan' ? pictureOfPlan(of, workspace.folder, surroundings) : pictureOfBlock(of, workspace.folder, surroundings)
	// Loaded only here: its charts are the heaviest part of the program.
	const { renderPage } = await import('../../views/page.tsx')
	return renderPage({ ...only(picture, parts), locale: null })
}

function only(picture: Picture, { sheet, week, volume }: PageParts): Picture {
	const sessions = picture.sheet?.sessions.filter(session => week === undefined || session.planWeek === week)
	return {
		...picture,
		sheet: sheet && picture.sheet && sessions ? { ...picture.sheet, sessions } : null,
		volume: volume ? picture.volume : null,
	}
}

function openProblem({ file, line, column, endLine, endColumn, code, level, message, source }: ShownProblem): PreviewProblem {
	const start = { line: line - 1, character: column - 1 }
	const end = { line: endLine - 1, character: endColumn - 1 }
	// A page leads to no text: it shows the path, and no address of this machine.
	return { file, line, column, code, level, message, source, place: { uri: file, range: { start, end } } }
}
