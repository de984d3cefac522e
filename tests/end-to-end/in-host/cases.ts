import assert from 'node:assert/strict'
import { mkdir, rm, writeFile } from 'node:fs/promises'
import path from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import * as vscode from 'vscode'

/** What holds inside any editor, each case by itself: its name, and what throws where it does not hold. */
export const cases: Record<string, () => Promise<void>> = {
	'opening a .stave file starts the extension': async () => {
		const document = await open('blocks/hinge-rebuild.stave')
		assert.equal(document.languageId, 'barstave')
		const extension = vscode.extensions.getExtension('barstave.barstave')
		assert.ok(extension)
		await until('the extension is active', () => extension.isActive)
	},

	'the example club has no problems': async () => {
		await open('plans/mara-autumn.stave')
		await seesNothingWrong()
	},

	'a problem comes and goes while the text is typed, without a save': async () => {
		const document = await open('plans/mara-autumn.stave')
		await replace(document, 'run hinge-rebuild', 'run hinge-rebuilt')
		const [problem] = await until('the unknown block is reported', () => problemsIn('plans/mara-autumn.stave', 'unknown-name'))
		assert.equal(problem!.source, 'Barstave')
		assert.equal(document.getText(problem!.range), 'hinge-rebuilt')
		assert.match(problem!.message, /hinge-rebuild\b/)
		await vscode.commands.executeCommand('undo')
		await seesNothingWrong()
	},

	'what is typed in a block shows in the plan that runs it': async () => {
		const document = await open('blocks/hinge-rebuild.stave')
		await replace(document, 'week 3: 4 x 4 at 76%', 'week 3: 4 x 4 at 84%')
		const [problem] = await until('position would be lost', () => problemsIn('plans/mara-autumn.stave', 'past-position-limit'))
		const [related] = problem!.relatedInformation ?? []
		assert.equal(related?.location.uri.toString(), document.uri.toString())
		assert.match(document.getText(related!.location.range), /84%/)
		await vscode.commands.executeCommand('undo')
		await seesNothingWrong()
	},

	'resting on a load tells how it came about': async () => {
		const document = await open('blocks/hinge-rebuild.stave')
		const text = await hover(document, '70%')
		// 70 % of Mara's best of 160 kg; the bar and the collars weigh 22.5 kg, so the discs make 90 kg.
		assert.match(text, /Mara Lind/)
		assert.match(text, /160 kg/)
		assert.match(text, /112 kg/)
		assert.match(text, /112\.5 kg/)
	},

	'a built-in name leads into the library, which can be read and not changed': async () => {
		const document = await open('blocks/hinge-rebuild.stave')
		const position = positionOf(document, 'deadlift', 'main deadlift')
		const [link] = await vscode.commands.executeCommand<vscode.LocationLink[]>(
			'vscode.executeDefinitionProvider',
			document.uri,
			position,
		)
		assert.equal(link?.targetUri.scheme, 'barstave-library')
		const library = await vscode.workspace.openTextDocument(link!.targetUri)
		assert.equal(library.languageId, 'barstave')
		assert.equal(library.getText(link!.targetSelectionRange), 'deadlift')
		assert.match(library.getText(link!.targetRange), /^movement deadlift "/)
		assert.equal(vscode.workspace.fs.isWritableFileSystem('barstave-library') ?? false, false)
		assert.match(await hover(library, 'deadlift', 'movement deadlift'), /deadlift/i)
	},

	'the code of a problem leads to its page': async () => {
		const document = await open('plans/mara-autumn.stave')
		await replace(document, 'run hinge-rebuild', 'run hinge-rebuilt')
		const [problem] = await until('the unknown block is reported', () => problemsIn('plans/mara-autumn.stave', 'unknown-name'))
		assert.ok(typeof problem!.code === 'object')
		const page = await vscode.workspace.openTextDocument(problem!.code.target)
		assert.equal(page.languageId, 'markdown')
		assert.match(page.getText(), /unknown-name/)
	},

	'completion offers movements after a role': async () => {
		const document = await open('blocks/hinge-rebuild.stave')
		const position = positionOf(document, 'strict-bent-row', 'accessory strict-bent-row')
		const list = await vscode.commands.executeCommand<vscode.CompletionList>(
			'vscode.executeCompletionItemProvider',
			document.uri,
			position,
		)
		const labels = list.items.map(({ label }) => (typeof label === 'string' ? label : label.label))
		assert.ok(labels.includes('strict-bent-row'), labels.join(', '))
		assert.ok(!labels.includes('mara-lind'), 'a lifter is no movement')
	},

	'a quick fix corrects a wrong name': async () => {
		const document = await open('plans/mara-autumn.stave')
		await replace(document, 'run hinge-rebuild', 'run hinge-rebuilt')
		const [problem] = await until('the unknown block is reported', () => problemsIn('plans/mara-autumn.stave', 'unknown-name'))
		const actions = await vscode.commands.executeCommand<vscode.CodeAction[]>(
			'vscode.executeCodeActionProvider',
			document.uri,
			problem!.range,
			vscode.CodeActionKind.QuickFix.value,
		)
		const fix = actions.find(({ edit, title }) => edit && title.includes('"hinge-rebuild"'))
		assert.ok(fix?.edit, actions.map(({ title }) => title).join(', '))
		assert.ok(await vscode.workspace.applyEdit(fix.edit))
		assert.match(document.getText(), /run hinge-rebuild\n/)
		await seesNothingWrong()
	},

	'a name changes in all files at once': async () => {
		const document = await open('blocks/hinge-rebuild.stave')
		const edit = await vscode.commands.executeCommand<vscode.WorkspaceEdit>(
			'vscode.executeDocumentRenameProvider',
			document.uri,
			positionOf(document, 'hinge-rebuild', 'block hinge-rebuild'),
			'hinge-again',
		)
		const files = edit.entries().map(([uri]) => vscode.workspace.asRelativePath(uri))
		assert.deepEqual(files.sort(), ['blocks/hinge-rebuild.stave', 'plans/mara-autumn.stave'])
		assert.ok(await vscode.workspace.applyEdit(edit))
		assert.match((await open('plans/mara-autumn.stave')).getText(), /run hinge-again\n/)
		await seesNothingWrong()
	},

	'a text is laid out when it is saved': async () => {
		const language = { languageId: 'barstave' }
		const settings = vscode.workspace.getConfiguration('editor', language)
		await settings.update('formatOnSave', true, vscode.ConfigurationTarget.Global, true)
		try {
			const document = await open('plans/rosa-autumn.stave')
			const before = document.getText()
			await replace(document, '  run', '       run')
			assert.ok(await document.save())
			assert.equal(document.getText(), before)
		} finally {
			await settings.update('formatOnSave', undefined, vscode.ConfigurationTarget.Global, true)
		}
	},

	'the loads stand behind the percents': async () => {
		const document = await open('blocks/hinge-rebuild.stave')
		const all = new vscode.Range(new vscode.Position(0, 0), document.positionAt(document.getText().length))
		await until('112.5 kg stands behind 70%', async () => {
			const hints = await vscode.commands.executeCommand<vscode.InlayHint[]>('vscode.executeInlayHintProvider', document.uri, all)
			const line = positionOf(document, '70%', 'week 1').line
			return hints.some(({ label, position }) => position.line === line && /112\.5/.test(JSON.stringify(label)))
		})
	},

	'above a block stands who runs it': async () => {
		const document = await open('blocks/pull-drive.stave')
		await until('the lens is there', async () => {
			const lenses = await vscode.commands.executeCommand<vscode.CodeLens[]>('vscode.executeCodeLensProvider', document.uri)
			return lenses.some(({ command }) => command?.title.includes('Jon Marrow'))
		})
	},

	'the outline has the sessions of a block': async () => {
		const document = await open('blocks/hinge-rebuild.stave')
		const symbols = await vscode.commands.executeCommand<vscode.DocumentSymbol[]>(
			'vscode.executeDocumentSymbolProvider',
			document.uri,
		)
		assert.equal(symbols.length, 1)
		assert.match(symbols[0]!.name, /hinge/i)
		assert.equal(symbols[0]!.children.length, 3)
	},

	'the preview opens beside the text': async () => {
		await open('plans/mara-autumn.stave')
		await vscode.commands.executeCommand('barstave.openPreview')
		const preview = await until('the preview has a tab', () => tabs().find(tab => tab.input instanceof vscode.TabInputWebview))
		assert.notEqual(preview.group.viewColumn, vscode.ViewColumn.One)
	},

	'files that come and go outside of the editor are noticed': async () => {
		const file = inClub('blocks/from-outside.stave')
		await writeFile(file.fsPath, 'block from-outside "From outside"\n  weeks 1\n  targets dedlift\n')
		await until('the new file is checked', () => problemsIn('blocks/from-outside.stave', 'unknown-name'))
		await rm(file.fsPath)
		await seesNothingWrong()
	},

	'a folder that comes and goes outside of the editor is noticed': async () => {
		const folder = inClub('guests/winter').fsPath
		await mkdir(folder, { recursive: true })
		await writeFile(path.join(folder, 'guest.stave'), 'lifter guest-one "Guest"\n  trains at north-hal\n')
		await until('the file in the new folder is checked', () => problemsIn('guests/winter/guest.stave', 'unknown-name'))
		await rm(path.dirname(folder), { recursive: true })
		await seesNothingWrong()
	},

	'a text that has no file yet is checked': async () => {
		const content = 'gym back-yard "Back yard"\n  plates 20 kg, 10,5 kg\n'
		const document = await vscode.workspace.openTextDocument({ language: 'barstave', content })
		await vscode.window.showTextDocument(document)
		await until('the decimal comma is reported', () => found(document.uri, 'bad-number'))
	},

	'checking can be started again': async () => {
		await open('plans/mara-autumn.stave')
		await vscode.commands.executeCommand('barstave.restartServer')
		const document = await open('blocks/hinge-rebuild.stave')
		assert.match(await hover(document, '70%'), /112\.5 kg/)
		await seesNothingWrong()
	},
}

/** Forgets what a case has typed and opened. */
export async function tidy(): Promise<void> {
	for (const document of vscode.workspace.textDocuments.filter(({ isDirty }) => isDirty)) {
		await vscode.window.showTextDocument(document)
		await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor')
	}
	await vscode.commands.executeCommand('workbench.action.closeAllEditors')
}

function inClub(file: string): vscode.Uri {
	return vscode.Uri.joinPath(vscode.workspace.workspaceFolders![0]!.uri, file)
}

async function open(file: string): Promise<vscode.TextDocument> {
	const document = await vscode.workspace.openTextDocument(inClub(file))
	await vscode.window.showTextDocument(document, vscode.ViewColumn.One)
	return document
}

function positionOf(document: vscode.TextDocument, text: string, after = text): vscode.Position {
	const start = document.getText().indexOf(text, document.getText().indexOf(after))
	assert.ok(start >= 0, `"${text}" stands in the text`)
	return document.positionAt(start)
}

async function replace(document: vscode.TextDocument, old: string, replacement: string): Promise<void> {
	const start = positionOf(document, old)
	const edit = new vscode.WorkspaceEdit()
	edit.replace(document.uri, new vscode.Range(start, document.positionAt(document.offsetAt(start) + old.length)), replacement)
	assert.ok(await vscode.workspace.applyEdit(edit))
}

async function hover(document: vscode.TextDocument, text: string, after = text): Promise<string> {
	const position = positionOf(document, text, after)
	const hovers = await until('the hover opens', async () => {
		const shown = await vscode.commands.executeCommand<vscode.Hover[]>('vscode.executeHoverProvider', document.uri, position)
		return shown.length > 0 ? shown : undefined
	})
	return (
		hovers
			.flatMap(one => one.contents)
			.map(content => (typeof content === 'string' ? content : content.value))
			.join('\n')
			// Markdown escapes what could be markup.
			.replace(/\\(?=[^\w\s])/g, '')
	)
}

function problemsIn(file: string, code: string): vscode.Diagnostic[] | undefined {
	return found(inClub(file), code)
}

/** The problems of one kind, or `undefined` where there is none. */
function found(uri: vscode.Uri, code: string): vscode.Diagnostic[] | undefined {
	const problems = vscode.languages
		.getDiagnostics(uri)
		.filter(({ code: of }) => (typeof of === 'object' ? of.value : of) === code)
	return problems.length > 0 ? problems : undefined
}

/** Errors and warnings go; what is only a note may stay. */
async function seesNothingWrong(): Promise<void> {
	const wrong = () =>
		vscode.languages
			.getDiagnostics()
			.flatMap(([uri, problems]) =>
				problems
					.filter(problem => problem.severity <= vscode.DiagnosticSeverity.Warning)
					.map(problem => `${vscode.workspace.asRelativePath(uri)}: ${problem.message}`),
			)
	await until('nothing is wrong', () => wrong().length === 0, wrong)
}

function tabs(): vscode.Tab[] {
	return vscode.window.tabGroups.all.flatMap(group => group.tabs)
}

/** Waits until something comes about, and gives it. */
async function until<T>(what: string, look: () => T | Promise<T>, tell: () => unknown = () => ''): Promise<NonNullable<T>> {
	for (const deadline = Date.now() + 60_000; ; await pause(50)) {
		const seen = await look()
		if (seen) return seen
		if (Date.now() > deadline) throw new Error(`It did not come about that ${what}. ${tell()}`)
	}
}
