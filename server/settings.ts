import { type Signal, signal } from '@preact/signals-core'
import { type ClientCapabilities, type Connection, DidChangeConfigurationNotification } from 'vscode-languageserver'

/** What a coach may turn off. An editor that says nothing gets all of it. */
interface Wishes {
	/** The load in kg or lb behind a percent, for the plan that is shown. */
	readonly loadHints: boolean
	/** The week's total at a session. */
	readonly totalHints: boolean
	/** What a block asks of a lifter, and who runs it, above the block. */
	readonly blockLens: boolean
}

const section = 'barstave'
const everything: Wishes = { loadHints: true, totalHints: true, blockLens: true }

/** The editor's settings of ours, as they are now. Severities are none of them: those stand in the text, for everyone who reads it. */
export class Settings {
	private readonly signal: Signal<Wishes> = signal(everything)

	get wishes(): Wishes {
		return this.signal.value
	}

	/** Asks an editor that can be asked, and hears of every change. */
	follow(connection: Connection, client: ClientCapabilities): void {
		const asks = client.workspace?.configuration ?? false
		const ask = async () => {
			// An editor that fails to answer keeps what it had.
			const answer: unknown = await connection.workspace.getConfiguration(section).catch(() => undefined)
			if (answer !== undefined) this.take(answer)
		}
		connection.onDidChangeConfiguration(({ settings }) => {
			if (asks) void ask()
			else this.take((settings as Record<string, unknown> | null)?.[section])
		})
		if (!asks) return
		void ask()
		if (client.workspace?.didChangeConfiguration?.dynamicRegistration)
			void connection.client.register(DidChangeConfigurationNotification.type, { section })
	}

	private take(given: unknown): void {
		const hints = partOf(given, 'hints')
		const lens = partOf(given, 'lens')
		const wishes = { loadHints: isOn(hints, 'loads'), totalHints: isOn(hints, 'totals'), blockLens: isOn(lens, 'blocks') }
		if (JSON.stringify(wishes) !== JSON.stringify(this.signal.peek())) this.signal.value = wishes
	}
}

function partOf(given: unknown, name: string): unknown {
	return typeof given === 'object' && given !== null ? (given as Record<string, unknown>)[name] : undefined
}

function isOn(given: unknown, name: string): boolean {
	return partOf(given, name) !== false
}
