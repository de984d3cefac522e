import { commands, Disposable } from 'vscode'
import { startWorkspace } from './commands/start-workspace.ts'

/** Commands that need the server, or what talks to it. */
export interface ServerCommands {
	openPreview(given?: unknown): unknown
	openSheet(plan?: unknown): unknown
	saveSheet(): unknown
	printSheet(): unknown
	choosePlan(): unknown
	restartServer(): unknown
	showLog(): unknown
}

const names: readonly (keyof ServerCommands)[] = [
	'openPreview',
	'openSheet',
	'saveSheet',
	'printSheet',
	'choosePlan',
	'restartServer',
	'showLog',
]

/** Registers all commands. Those that are asked for before `loaded` is fulfilled wait for it. */
export function registerCommands(loaded: Promise<ServerCommands>): Disposable {
	return Disposable.from(
		commands.registerCommand('barstave.startWorkspace', startWorkspace),
		...names.map(name => commands.registerCommand(`barstave.${name}`, async (given?: unknown) => (await loaded)[name](given))),
	)
}
