import path from 'node:path'
import { Command, Option } from 'commander'
import { formatText } from '../../../language/formatting/format.ts'
import { TextReader } from '../../../language/workspace/text-file.ts'
import { Progress, print, say } from '../output.ts'
import { exitStatus, Refusal } from '../refusal.ts'
import { plain } from '../text/plain.ts'
import { counted } from '../text/words.ts'
import { byteOrderMark, decode } from '../workspace/file-text.ts'
import { rewrite } from '../workspace/rewrite.ts'
import { nothingFound, shownPaths } from '../workspace/shown-paths.ts'
import { readStandardInput, standardInput } from '../workspace/standard-input.ts'
import { openWorkspace, type Workspace, type WorkspaceFile, withSlashes } from '../workspace/workspace.ts'
import { workspaceOption } from './options.ts'

interface FormatOptions {
	readonly workspace?: string
	readonly check?: true
	readonly allowEmpty?: true
}

/** `format`: the one layout and spelling, for files or for a text on its way through. */
export function format(): Command {
	return new Command('format')
		.description('lay the training texts out; what they mean stays')
		.argument('[path...]', `files and folders; "${standardInput}" lays out standard input and prints it`)
		.addOption(workspaceOption())
		.addOption(new Option('--check', 'only say which files would change'))
		.addOption(new Option('--allow-empty', 'a workspace without files is no fault'))
		.action(run)
}

async function run(given: readonly string[], options: FormatOptions): Promise<void> {
	if (given.includes(standardInput)) {
		if (given.length > 1) throw new Refusal('Standard input is laid out by itself: name it, or files, not both.')
		process.exitCode = await formatStandardInput(options)
		return
	}
	const workspace = await openWorkspace(options.workspace)
	const paths = shownPaths(workspace, given)
	if (paths.length === 0 && !options.allowEmpty) throw nothingFound(workspace, given)
	const { changes, noText } = changesIn(workspace, paths)
	const failed = options.check ? [] : await write(workspace, changes)
	const changed = changes.filter(change => !failed.some(({ file }) => file === change.file))
	print(reportOf(workspace, changed, paths.length, options))
	for (const { path: where, reason } of workspace.closed) say(`"${where}" cannot be opened: ${reason}.`)
	for (const { file, reason } of failed) say(`"${file.path}" was not laid out: ${reason}.`)
	for (const { path: where, fault } of noText) say(`"${where}" stays as it is. ${fault?.message}`)
	sayWhatStays(workspace, paths)
	process.exitCode =
		workspace.closed.length + failed.length > 0
			? exitStatus.refused
			: noText.length > 0 || (options.check && changes.length > 0)
				? exitStatus.problems
				: exitStatus.clean
}

interface Change {
	readonly file: WorkspaceFile
	readonly text: string
}

function changesIn(workspace: Workspace, paths: readonly string[]) {
	const files = paths.map(where => workspace.files.get(where)!)
	const changes: Change[] = []
	const progress = new Progress('Laying out')
	for (const [index, file] of files.entries()) {
		progress.at(index, files.length)
		const text = file.fault ? file.text : formatText(file.text, workspace.reader)
		if (text !== file.text) changes.push({ file, text })
	}
	progress.done()
	return { changes, noText: files.filter(file => file.fault) }
}

/** Writes what has changed; returns the files that could not be written, with the reason. */
async function write(workspace: Workspace, changes: readonly Change[]) {
	const failed: { file: WorkspaceFile; reason: string }[] = []
	for (const { file, text } of changes) {
		const reason = await rewrite(workspace, file, text)
		if (reason !== undefined) failed.push({ file, reason })
	}
	return failed
}

function reportOf({ root }: Workspace, changed: readonly Change[], files: number, { check }: FormatOptions): string {
	const from = path.relative(process.cwd(), root)
	const names = changed.map(({ file }) => plain(withSlashes(path.join(from, file.path))))
	return [...names, summaryOf(changed.length, files, check)].join('\n')
}

function summaryOf(changed: number, files: number, check: true | undefined): string {
	if (changed === 0) return `${counted(files, 'file')}, nothing to lay out.`
	if (check) return `${changed} of ${counted(files, 'file')} would be laid out otherwise. "barstave format" does it.`
	return `${changed} of ${counted(files, 'file')} laid out.`
}

/** A coach who sees no change where one was due is told why. */
function sayWhatStays(workspace: Workspace, paths: readonly string[]): void {
	for (const where of paths) {
		// What is no text has been told of.
		if (workspace.files.get(where)?.fault) continue
		const parts = workspace.folder.file(workspace.uriOf(where))?.parts ?? []
		const unread = parts.filter(part => part.faults.some(fault => fault.code === 'syntax')).length
		if (unread === 0) continue
		const what = unread === 1 ? 'one definition does not read and stays' : `${unread} definitions do not read and stay`
		say(`"${where}": ${what} as written. "barstave check" says why.`)
	}
}

/** Prints the text from standard input as it is laid out, and nothing else: editors take it as it comes. */
async function formatStandardInput({ check }: FormatOptions): Promise<number> {
	const { text, byteOrderMark: marked, fault } = decode(await readStandardInput())
	if (fault) {
		say(fault.message)
		return exitStatus.problems
	}
	const formatted = formatText(text, new TextReader())
	if (check) {
		if (formatted === text) return exitStatus.clean
		say('Standard input would be laid out otherwise.')
		return exitStatus.problems
	}
	process.stdout.write((marked ? byteOrderMark : '') + formatted)
	return exitStatus.clean
}
