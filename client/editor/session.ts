import type { ServerCommands } from './commands.ts'

/** What the extension is once all of it is loaded. */
export interface Session {
	readonly commands: ServerCommands
	/** Ends the server. */
	stop(): Promise<void>
}

/** The script that begins a session where there is Node, in the built extension. */
export const sessionScript = 'session.cjs'
