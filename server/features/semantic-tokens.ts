import { type Range, type SemanticTokens, SemanticTokensBuilder } from 'vscode-languageserver'
import type { Definition } from '../../language/model/definitions.ts'
import { meantBy } from '../../language/names/meant.ts'
import type { Folder } from '../../language/workspace/folder.ts'
import type { PlacedPart, TextFile } from '../../language/workspace/text-file.ts'
import type { Feature } from '../feature.ts'
import { offsetOf, rangeOf } from '../positions.ts'
import { type ColouredWord, colouredWords } from '../semantic/classify.ts'
import { type TokenType, tokenModifiers, tokenTypes, typeOfKind } from '../semantic/legend.ts'
import { treesOf } from '../syntax.ts'
import { normalUri } from '../uri.ts'
import type { Workspace } from '../workspace.ts'

/** Colours words by what they are: names by their kind, numbers, units, dates, roles; all of a text, a part of it, or what is new. */
export const semanticTokens: Feature = {
	capabilities: {
		semanticTokensProvider: {
			legend: { tokenTypes: [...tokenTypes], tokenModifiers: [...tokenModifiers] },
			full: { delta: true },
			range: true,
		},
	},
	register({ connection, workspace }) {
		const builders = new Map<string, SemanticTokensBuilder>()
		const colours = new Colours(workspace)
		const build = (builder: SemanticTokensBuilder, given: string, range?: Range) => {
			workspace.settle()
			const file = workspace.fileOf(given)
			if (file) colours.put(builder, file, workspace.folderOf(given), range)
		}
		const builderOf = (given: string): SemanticTokensBuilder => {
			for (const uri of builders.keys()) if (!workspace.isOpen(uri)) builders.delete(uri)
			const uri = normalUri(given)
			const builder = builders.get(uri) ?? new SemanticTokensBuilder()
			builders.set(uri, builder)
			return builder
		}
		connection.languages.semanticTokens.on(({ textDocument: { uri } }): SemanticTokens => {
			const builder = builderOf(uri)
			// Begins anew.
			builder.previousResult('')
			build(builder, uri)
			return builder.build()
		})
		connection.languages.semanticTokens.onDelta(({ textDocument: { uri }, previousResultId }) => {
			const builder = builderOf(uri)
			builder.previousResult(previousResultId)
			build(builder, uri)
			return builder.buildEdits()
		})
		connection.languages.semanticTokens.onRange(({ textDocument: { uri }, range }): SemanticTokens => {
			const builder = new SemanticTokensBuilder()
			build(builder, uri, range)
			return builder.build()
		})
	},
}

/** The colours of definitions, kept as long as their text is the same: after a key one of them is looked at again. */
class Colours {
	private readonly kept = new WeakMap<Definition, readonly ColouredWord[]>()

	constructor(private readonly workspace: Workspace) {}

	put(builder: SemanticTokensBuilder, file: TextFile, folder: Folder, range?: Range): void {
		const from = range ? offsetOf(file, range.start) : 0
		const to = range ? offsetOf(file, range.end) : file.text.length
		const parts = file.parts.filter(part => part.start <= to && part.start + part.text.length >= from)
		const words = [...parts.flatMap(part => this.wordsOf(part, folder)), ...this.comments(file.text)]
		const near = words.filter(word => word.end > from && word.start < to).sort((a, b) => a.start - b.start)
		for (const word of near) for (const line of linesOf(file, word)) pushTo(builder, line)
	}

	private wordsOf(part: PlacedPart, folder: Folder): ColouredWord[] {
		const { definition, start } = part
		if (!definition) return []
		let words = this.kept.get(definition)
		if (!words) {
			words = treesOf(part, this.workspace.reader).flatMap(tree =>
				colouredWords(tree).map(word => ({ ...word, start: tree.start + word.start, end: tree.start + word.end })),
			)
			this.kept.set(definition, words)
		}
		const references = new Map(definition.references.map(reference => [reference.span.start, reference]))
		return words.map(word => {
			const placed = { ...word, start: start + word.start, end: start + word.end }
			const reference = references.get(word.start)
			if (!reference) return placed
			const meant = meantBy(reference, folder)
			const modifiers = meant && folder.isBuiltIn(meant) ? (['defaultLibrary'] as const) : []
			return { ...placed, type: typeOfKind[meant?.kind ?? reference.kind], modifiers }
		})
	}

	private comments(text: string): ColouredWord[] {
		return this.workspace.reader
			.tokenize(text)
			.hidden.flatMap(token =>
				token.tokenType.name.endsWith('COMMENT')
					? [{ type: 'comment' as const, modifiers: [], start: token.startOffset, end: token.startOffset + token.image.length }]
					: [],
			)
	}
}

interface ColouredLine {
	readonly line: number
	readonly character: number
	readonly length: number
	readonly type: TokenType
	readonly modifiers: ColouredWord['modifiers']
}

/** Editors colour within a line: a comment of several is several. */
function linesOf(file: TextFile, { start, end, type, modifiers }: ColouredWord): ColouredLine[] {
	return [...file.text.slice(start, end).matchAll(/[^\r\n]+/g)].map(({ 0: text, index }) => {
		const { line, character } = rangeOf(file, start + index, start + index).start
		return { line, character, length: text.length, type, modifiers }
	})
}

function pushTo(builder: SemanticTokensBuilder, { line, character, length, type, modifiers }: ColouredLine): void {
	const bits = modifiers.reduce((sum, modifier) => sum | (1 << tokenModifiers.indexOf(modifier)), 0)
	builder.push(line, character, length, tokenTypes.indexOf(type), bits)
}
