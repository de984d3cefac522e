import { effect } from '@preact/signals-core'
import type { PlanPick, PlansAnswer, PlansQuestion } from '../../language/reports/chosen-plan.ts'
import { listedPlan, plansIn } from '../chosen-plans.ts'
import type { Feature, ServerContext } from '../feature.ts'

/** Lists the plans that there are, takes the one that the coach picks, and says when either may have changed. */
export const planChoice: Feature = {
	capabilities: {},
	register(context) {
		const { connection, workspace, chosen } = context
		connection.onRequest('barstave/plans', async (question: PlansQuestion): Promise<PlansAnswer> => {
			await workspace.allRead()
			workspace.settle()
			return answer(question, context)
		})
		connection.onRequest('barstave/choosePlan', async ({ uri, picked }: PlanPick): Promise<PlansAnswer> => {
			await workspace.allRead()
			workspace.settle()
			chosen.pick(uri, picked ?? undefined)
			return answer(uri === undefined ? {} : { uri }, context)
		})
		let told: string | undefined
		effect(() => {
			const now = JSON.stringify(
				workspace
					.readyFolders()
					.map(({ uri, folder }) => [chosen.pickedIn(`${uri}/`), plansIn(folder).map(plan => listedPlan(plan, folder))]),
			)
			if (told !== undefined && told !== now) void connection.sendNotification('barstave/plansChanged')
			told = now
		})
	},
}

function answer({ uri }: PlansQuestion, { workspace, chosen }: ServerContext): PlansAnswer {
	const folder = uri === undefined ? workspace.readyFolders()[0]?.folder : workspace.folderOf(uri)
	if (!folder) return { plans: [], picked: null, shown: null }
	return {
		plans: plansIn(folder).map(plan => listedPlan(plan, folder)),
		picked: chosen.pickedIn(uri) ?? null,
		shown: chosen.planNear(uri, folder)?.name.text ?? null,
	}
}
