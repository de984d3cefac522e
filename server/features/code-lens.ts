import type { CodeLens, Command } from 'vscode-languageserver'
import type { Block, Plan } from '../../language/model/definitions.ts'
import { blockDemands } from '../../language/reports/block-demands.ts'
import type { Folder } from '../../language/workspace/folder.ts'
import type { PlacedPart, TextFile } from '../../language/workspace/text-file.ts'
import { listedPlan, plansRunning } from '../chosen-plans.ts'
import type { Feature, ServerContext } from '../feature.ts'
import { rangeOf } from '../positions.ts'
import { StaleAnswers } from '../stale-answers.ts'
import { normalUri } from '../uri.ts'

/** A lens for each of more plans than this would push the text away; the status bar has them all. */
const mostSheets = 3

/** The command of an editor that shows a plan's load sheet: it gets the plan's name. */
const openSheet = 'barstave.openPreview'

/** Above each block: what it asks of a lifter, who runs it, and a way to the load sheet. */
export const codeLens: Feature = {
	capabilities: { codeLensProvider: {} },
	register(context) {
		const { connection, workspace, client, settings } = context
		const lensesIn = (uri: string) => {
			workspace.settle()
			const file = workspace.fileOf(uri)
			return file && settings.wishes.blockLens ? file.parts.flatMap(part => lensesOf(file, part, context)) : []
		}
		const stale = client.workspace?.codeLens?.refreshSupport
			? new StaleAnswers(
					workspace,
					uri => lensesIn(uri),
					() => connection.sendRequest('workspace/codeLens/refresh'),
					() => settings.wishes,
				)
			: undefined
		connection.onCodeLens(({ textDocument }) => {
			const uri = normalUri(textDocument.uri)
			const lenses = lensesIn(uri)
			stale?.keep(uri, lenses)
			return lenses
		})
	},
}

function lensesOf(file: TextFile, { definition, start }: PlacedPart, { workspace, commands }: ServerContext): CodeLens[] {
	if (definition?.kind !== 'block') return []
	const folder = workspace.folderOf(file.uri)
	const range = rangeOf(file, start + definition.header.start, start + definition.header.end)
	const plans = plansRunning(definition, folder)
	const sheets = commands.has(openSheet) ? plans.slice(0, mostSheets).map(plan => sheetOf(plan, folder)) : []
	return [asked(definition, folder), ranBy(plans, folder), ...sheets].map(command => ({ range, command }))
}

/** Words alone: a lens without a command does nothing. */
function words(title: string): Command {
	return { title, command: '' }
}

function asked(block: Block, folder: Folder): Command {
	const { gates, bests, equipment } = blockDemands(block, folder)
	const parts = [
		gates.length > 0 ? `first ${gates.join(', ')}` : '',
		bests.length > 0 ? `${bests.length === 1 ? 'a best' : 'bests'} of ${bests.join(', ')}` : '',
		equipment.length > 0 ? equipment.join(', ') : '',
	].filter(part => part !== '')
	return words(parts.length > 0 ? `Asks for: ${parts.join(' · ')}` : 'Asks for nothing in particular')
}

function ranBy(plans: readonly Plan[], folder: Folder): Command {
	if (plans.length === 0) return words('No plan runs it yet')
	const titles = new Set(plans.map(plan => listedPlan(plan, folder).lifterTitle))
	return words(`Run by ${[...titles].join(', ')}`)
}

function sheetOf(plan: Plan, folder: Folder): Command {
	return { title: `Open the sheet of ${listedPlan(plan, folder).lifterTitle}`, command: openSheet, arguments: [plan.name.text] }
}
