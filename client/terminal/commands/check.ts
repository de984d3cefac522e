import { readFileSync } from 'node:fs'
import path from 'node:path'
import { Command, InvalidArgumentError, Option } from 'commander'
import type { ShownLevel } from '../../../language/model/problem.ts'
import type { CalendarDate } from '../../../language/model/quantities.ts'
import { type CheckResult, reaches, resultOf, type ShownProblem } from '../checking/check-result.ts'
import { type Corrections, fix } from '../checking/fix.ts'
import { judge } from '../checking/judge.ts'
import { newSince } from '../checking/new-since.ts'
import { readResult } from '../checking/read-result.ts'
import { merge, partOf, readShard, type Shard } from '../checking/shard.ts'
import { layoutFor, print, say } from '../output.ts'
import { exitStatus, Refusal } from '../refusal.ts'
import { github } from '../reporters/github.ts'
import { gitlab } from '../reporters/gitlab.ts'
import { json } from '../reporters/json.ts'
import { junit } from '../reporters/junit.ts'
import type { Reporter, ReportSetting } from '../reporters/reporter.ts'
import { sarif } from '../reporters/sarif.ts'
import { text } from '../reporters/text.ts'
import { counted } from '../text/words.ts'
import { openRevision } from '../workspace/git-revision.ts'
import { nothingFound, shownPaths } from '../workspace/shown-paths.ts'
import { standardInput, takeStandardInput } from '../workspace/standard-input.ts'
import { watchFolder } from '../workspace/watch.ts'
import { openWorkspace, type Workspace, withSlashes } from '../workspace/workspace.ts'
import { formatOption, readDate, workspaceOption } from './options.ts'

const reporters = { text, json, sarif, github, gitlab, junit } satisfies Record<string, Reporter>

interface CheckOptions {
	readonly workspace?: string
	readonly format: keyof typeof reporters
	readonly failOn: ShownLevel
	readonly fix?: true
	readonly watch?: true
	readonly stdin?: true
	readonly stdinPath?: string
	readonly today?: CalendarDate
	readonly newSince?: string
	readonly shard?: Shard
	readonly merge?: readonly string[]
	readonly allowEmpty?: true
}

/** `check`: what the editor underlines, for people, machines and services. */
export function check(): Command {
	return new Command('check')
		.description('report problems in the training texts')
		.argument('[path...]', `files and folders whose problems are shown; "${standardInput}" is standard input`)
		.addOption(workspaceOption())
		.addOption(formatOption('text', 'json', 'sarif', 'github', 'gitlab', 'junit'))
		.addOption(
			new Option('--fail-on <level>', 'from this level on a problem fails the check')
				.choices(['error', 'warning', 'info'])
				.default('error'),
		)
		.addOption(
			new Option('--fix', 'make the corrections that change nothing about the training').conflicts(['stdin', 'watch', 'merge']),
		)
		.addOption(new Option('--watch', 'check again after every change').conflicts(['stdin', 'merge']))
		.addOption(new Option('--stdin', 'check the text from standard input').conflicts(['merge']))
		.addOption(new Option('--stdin-path <file>', 'the file that this text stands for').implies({ stdin: true }))
		.addOption(new Option('--today <date>', 'the date of today, for rules about logs').argParser(readDate))
		.addOption(new Option('--new-since <revision>', 'show only what a revision of git did not have').conflicts(['merge']))
		.addOption(
			new Option('--shard <part>', 'check one part of the files, such as 2/4').argParser(shardOf).conflicts(['merge', 'stdin']),
		)
		.addOption(new Option('--merge <file...>', 'put the JSON results of all parts together; nothing is checked'))
		.addOption(new Option('--allow-empty', 'a workspace without files is no fault'))
		.action(run)
}

function shardOf(written: string): Shard {
	const shard = readShard(written)
	if (shard) return shard
	throw new InvalidArgumentError('A part is written like 2/4: the second of four.')
}

async function run(given: readonly string[], options: CheckOptions): Promise<void> {
	const fromInput = options.stdin === true || given.includes(standardInput)
	if (fromInput && (options.fix || options.watch || options.shard)) {
		throw new Refusal('Standard input is checked as it comes: it does not go with --fix, --watch or --shard.')
	}
	if (options.merge) {
		if (given.length > 0) throw new Refusal('--merge checks nothing, so it takes no other paths.')
		process.exitCode = await mergeResults(options.merge, options)
		return
	}
	const workspace = await openWorkspace(options.workspace)
	const inputPath = fromInput ? await takeStandardInput(workspace, options.stdinPath) : undefined
	const paths = given.filter(one => one !== standardInput)
	const before = options.newSince === undefined ? undefined : await openRevision(workspace.root, options.newSince)
	for (const one of [workspace, before]) one?.folder.setToday(options.today)

	const checkNow = async (): Promise<Checked> => {
		const chosen = inputPath !== undefined && paths.length === 0 ? [] : shownPaths(workspace, paths)
		const all = inputPath === undefined ? chosen : [...new Set([...chosen, inputPath])].sort()
		if (all.length === 0 && !options.allowEmpty) throw nothingFound(workspace, paths)
		const files = options.shard ? partOf(all, options.shard) : all
		const corrections = options.fix ? await fix(workspace, files) : undefined
		const { problems, correctable } = judge(workspace, files)
		const shown = before ? newSince(judge(before, [...before.files.keys()]).problems, problems) : problems
		const shard = options.shard && `${options.shard.number}/${options.shard.of}`
		return { result: resultOf(files.length, shown, shard), files, correctable, corrections }
	}

	const checked = await checkNow()
	tellCorrections(checked.corrections)
	let last = reportOf(checked, workspace, options)
	print(last)
	process.exitCode = statusOf(checked, workspace, options)
	if (!options.watch) return
	if (process.stderr.isTTY) say('\nWatching for changes. Ctrl+C ends it.')
	await watchFolder(workspace.root, async () => {
		await workspace.read()
		const report = await checkNow().then(now => reportOf(now, workspace, options), sayWhyNot)
		// A save that changes nothing of what was found is not worth a page.
		if (report === undefined || report === last) return
		print(options.format === 'text' ? `\n${report}` : report)
		last = report
	})
}

/** While texts are watched, a file that is gone for a moment ends nothing. */
function sayWhyNot(problem: unknown): undefined {
	if (!(problem instanceof Refusal)) throw problem
	say(problem.message)
}

interface Checked {
	readonly result: CheckResult
	readonly files: readonly string[]
	readonly correctable: ReadonlySet<ShownProblem>
	readonly corrections: Corrections | undefined
}

function reportOf({ result, files, correctable }: Checked, workspace: Workspace, options: CheckOptions): string {
	const lines = new Map<string, readonly string[]>()
	return reporters[options.format](result, {
		...settingOf(workspace.root, options),
		files,
		correctable: result.problems.filter(problem => correctable.has(problem)).length,
		lineOf(file, line) {
			if (!lines.has(file)) lines.set(file, linesOf(workspace.files.get(file)?.text ?? ''))
			return lines.get(file)?.[line - 1]
		},
	})
}

function settingOf(root: string, { failOn }: CheckOptions): Omit<ReportSetting, 'files' | 'correctable' | 'lineOf'> {
	const relative = path.relative(process.cwd(), root)
	// A workspace that does not lie below the current folder is where its paths are meant from.
	const from = relative.startsWith('..') || path.isAbsolute(relative) ? '' : relative
	return {
		...layoutFor(undefined),
		shownPath: file => (file === standardInput ? 'standard input' : withSlashes(path.join(from, file))),
		failOn,
	}
}

function linesOf(content: string): readonly string[] {
	return content.split(/\r\n|\r|\n/)
}

/** The status, once what could not be opened has been named. */
function statusOf({ result, corrections }: Checked, workspace: Workspace, { failOn }: CheckOptions): number {
	for (const { path, reason } of workspace.closed) say(`"${path}" cannot be opened: ${reason}.`)
	for (const { path, reason } of corrections?.failed ?? []) say(`"${path}" was not corrected: ${reason}.`)
	if (workspace.closed.length > 0 || (corrections?.failed.length ?? 0) > 0) return exitStatus.refused
	return reaches(result, failOn) ? exitStatus.problems : exitStatus.clean
}

function tellCorrections(corrections: Corrections | undefined): void {
	if (!corrections || corrections.made === 0) return
	say(`${counted(corrections.made, 'correction')} made in ${counted(corrections.written.length, 'file')}.`)
}

async function mergeResults(wheres: readonly string[], options: CheckOptions): Promise<number> {
	const results: CheckResult[] = []
	for (const where of wheres) results.push(await readResult(where))
	const result = merge(results)
	if (result.files === 0 && !options.allowEmpty)
		throw new Refusal('The merged results hold no files. With --allow-empty that is no fault.')
	const root = path.resolve(options.workspace ?? '.')
	const report = reporters[options.format](result, {
		...settingOf(root, options),
		files: [],
		correctable: 0,
		lineOf: (file, line) => linesOf(textAt(path.join(root, file)))[line - 1],
	})
	print(report)
	return reaches(result, options.failOn) ? exitStatus.problems : exitStatus.clean
}

/** The text of a file that a merged result names; empty where it is not at hand. */
function textAt(where: string): string {
	try {
		return readFileSync(where, 'utf8').replace(/^\ufeff/, '')
	} catch {
		return ''
	}
}
