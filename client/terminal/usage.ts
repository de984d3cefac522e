import type { Command } from 'commander'

/** What the parser of the command line says, and what is said to people instead. */
const sayings: readonly (readonly [RegExp, (...found: string[]) => string])[] = [
	[/^missing required argument '(.+)'/, what => `The ${what} is missing. It is written: USAGE.`],
	[/^too many arguments/, () => 'A word too many; a name of several words stands in quotes. It is written: USAGE.'],
	[/^unknown command '(.+)'/, name => `There is no command "${name}". "HELP" lists them.`],
	[/^unknown option '(.+)'/, name => `There is no option "${name}". "HELP" lists them.`],
	[/^option '(\S+).*' argument missing/, name => `${name} needs a word behind it. "HELP" says which.`],
	[/^option '(\S+).*' cannot be used with option '(\S+).*'/, (one, other) => `${one} and ${other} do not go together.`],
	[/^option '(\S+).*' argument '(.*)' is invalid\. (.*)$/, (name, value, why) => `"${value}" does not go with ${name}. ${why}`],
	[/^command-argument value '(.*)' is invalid for argument '.*'\. (.*)$/, (value, why) => `"${value}" does not go there. ${why}`],
]

/** A message of the parser of the command line in plain words, with the way on: what was meant, or how the command is written. */
export function plainUsage(message: string, command: Command): string {
	const [first = '', near] = message.trim().split(/\n\(Did you mean /)
	const name = [command.parent?.name(), command.name()].filter(one => one !== undefined).join(' ')
	const text = said(first.replace(/^error: /, ''))
		.replace('USAGE', () => `${name} ${command.usage()}`)
		.replace('HELP', () => `${name} --help`)
		.replace(/Allowed choices are (.*)\.$/, 'It takes one of: $1.')
	return near === undefined ? text : text.replace(/ "[^"]* --help" lists them\.$/, ` Did you mean ${near.replace(/\)$/, '')}`)
}

function said(message: string): string {
	for (const [pattern, say] of sayings) {
		const found = pattern.exec(message)
		if (found) return say(...found.slice(1))
	}
	return message
}
