import { fixAll } from '../../../language/workspace/fix-all.ts'
import { rewrite } from '../workspace/rewrite.ts'
import type { Workspace } from '../workspace/workspace.ts'

/** What correcting came to. */
export interface Corrections {
	/** How many corrections were made, in the files that were written. */
	readonly made: number
	readonly written: readonly string[]
	/** Files that could not be written, with the reason; they are as they were. */
	readonly failed: readonly { readonly path: string; readonly reason: string }[]
}

/**
 * Makes every safe correction in the files at the given paths, round by round until nothing is left to correct, and writes what has
 * changed. A safe correction changes nothing about the training.
 */
export async function fix(workspace: Workspace, paths: readonly string[]): Promise<Corrections> {
	const original = new Map(paths.map(where => [where, workspace.files.get(where)!]))
	const written: string[] = []
	const failed: { path: string; reason: string }[] = []
	let made = 0
	for (const [where, before] of original) {
		if (before.fault) continue
		const fixed = fixAll(workspace.folder, before.uri)
		if (fixed.text === before.text) continue
		workspace.set(where, { ...before, text: fixed.text })
		const reason = await rewrite(workspace, before, fixed.text)
		if (reason === undefined) {
			written.push(where)
			made += fixed.made
		} else {
			workspace.set(where, before)
			failed.push({ path: where, reason })
		}
	}
	return { made, written, failed }
}
