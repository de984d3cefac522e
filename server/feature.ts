import type { ClientCapabilities, Connection, ServerCapabilities } from 'vscode-languageserver'
import type { ChosenPlans } from './chosen-plans.ts'
import type { Settings } from './settings.ts'
import type { Workspace } from './workspace.ts'

/** What a feature of the editor works with. */
export interface ServerContext {
	readonly connection: Connection
	readonly workspace: Workspace
	/** What the editor can do. */
	readonly client: ClientCapabilities
	readonly settings: Settings
	readonly chosen: ChosenPlans
	/** The editor can do it, but wants problems to be told: with the key, instead of asked for. */
	readonly wantsProblemsPushed: boolean
	/** Commands that the editor has, as it says itself: no other is offered. */
	readonly commands: ReadonlySet<unknown>
}

/** One feature: what it tells the editor that it can do, and the requests that it answers. */
export interface Feature {
	readonly capabilities: ServerCapabilities
	/** What depends on the editor. */
	readonly capabilitiesFor?: (context: ServerContext) => ServerCapabilities
	register(context: ServerContext): void
}
