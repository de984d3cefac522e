import type { Connection, ServerCapabilities } from 'vscode-languageserver'
import type { Workspace } from './workspace.ts'

/** What a feature of the editor works with. */
export interface ServerContext {
	readonly connection: Connection
	readonly workspace: Workspace
}

/** One feature: what it tells the editor that it can do, and the requests that it answers. */
export interface Feature {
	readonly capabilities: ServerCapabilities
	register(context: ServerContext): void
}
