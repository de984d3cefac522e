import { Command, Option } from 'commander'

/** `language-server --stdio`: the server, for any editor that speaks the protocol. */
export function languageServer(): Command {
	return new Command('language-server')
		.description('serve an editor over standard input and output')
		.addOption(new Option('--stdio', 'talk over standard input and output').makeOptionMandatory())
		.action(async () => {
			// Loaded only here: no other command needs it. It reads from the command line how to talk.
			await import('../../../server/main-node.ts')
		})
}
