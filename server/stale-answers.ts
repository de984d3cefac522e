import { effect, untracked } from '@preact/signals-core'
import type { Workspace } from './workspace.ts'

/** So long after a change it is looked whether an answer would be another now. */
const pauseBeforeLook = 200

/**
 * Answers that an editor shows beside a text, and asks for again only when that text changes. Where something else has changed them, a
 * lifter's best or the chosen plan, the editor is asked to ask again; not after each key, and not where they would be the same.
 */
export class StaleAnswers {
	private readonly given = new Map<string, { readonly version: number | undefined; readonly answer: string }>()
	private timer: ReturnType<typeof setTimeout> | undefined

	/**
	 * @param answerFor What an editor would be told about a text now.
	 * @param wishes Reads what else the answers hang on.
	 */
	constructor(
		private readonly workspace: Workspace,
		private readonly answerFor: (uri: string) => unknown,
		private readonly refresh: () => Promise<void>,
		wishes: () => void,
	) {
		workspace.onChange(() => this.lookSoon())
		effect(() => {
			wishes()
			untracked(() => this.lookSoon())
		})
	}

	/** What an editor has just been told about a text. */
	keep(uri: string, answer: unknown): void {
		this.given.set(uri, { version: this.workspace.settledVersion(uri), answer: JSON.stringify(answer) })
	}

	private lookSoon(): void {
		if (this.given.size === 0) return
		clearTimeout(this.timer)
		this.timer = setTimeout(() => this.look(), pauseBeforeLook)
	}

	private look(): void {
		for (const [uri, { version, answer }] of this.given) {
			if (!this.workspace.isOpen(uri)) this.given.delete(uri)
			// Of a text that was typed in the editor asks anyhow.
			else if (this.workspace.settledVersion(uri) === version && JSON.stringify(this.answerFor(uri)) !== answer) {
				this.given.clear()
				void this.refresh()
				return
			}
		}
	}
}
