import type { Plan } from '../../language/model/definitions.ts'
import { pictureOfBlock, pictureOfPlan } from '../../language/reports/picture.ts'
import type { Picture, Place, PreviewData, PreviewProblem, PreviewQuestion, Stale } from '../../language/reports/preview.ts'
import { fileProblems } from '../../language/workspace/file-problems.ts'
import type { Folder } from '../../language/workspace/folder.ts'
import { type ChosenPlans, definitionsIn, listedPlan, plansIn } from '../chosen-plans.ts'
import type { Feature } from '../feature.ts'
import { titleOf } from '../lookup.ts'
import { clientUri, locationIn, rangeOf } from '../positions.ts'
import { relativePath } from '../uri.ts'
import type { Workspace } from '../workspace.ts'

/** Gives previews what they show, and tells them when it may have changed. */
export const preview: Feature = {
	capabilities: {},
	register({ connection, workspace, chosen }) {
		connection.onRequest('barstave/preview', async (question: PreviewQuestion): Promise<PreviewData> => {
			await workspace.allRead()
			workspace.settle()
			return answer(question, workspace, chosen)
		})
		workspace.onChange(() => void connection.sendNotification('barstave/previewChanged'))
	},
}

function answer(question: PreviewQuestion, workspace: Workspace, chosen: ChosenPlans): PreviewData {
	const folder = folderFor(question, workspace)
	if (!folder) return { version: 1, plans: [], chosen: null, picture: null, stale: null }
	const plans = plansIn(folder)
	const choices = plans.map(plan => {
		const { name, title, lifterTitle } = listedPlan(plan, folder)
		return { name, title, lifterTitle }
	})
	const asked = question.plan === undefined ? undefined : plans.find(plan => plan.name.text === question.plan)
	const plan = asked ?? chosen.planNear(question.uri, folder, question.shown)
	const block = plan ? undefined : lonelyBlock(question.uri, folder)
	const problems = openProblems(folder, workspace, plan)
	const placeOf = (definition: Parameters<Folder['placeOf']>[0], span: Parameters<Folder['placeOf']>[1]): Place | undefined =>
		locationIn(workspace, folder, definition, span)
	const picture: Picture | null = plan
		? pictureOfPlan(plan, folder, { problems, placeOf })
		: block
			? pictureOfBlock(block, folder, { problems })
			: null
	return { version: 1, plans: choices, chosen: plan?.name.text ?? null, picture, stale: plan ? staleOf(plan, folder) : null }
}

function folderFor({ uri, plan }: PreviewQuestion, workspace: Workspace): Folder | undefined {
	const folders = workspace.readyFolders().map(one => one.folder)
	const withPlan = plan === undefined ? undefined : folders.find(folder => folder.find('plan', plan))
	if (uri === undefined) return withPlan ?? folders[0]
	const own = workspace.folderOf(uri)
	return plan === undefined || own.find('plan', plan) ? own : (withPlan ?? own)
}

/** A block that no plan runs yet. */
function lonelyBlock(uri: string | undefined, folder: Folder) {
	return definitionsIn(uri, folder).find(one => one.kind === 'block')
}

/** The problems of the files that a plan is made of: its own, its lifter's and its blocks'. */
function openProblems(folder: Folder, workspace: Workspace, plan: Plan | undefined): PreviewProblem[] {
	const parts = plan
		? [plan, folder.find('lifter', plan.lifter.text), ...plan.runs.map(run => folder.find('block', run.block.text))]
		: []
	const files = new Set(parts.flatMap(part => (part && folder.placeOf(part, part.span)?.uri) ?? []))
	return [...files].sort().flatMap(uri => {
		const file = folder.file(uri)
		if (!file) return []
		return fileProblems(folder, uri)
			.filter(problem => problem.level !== 'hint')
			.map(problem => {
				const range = rangeOf(file, problem.start, problem.end)
				return {
					file: relativePath(uri, workspace.rootUriOf(uri)),
					line: range.start.line + 1,
					column: range.start.character + 1,
					code: problem.code,
					level: problem.level,
					message: problem.message,
					source: problem.source ?? null,
					place: { uri: clientUri(workspace, uri), range },
				}
			})
	})
}

/** What of a plan cannot be read at the moment. */
function staleOf(plan: Plan, folder: Folder): Stale | null {
	const unreadable = (definition: { readonly faults: readonly { readonly code: string }[] } | undefined) =>
		definition === undefined || definition.faults.some(fault => fault.code === 'syntax')
	const lifter = folder.find('lifter', plan.lifter.text)
	if (unreadable(plan)) return { message: `The plan ${titleOf(plan)} cannot be read at the moment.`, blocks: null }
	if (lifter && unreadable(lifter))
		return { message: `${titleOf(lifter)}'s own page cannot be read at the moment.`, blocks: null }
	const broken = [...new Set(plan.runs.map(run => run.block.text))].filter(name => unreadable(folder.find('block', name)))
	if (broken.length === 0) return null
	const titles = broken.map(name => folder.find('block', name)?.title?.text ?? name)
	return { message: `${titles.join(', ')} cannot be read at the moment.`, blocks: broken }
}
