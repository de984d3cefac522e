import { commands, l10n, window } from 'vscode'
import type { BaseLanguageClient } from 'vscode-languageclient'
import type { PlansAnswer } from '../../../language/reports/chosen-plan.ts'
import { isOurs, withoutIcons } from '../texts.ts'

/** Opens the preview with the sheet of a plan: of the one that is named, or that the person picks. */
export async function openSheet(client: BaseLanguageClient, plan: unknown): Promise<void> {
	const name = typeof plan === 'string' ? plan : await pickPlan(client)
	if (name !== undefined) await commands.executeCommand('barstave.openPreview', name)
}

async function pickPlan(client: BaseLanguageClient): Promise<string | undefined> {
	const editor = [window.activeTextEditor, ...window.visibleTextEditors].find(isOurs)
	const question = editor ? { uri: client.code2ProtocolConverter.asUri(editor.document.uri) } : {}
	const { plans } = await client.sendRequest<PlansAnswer>('barstave/plans', question)
	if (plans.length === 0) {
		void window.showInformationMessage(l10n.t('There is no plan in this folder yet, so there is no sheet.'))
		return undefined
	}
	const choices = plans.map(({ name, title, lifterTitle }) => ({
		label: withoutIcons(`${lifterTitle} · ${title}`),
		description: name,
		name,
	}))
	const picked = await window.showQuickPick(choices, { title: l10n.t('Whose sheet?'), matchOnDescription: true })
	return picked?.name
}
