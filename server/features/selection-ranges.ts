import { type AstNode, type CstNode, CstUtils } from 'langium'
import type { SelectionRange } from 'vscode-languageserver'
import type { Span } from '../../language/model/text.ts'
import type { TextFile } from '../../language/workspace/text-file.ts'
import type { Feature } from '../feature.ts'
import { offsetOf, rangeOf } from '../positions.ts'
import { treesOf } from '../syntax.ts'
import type { Workspace } from '../workspace.ts'

/** Widens a selection step by step: word, clause, set group, line, item, session, definition, file. */
export const selectionRanges: Feature = {
	capabilities: { selectionRangeProvider: true },
	register({ connection, workspace }) {
		connection.onSelectionRanges(({ textDocument, positions }) => {
			workspace.settle()
			const file = workspace.fileOf(textDocument.uri)
			if (!file) return null
			return positions.map(position => nested(file, spansAround(file, offsetOf(file, position), workspace)))
		})
	},
}

/** All that holds a place, each inside the one after it. */
function spansAround(file: TextFile, at: number, workspace: Workspace): Span[] {
	const whole: Span = { start: 0, end: file.text.length }
	const part = file.parts.findLast(one => one.start <= at)
	const tree = part && treesOf(part, workspace.reader).findLast(one => part.start + one.start <= at)
	const root = tree?.tree?.$cstNode
	if (!part || !tree || !root) return [whole]
	const start = part.start + tree.start
	const offset = at - start
	// At the end of a word the word is meant, not what comes after it.
	const leaf = CstUtils.findLeafNodeAtOffset(root, offset) ?? CstUtils.findLeafNodeBeforeOffset(root, offset)
	const spans: Span[] = []
	for (let node: CstNode | undefined = leaf; node; node = node.container) {
		spans.push({ start: start + node.offset, end: start + node.end })
		const line = lineOf(node.astNode)
		if (line) spans.push({ start: start + line.start, end: start + line.end })
	}
	return [...spans, whole].filter(span => span.start <= at && at <= span.end)
}

/** Of what has lines of its own below it: the line that it begins with. */
function lineOf(node: AstNode & { readonly lines?: readonly AstNode[] }): Span | undefined {
	const [first] = node.lines ?? []
	if (!node.$cstNode || !first?.$cstNode) return undefined
	const before = CstUtils.findLeafNodeBeforeOffset(node.$cstNode, first.$cstNode.offset - 1)
	return before && { start: node.$cstNode.offset, end: before.end }
}

function nested(file: TextFile, spans: readonly Span[]): SelectionRange {
	let outer: SelectionRange | undefined
	let last: Span | undefined
	for (const span of spans.toSorted((a, b) => b.end - b.start - (a.end - a.start))) {
		if (last && span.end - span.start === last.end - last.start) continue
		outer = { range: rangeOf(file, span.start, span.end), ...(outer ? { parent: outer } : {}) }
		last = span
	}
	return outer!
}
