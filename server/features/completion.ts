import { type CompletionItem, CompletionItemKind, InsertTextFormat, MarkupKind } from 'vscode-languageserver'
import { type DefinitionKind, definitionKinds } from '../../language/model/definitions.ts'
import { exampleLines } from '../../language/parser/examples.ts'
import { describe } from '../../language/reports/description.ts'
import type { TextFile, TextReader } from '../../language/workspace/text-file.ts'
import { type Expected, endingOf, expectedAfter } from '../completion/expected.ts'
import { isLike, ranked } from '../completion/likeness.ts'
import { linesOutOfPlace } from '../completion/lines.ts'
import { type Candidate, candidates } from '../completion/names.ts'
import type { Place } from '../completion/place.ts'
import { isInTextOrComment } from '../completion/places.ts'
import { definitionSnippets, lineSnippets, type Snippet } from '../completion/snippets.ts'
import { unwrittenWeeks } from '../completion/weeks.ts'
import type { Feature, ServerContext } from '../feature.ts'
import { asMarkdown } from '../markdown.ts'
import { offsetOf, rangeOf } from '../positions.ts'

/** A list longer than this nobody reads; typing a letter more shortens it. */
const mostItems = 100

/** What an item is about, for the editor to hand back when it wants to show more. */
interface About {
	readonly uri: string
	readonly kind: DefinitionKind
	readonly name: string
}

/** Offers the words and names that may stand at the cursor, what fits best first. */
export const completion: Feature = {
	capabilities: { completionProvider: { triggerCharacters: [' '], resolveProvider: true } },
	register(context) {
		const { connection, workspace } = context
		connection.onCompletion(({ textDocument, position }) => {
			workspace.settle()
			const file = workspace.fileOf(textDocument.uri)
			if (!file) return null
			const items = complete(file, offsetOf(file, position), context)
			return { isIncomplete: items.length > mostItems, items: items.slice(0, mostItems) }
		})
		connection.onCompletionResolve(item => {
			const about = item.data as About | undefined
			const folder = about && workspace.folderOf(about.uri)
			const definition = folder?.find(about!.kind, about!.name)
			if (!folder || !definition) return item
			return { ...item, documentation: { kind: MarkupKind.Markdown, value: asMarkdown(describe(definition, folder)) } }
		})
	},
}

function complete(file: TextFile, offset: number, context: ServerContext): CompletionItem[] {
	const { workspace } = context
	if (isInTextOrComment(workspace, file, offset)) return []
	const begun = /[a-z0-9-]*$/i.exec(file.text.slice(0, offset))![0]
	const wordStart = offset - begun.length
	const part = file.parts.findLast(one => one.start < wordStart)
	const before = file.text.slice(part?.start ?? 0, wordStart)
	const place = placeOf(file, part, offset, before, context)
	const range = rangeOf(file, wordStart, offset)
	const expected = expectedAfter(before, workspace.reader.grammarServices)
	const misfits = misfitsAmong(expected, place, workspace.reader)
	const items = expected.flatMap((one, index) =>
		one.kind === 'word' ? wordItems(one, index, misfits.get(one), place, context) : nameItems(one, place),
	)
	return ranked([...items, ...weekItems(place, context)].filter(item => isLike(item.filterText ?? item.label, begun))).map(
		item => ({
			...item,
			textEdit: { range, newText: item.insertText ?? item.label },
		}),
	)
}

function placeOf(
	file: TextFile,
	part: TextFile['parts'][number] | undefined,
	offset: number,
	before: string,
	{ workspace, chosen }: ServerContext,
): Place {
	const folder = workspace.folderOf(file.uri)
	const current = part?.definition
	const plan =
		current?.kind === 'block'
			? chosen.planFor(current, file.uri, folder)
			: current?.kind === 'plan'
				? chosen.amongMembers(folder.plansIn(current), file.uri)
				: undefined
	return { uri: file.uri, folder, current, offset: offset - (part?.start ?? 0), before, plan }
}

/** Names: what is near first, the workspace's own before built-in ones, what does not fit last with the reason. */
function nameItems({ rule, property }: Expected & { kind: 'name' }, place: Place): CompletionItem[] {
	return candidates(rule, property, place).map(one => {
		const { name, detail, definition, misfit } = one
		return {
			label: name,
			labelDetails: { description: misfit ?? detail },
			...(misfit ? { detail: `${detail}: ${misfit}` } : {}),
			kind: definition ? CompletionItemKind.Reference : CompletionItemKind.EnumMember,
			sortText: `${rankOf(one, place)}${name}`,
			...(definition ? { data: { uri: place.uri, kind: definition.kind, name } satisfies About } : {}),
		}
	})
}

function rankOf({ definition, isNear, misfit }: Candidate, { folder }: Place): number {
	if (misfit) return 6
	if (isNear) return 0
	return definition && folder.isBuiltIn(definition) ? 2 : 1
}

/** Why words that the grammar allows begin no line here. */
function misfitsAmong(
	expected: readonly Expected[],
	{ before, current }: Place,
	reader: TextReader,
): ReadonlyMap<Expected, string> {
	const words = expected.filter(one => one.kind === 'word')
	return current ? linesOutOfPlace(before, headerRule(current.kind), words, reader) : new Map()
}

/** A word of the language; where it begins something whole, that too. One that does not fit comes last, with the reason. */
function wordItems(
	{ word, rule }: Expected & { kind: 'word' },
	index: number,
	misfit: string | undefined,
	place: Place,
	{ client }: ServerContext,
): CompletionItem[] {
	const line = exampleLines[rule]
	const order = String(index).padStart(3, '0')
	const item: CompletionItem = {
		label: word,
		kind: CompletionItemKind.Keyword,
		sortText: `${misfit ? 6 : 3}${order}`,
		...(line ? { labelDetails: { description: misfit ?? line.what }, detail: line.example } : {}),
	}
	const takesSnippets = client.textDocument?.completion?.completionItem?.snippetSupport ?? false
	const snippet = takesSnippets ? snippetFor(word, rule, place) : undefined
	return snippet ? [item, snippetItem(snippet, word, order)] : [item]
}

function snippetFor(word: string, rule: string, { current }: Place): Snippet | undefined {
	const kind = definitionKinds.find(one => one === word)
	if (kind && rule === headerRule(kind)) return definitionSnippets[kind]
	// `session` and the roles are words of a plan and a log too.
	return current?.kind === 'block' && (rule === 'Session' || rule === 'Role') ? lineSnippets[word] : undefined
}

function headerRule(kind: DefinitionKind): string {
	return kind === 'rules' ? 'RuleLevels' : kind.slice(0, 1).toUpperCase() + kind.slice(1)
}

function snippetItem({ label, detail, text }: Snippet, word: string, order: string): CompletionItem {
	return {
		label,
		filterText: word,
		kind: CompletionItemKind.Snippet,
		labelDetails: { description: detail },
		insertTextFormat: InsertTextFormat.Snippet,
		insertText: text,
		sortText: `3${order}b`,
	}
}

function weekItems(place: Place, { workspace }: ServerContext): CompletionItem[] {
	const at = endingOf(place.before, workspace.reader.grammarServices)
	// Right after `week`, or the comma after another one.
	if (at?.path.at(-1)?.rule !== 'WeekLine' || !at.next.includes('Range')) return []
	return unwrittenWeeks(place).map(({ text, detail }, index) => ({
		label: text,
		labelDetails: { description: detail },
		kind: CompletionItemKind.Value,
		sortText: `0${String(index).padStart(3, '0')}`,
		insertText: `${text}: `,
	}))
}
