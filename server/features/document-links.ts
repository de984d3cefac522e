import type { DocumentLink } from 'vscode-languageserver'
import type { Name, QuotedText } from '../../language/model/text.ts'
import { ruleOf } from '../../language/rules/registry.ts'
import type { TextFile } from '../../language/workspace/text-file.ts'
import type { Feature } from '../feature.ts'
import { rangeOf } from '../positions.ts'
import { pageUri } from '../rule-pages.ts'

/** An address as it stands in a running text, without the full stop or the bracket that ends the sentence. */
const address = /https?:\/\/[^\s"“”<>\\]*[^\s"“”<>\\.,;:!?)\]]/g

/** Leads from the name of a rule to its page, and from an address in a source or a note to what it names. */
export const documentLinks: Feature = {
	capabilities: { documentLinkProvider: {} },
	register({ connection, workspace }) {
		connection.onDocumentLinks(({ textDocument }) => {
			workspace.settle()
			const file = workspace.fileOf(textDocument.uri)
			return file ? file.parts.flatMap(part => linksOf(file, part)) : null
		})
	},
}

function linksOf(file: TextFile, { definition, start }: TextFile['parts'][number]): DocumentLink[] {
	if (!definition) return []
	const rules = [
		...definition.allows.map(allow => allow.rule),
		...(definition.kind === 'rules' ? definition.levels.map(line => line.rule) : []),
	]
	const texts = [definition.source, ...definition.notes, ...notesInside(definition)].filter(text => text !== undefined)
	return [...rules.flatMap(rule => pageLink(file, start, rule)), ...texts.flatMap(text => addressLinks(file, start, text))]
}

function pageLink(file: TextFile, start: number, { text, span }: Name): DocumentLink[] {
	if (!ruleOf(text)) return []
	return [
		{
			range: rangeOf(file, start + span.start, start + span.end),
			target: pageUri(text),
			tooltip: `What ${text} checks, and why`,
		},
	]
}

/** Found in the text as it is written, where escapes take their own room. */
function addressLinks(file: TextFile, start: number, { span }: QuotedText): DocumentLink[] {
	const from = start + span.start
	return [...file.text.slice(from, start + span.end).matchAll(address)].map(({ 0: target, index }) => ({
		range: rangeOf(file, from + index, from + index + target.length),
		target,
	}))
}

function notesInside(definition: NonNullable<TextFile['parts'][number]['definition']>): readonly QuotedText[] {
	switch (definition.kind) {
		case 'block':
			return definition.sessions.flatMap(session => [...session.notes, ...session.items.flatMap(item => item.notes)])
		case 'plan':
			return definition.runs.flatMap(run => run.notes)
		case 'log':
			return definition.entries.flatMap(entry => entry.notes)
		default:
			return []
	}
}
