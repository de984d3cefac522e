import assert from 'node:assert/strict'
import { setTimeout as pause } from 'node:timers/promises'
import * as vscode from 'vscode'

/** What holds inside any editor, each case by itself: its name, and what throws where it does not hold. */
export const cases: Record<string, () => Promise<void>> = {
	'opening a .stave file starts the extension': async () => {
		const document = await vscode.workspace.openTextDocument(inClub('blocks/hinge-rebuild.stave'))
		await vscode.window.showTextDocument(document)
		assert.equal(document.languageId, 'barstave')
		const extension = vscode.extensions.getExtension('barstave.barstave')
		assert.ok(extension)
		await until(() => extension.isActive)
	},
	colours: async () => {
		const tokens = await vscode.commands.executeCommand<{ c: string; t: string }[]>(
			'_workbench.captureSyntaxTokens',
			inClub('blocks/hinge-rebuild.stave'),
		)
		console.log(JSON.stringify(tokens.slice(0, 30)))
		assert.ok(tokens.length > 10)
	},
	library: async () => {
		const document = await vscode.workspace.openTextDocument(vscode.Uri.parse('barstave-library:/movements.stave'))
		assert.match(document.getText(), /movement deadlift/)
		assert.equal(document.languageId, 'barstave')
	},
}

function inClub(file: string): vscode.Uri {
	return vscode.Uri.joinPath(vscode.workspace.workspaceFolders![0]!.uri, file)
}

/** Waits until something holds, and gives it. */
async function until<T>(look: () => T | Promise<T>): Promise<NonNullable<T>> {
	for (const deadline = Date.now() + 15_000; ; await pause(50)) {
		const seen = await look()
		if (seen) return seen
		if (Date.now() > deadline) throw new Error(`It did not come about: ${look}`)
	}
}
