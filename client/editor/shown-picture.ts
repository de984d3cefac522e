import { l10n, window } from 'vscode'
import type { BaseLanguageClient } from 'vscode-languageclient'
import type { Picture, PreviewData, PreviewQuestion, Subject } from '../../language/reports/preview.ts'

/** What the preview shows, or what it would show of the text in the editor. */
export interface ShownPicture {
	readonly subject: Subject
	readonly picture: Picture
}

/** Asks the server for the plan or block that is shown; where there is none, or its text cannot be read, the person is told. */
export async function shownPicture(client: BaseLanguageClient, question: PreviewQuestion): Promise<ShownPicture | undefined> {
	const { chosen, picture, stale } = await client.sendRequest<PreviewData>('barstave/preview', question)
	if (stale !== null) {
		void window.showWarningMessage(l10n.t('{0} Correct it first: a file would be wrong.', stale.message))
		return undefined
	}
	if (chosen === null || picture === null) {
		void window.showInformationMessage(l10n.t('There is no plan and no block here. Show one in the preview first.'))
		return undefined
	}
	return { subject: chosen, picture }
}
