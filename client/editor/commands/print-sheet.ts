import { type ExtensionContext, env, l10n, UIKind, Uri, window, workspace } from 'vscode'
import type { BaseLanguageClient } from 'vscode-languageclient'
import type { PreviewQuestion } from '../../../language/reports/preview.ts'
import type { FileWriter } from '../file-writer.ts'
import { type ShownPicture, shownPicture } from '../shown-picture.ts'
import { fileName, savePage } from './save-sheet.ts'

/**
 * Opens what the preview shows as a page in the browser, to print it there. Where the editor itself runs in a browser, or the files lie on
 * another machine, the browser could not open it: there the page is saved where the person says.
 */
export async function printSheet(
	{ globalStorageUri }: ExtensionContext,
	client: BaseLanguageClient,
	question: PreviewQuestion,
	write: FileWriter,
): Promise<void> {
	const shown = await shownPicture(client, question)
	if (!shown) return
	const isElsewhere = env.uiKind === UIKind.Web || env.remoteName !== undefined
	if (!isElsewhere) await openPage(shown, Uri.joinPath(globalStorageUri, 'print'), write)
	else if (await savePage(shown, write))
		void window.showInformationMessage(l10n.t('Open the page in a browser, and print it there.'))
}

async function openPage({ subject, picture }: ShownPicture, folder: Uri, write: FileWriter): Promise<void> {
	const file = Uri.joinPath(folder, `${fileName(subject)}.html`)
	try {
		await workspace.fs.createDirectory(folder)
		await workspace.fs.writeFile(file, await write({ picture, format: 'html', paper: 'a4', locale: env.language }))
	} catch (problem) {
		const reason = problem instanceof Error ? problem.message : String(problem)
		void window.showErrorMessage(l10n.t('"{0}" cannot be written: {1}', file.fsPath, reason))
		return
	}
	await env.openExternal(file)
}
