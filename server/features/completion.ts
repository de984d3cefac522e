import { type CompletionItem, CompletionItemKind, MarkupKind } from 'vscode-languageserver'
import { exampleLines } from '../../language/parser/examples.ts'
import { describe } from '../../language/reports/description.ts'
import type { Folder } from '../../language/workspace/folder.ts'
import type { TextFile } from '../../language/workspace/text-file.ts'
import { type Expected, expectedAfter } from '../completion/expected.ts'
import { candidates } from '../completion/names.ts'
import { isInTextOrComment } from '../completion/places.ts'
import type { Feature } from '../feature.ts'
import { asMarkdown } from '../markdown.ts'
import { offsetOf, rangeOf } from '../positions.ts'
import type { Workspace } from '../workspace.ts'

/** A list longer than this nobody reads; typing a letter more shortens it. */
const mostItems = 200

/** Offers the words and names that may stand at the cursor. */
export const completion: Feature = {
	capabilities: { completionProvider: { triggerCharacters: [' '] } },
	register({ connection, workspace }) {
		connection.onCompletion(({ textDocument, position }) => {
			workspace.settle()
			const file = workspace.fileOf(textDocument.uri)
			if (!file) return null
			const items = complete(workspace, file, offsetOf(file, position), workspace.folderOf(textDocument.uri))
			return { isIncomplete: items.length > mostItems, items: items.slice(0, mostItems) }
		})
	},
}

function complete(workspace: Workspace, file: TextFile, offset: number, folder: Folder): CompletionItem[] {
	if (isInTextOrComment(workspace, file, offset)) return []
	const begun = /[a-z0-9-]*$/i.exec(file.text.slice(0, offset))![0]
	const wordStart = offset - begun.length
	const part = file.parts.findLast(one => one.start < wordStart)
	const before = file.text.slice(part?.start ?? 0, wordStart)
	const expected = expectedAfter(before, workspace.reader.grammarServices)
	const range = rangeOf(file, wordStart, offset)
	const edit = (newText: string) => ({ textEdit: { range, newText } })
	return expected.flatMap((one, index): CompletionItem[] => {
		if (one.kind === 'word') return [{ ...wordItem(one, index), ...edit(one.word) }]
		return candidates(one.rule, one.property, folder, part?.definition).map(({ name, detail, definition }) => ({
			label: name,
			labelDetails: { description: detail },
			kind: definition ? CompletionItemKind.Reference : CompletionItemKind.EnumMember,
			// A workspace's own names stand before built-in ones.
			sortText: `${definition && folder.isBuiltIn(definition) ? '2' : '1'}${name}`,
			...(definition ? { documentation: { kind: MarkupKind.Markdown, value: asMarkdown(describe(definition, folder)) } } : {}),
			...edit(name),
		}))
	})
}

function wordItem({ word, rule }: Expected & { kind: 'word' }, index: number): CompletionItem {
	const line = exampleLines[rule]
	return {
		label: word,
		kind: CompletionItemKind.Keyword,
		sortText: `3${String(index).padStart(3, '0')}`,
		...(line ? { labelDetails: { description: line.what }, detail: line.example } : {}),
	}
}
