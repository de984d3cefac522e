import type { Range, TextEdit } from 'vscode-languageserver'
import { formatEdits } from '../../language/formatting/format.ts'
import { libraryScheme } from '../../language/workspace/library.ts'
import type { Feature } from '../feature.ts'
import { offsetOf, rangeOf } from '../positions.ts'

/** Lays a text out, or the part of it that is selected. The layout is the language's own: the editor's settings do not change it. */
export const formatting: Feature = {
	capabilities: { documentFormattingProvider: true, documentRangeFormattingProvider: true },
	register({ connection, workspace }) {
		const editsFor = (uri: string, range?: Range): TextEdit[] | null => {
			workspace.settle()
			const file = workspace.fileOf(uri)
			// The built-in texts are there to be read.
			if (!file || file.uri.startsWith(libraryScheme)) return null
			const within = range && { start: offsetOf(file, range.start), end: offsetOf(file, range.end) }
			return formatEdits(file.text, workspace.reader, within).map(({ span, text }) => ({
				range: rangeOf(file, span.start, span.end),
				newText: text,
			}))
		}
		connection.onDocumentFormatting(({ textDocument }) => editsFor(textDocument.uri))
		connection.onDocumentRangeFormatting(({ textDocument, range }) => editsFor(textDocument.uri, range))
	},
}
