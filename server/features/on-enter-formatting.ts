import type { TextEdit } from 'vscode-languageserver'
import { formatEdits } from '../../language/formatting/format.ts'
import type { Feature } from '../feature.ts'
import { offsetOf, rangeOf } from '../positions.ts'

/**
 * Lays out the line that was just finished. No other line is touched, the one with the cursor least of all, so that nothing moves under a
 * coach's hands; what belongs on another line waits for the formatting of the whole text.
 */
export const onEnterFormatting: Feature = {
	capabilities: { documentOnTypeFormattingProvider: { firstTriggerCharacter: '\n' } },
	register({ connection, workspace }) {
		connection.onDocumentOnTypeFormatting(({ textDocument, position }): TextEdit[] | null => {
			workspace.settle()
			const file = workspace.fileOf(textDocument.uri)
			if (!file || position.line === 0) return null
			const start = offsetOf(file, { line: position.line - 1, character: 0 })
			const end = start + (/[\r\n]/.exec(file.text.slice(start))?.index ?? file.text.length - start)
			return formatEdits(file.text, workspace.reader, { start, end }).flatMap(({ span, text }) => {
				if (span.end > end || span.end < start) return []
				if (span.start >= start) return /[\r\n]/.test(text) ? [] : [edit(span.start, span.end, text)]
				// From the white space before the line, its own part: how far it is set in.
				const indented = /[\r\n]([^\r\n]*)$/.exec(text)?.[1]
				return indented === undefined ? [] : [edit(start, span.end, indented)]
			})

			function edit(from: number, to: number, newText: string): TextEdit {
				return { range: rangeOf(file!, from, to), newText }
			}
		})
	},
}
