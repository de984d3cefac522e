import { type FoldingRange, FoldingRangeKind } from 'vscode-languageserver'
import type { Definition } from '../../language/model/definitions.ts'
import type { Span } from '../../language/model/text.ts'
import type { Feature } from '../feature.ts'
import { rangeOf } from '../positions.ts'
import { membersBesideRuns } from './document-symbols.ts'

/** Folds definitions, sessions, items, runs, lines for one member of a team, days of a log and comments of several lines. */
export const folding: Feature = {
	capabilities: { foldingRangeProvider: true },
	register({ connection, workspace }) {
		connection.onFoldingRanges(({ textDocument }) => {
			workspace.settle()
			const file = workspace.fileOf(textDocument.uri)
			if (!file) return null
			const lines = (start: number, end: number, kind?: FoldingRangeKind): FoldingRange[] => {
				const range = rangeOf(file, start, end)
				const fold = { startLine: range.start.line, endLine: range.end.line, ...(kind ? { kind } : {}) }
				return range.end.line > range.start.line ? [fold] : []
			}
			const parts = file.parts.flatMap(({ definition, start }) =>
				definition ? spansOf(definition).flatMap(span => lines(start + span.start, start + span.end)) : [],
			)
			const comments = workspace.reader
				.tokenize(file.text)
				.hidden.flatMap(token => lines(token.startOffset, (token.endOffset ?? token.startOffset) + 1, FoldingRangeKind.Comment))
			return [...parts, ...comments]
		})
	},
}

function spansOf(definition: Definition): Span[] {
	const own = definition.span
	if (definition.kind === 'block')
		return [own, ...definition.sessions.flatMap(session => [session.span, ...session.items.map(item => item.span)])]
	if (definition.kind === 'plan') {
		const runs = definition.runs.flatMap(run => [run.span, ...run.members.map(member => member.span)])
		return [own, ...runs, ...membersBesideRuns(definition).map(member => member.span)]
	}
	if (definition.kind === 'log') return [own, ...definition.entries.map(entry => entry.span)]
	return [own]
}
