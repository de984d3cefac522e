import type { CodeAction, TextEdit } from 'vscode-languageserver'
import { fixAll } from '../../language/workspace/fix-all.ts'
import { workspaceEdit } from '../edits.ts'
import { rangeOf } from '../positions.ts'
import type { Request } from './request.ts'

export const fixAllKind = 'source.fixAll.barstave'

/**
 * All corrections of a text that change nothing about the training, as one step that can be taken back. They are tried out in a copy of
 * the folder, round by round, until nothing is left to correct.
 */
export function allFixes({ context: { workspace, client }, folder, file }: Request): CodeAction[] {
	const { text, rounds } = fixAll(folder.copy(), file.uri)
	if (text === file.text) return []
	const [first, another] = rounds
	const edits: TextEdit[] = another
		? [differenceOf(file, text)]
		: first!.map(edit => ({ range: rangeOf(file, edit.start, edit.end), newText: edit.text }))
	const edit = workspaceEdit(new Map([[file.uri, edits]]), workspace, client)
	return [{ title: 'Make all corrections that change nothing about the training', kind: fixAllKind, edit }]
}

/** One edit from the first character that is another to the last. */
function differenceOf(file: Request['file'], text: string): TextEdit {
	const most = Math.min(file.text.length, text.length)
	let start = 0
	while (start < most && file.text[start] === text[start]) start++
	let same = 0
	while (same < most - start && file.text.at(-1 - same) === text.at(-1 - same)) same++
	return { range: rangeOf(file, start, file.text.length - same), newText: text.slice(start, text.length - same) }
}
