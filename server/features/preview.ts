import { effect } from '@preact/signals-core'
import type { Definition, Plan } from '../../language/model/definitions.ts'
import type { Span } from '../../language/model/text.ts'
import { pictureOfBlock, pictureOfPlan } from '../../language/reports/picture.ts'
import { plannedAgainstDone } from '../../language/reports/planned-against-done.ts'
import type { Place, PreviewData, PreviewProblem, PreviewQuestion, Subject } from '../../language/reports/preview.ts'
import { teamOverview } from '../../language/reports/team-overview.ts'
import type { Folder } from '../../language/workspace/folder.ts'
import type { Feature, ServerContext } from '../feature.ts'
import { locationIn } from '../positions.ts'
import { OpenProblems } from '../preview/problems.ts'
import { brokenAway, staleOf } from '../preview/stale.ts'
import { choicesIn, type Found, findSubject, folderFor, isBrokenAway, subjectOf } from '../preview/subject.ts'
import type { Workspace } from '../workspace.ts'

/** Gives previews what they show, and tells them when it may have changed. */
export const preview: Feature = {
	capabilities: {},
	register(context) {
		const { connection, workspace, chosen } = context
		const openProblems = new OpenProblems(workspace)
		const settled = async () => {
			await workspace.allRead()
			workspace.settle()
		}
		connection.onRequest('barstave/preview', async (question: PreviewQuestion): Promise<PreviewData> => {
			await settled()
			return answer(question, context, openProblems)
		})
		connection.onRequest('barstave/previewSubject', async (question: PreviewQuestion): Promise<Subject | null> => {
			await settled()
			const folder = folderFor(question, workspace)
			// What is on show stays there while its text is broken.
			if (folder && isBrokenAway(question, folder)) return question.shown ?? null
			const found = folder && findSubject(question, folder, workspace, chosen)
			return found ? subjectOf(found) : null
		})
		const tell = () => void connection.sendNotification('barstave/previewChanged')
		workspace.onChange(tell)
		let told: string | undefined
		effect(() => {
			const picked = JSON.stringify(workspace.readyFolders().map(({ uri }) => chosen.pickedIn(`${uri}/`)))
			if (told !== undefined && told !== picked) tell()
			told = picked
		})
	},
}

const nothing: Pick<PreviewData, 'picture' | 'team' | 'log'> = { picture: null, team: null, log: null }

function answer(question: PreviewQuestion, { workspace, chosen }: ServerContext, openProblems: OpenProblems): PreviewData {
	const folder = folderFor(question, workspace)
	if (!folder) return { version: 1, choices: [], chosen: null, ...nothing, stale: null }
	const choices = choicesIn(folder)
	if (isBrokenAway(question, folder)) return { version: 1, choices, chosen: null, ...nothing, stale: brokenAway }
	const found = findSubject(question, folder, workspace, chosen)
	if (!found) return { version: 1, choices, chosen: null, ...nothing, stale: null }
	const problemsOf = (definitions: readonly (Definition | undefined)[]) =>
		openProblems.of(definitions, folder, question.problemsMayBeOld ?? false)
	const content = contentOf(found, workspace, problemsOf)
	return { version: 1, choices, chosen: subjectOf(found), ...nothing, ...content, stale: staleOf(found) }
}

function contentOf(
	found: Found,
	workspace: Workspace,
	problemsOf: (definitions: readonly (Definition | undefined)[]) => readonly PreviewProblem[],
): Partial<PreviewData> {
	const { folder } = found
	const placeOf = (definition: Definition, span: Span): Place | undefined => locationIn(workspace, folder, definition, span)
	if ('plan' in found) {
		const problems = problemsOf(partsOf(found.plan, folder))
		return { picture: pictureOfPlan(found.plan, folder, { problems, placeOf }) }
	}
	if ('block' in found) {
		const problems = problemsOf([found.block])
		return { picture: pictureOfBlock(found.block, folder, { problems, placeOf }) }
	}
	if ('team' in found) return { team: teamOverview(found.team, folder, plan => problemsOf(partsOf(plan, folder))) }
	return { log: plannedAgainstDone(found.log.name.text, folder, placeOf) }
}

/** What a plan is made of: itself, its lifter and its blocks. */
function partsOf(plan: Plan, folder: Folder): (Definition | undefined)[] {
	return [plan, folder.find('lifter', plan.lifter.text), ...plan.runs.map(run => folder.find('block', run.block.text))]
}
