import { Command, CommanderError } from 'commander'
import { version } from '../../package.json'
import { check } from './commands/check.ts'
import { explain } from './commands/explain.ts'
import { format } from './commands/format.ts'
import { languageServer } from './commands/language-server.ts'
import { sheet } from './commands/sheet.ts'
import { start } from './commands/start.ts'
import { volume } from './commands/volume.ts'
import { why } from './commands/why.ts'
import { endQuietlyOnClosedPipe, say } from './output.ts'
import { exitStatus, Refusal } from './refusal.ts'
import { plainUsage } from './usage.ts'

const program = new Command('barstave')
	.description('Strength programmes as plain text: checked, computed and shown.')
	.version(version, '--version', 'print the version')
	.helpOption('-h, --help', 'print what a command does')
	.helpCommand('help [command]', 'print what a command does')
	.addHelpText(
		'after',
		`
A command ends with status 0 where all is well, with 1 where "check" has found problems or "format --check" files to lay out, and with 2
where it was not understood or a file could not be opened.`,
	)
	.configureHelp({ showGlobalOptions: true })
	.exitOverride()
speakPlainly(program)

for (const command of [check, format, sheet, volume, explain, why, start, languageServer]) {
	// A command made apart does not take over what the program settles.
	const added = command().copyInheritedSettings(program)
	speakPlainly(added)
	program.addCommand(added)
}

endQuietlyOnClosedPipe()
program.parseAsync().catch(problem => {
	process.exitCode = statusAfter(problem)
})

/** What is wrong with how a command was written, in words for people. */
function speakPlainly(command: Command): void {
	command.configureOutput({ outputError: message => say(plainUsage(message, command)) })
}

function statusAfter(problem: unknown): number {
	// Commander has said what is wrong by then; asking for help is no fault.
	if (problem instanceof CommanderError) return problem.exitCode === 0 ? exitStatus.clean : exitStatus.refused
	if (problem instanceof Refusal) {
		say(problem.message)
		return exitStatus.refused
	}
	say('Barstave itself has failed; your texts are as they were. Please report it with these lines:')
	say(problem instanceof Error && problem.stack ? problem.stack : String(problem))
	return exitStatus.refused
}
