import { commands, l10n, Uri, ViewColumn, window, workspace } from 'vscode'
import { starterFiles } from '../../starter/files.ts'

/** Writes a small workspace to begin with into an empty folder: gym, lifter, block, plan. */
export async function startWorkspace(): Promise<void> {
	const folder = await chooseFolder()
	if (!folder) return
	const name = folder.path.split('/').at(-1) ?? ''
	try {
		if ((await workspace.fs.readDirectory(folder)).length > 0) {
			const again = l10n.t('Choose another one')
			const message = l10n.t('The folder "{0}" is not empty, and nothing was written. Choose one that is.', name)
			if ((await window.showWarningMessage(message, again)) === again) await startWorkspace()
			return
		}
		for (const { path, text } of starterFiles)
			await workspace.fs.writeFile(Uri.joinPath(folder, path), new TextEncoder().encode(text))
	} catch (problem) {
		const reason = problem instanceof Error ? problem.message : String(problem)
		void window.showErrorMessage(l10n.t('The folder "{0}" cannot be written: {1}', name, reason))
		return
	}
	// A folder that is not open is opened as a whole: only then its texts know each other.
	if (workspace.getWorkspaceFolder(folder))
		await window.showTextDocument(Uri.joinPath(folder, starterFiles[0]!.path), { viewColumn: ViewColumn.One })
	else await commands.executeCommand('vscode.openFolder', folder)
}

/** The folder that is open where it is empty, else one that the person chooses. */
async function chooseFolder(): Promise<Uri | undefined> {
	const [open] = workspace.workspaceFolders ?? []
	const openIsEmpty = open !== undefined && (await isEmpty(open.uri))
	if (openIsEmpty) return open.uri
	const chosen = await window.showOpenDialog({
		canSelectFiles: false,
		canSelectFolders: true,
		...(open ? { defaultUri: open.uri } : {}),
		title: l10n.t('An empty folder for a gym, a lifter, a block and a plan'),
		openLabel: l10n.t('Write them here'),
	})
	return chosen?.[0]
}

async function isEmpty(folder: Uri): Promise<boolean> {
	return Promise.resolve(workspace.fs.readDirectory(folder)).then(
		entries => entries.length === 0,
		() => false,
	)
}
