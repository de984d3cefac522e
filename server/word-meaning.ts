import { AstUtils, CstUtils, GrammarAST, type LeafCstNode } from 'langium'
import type { DefinitionKind } from '../language/model/definitions.ts'
import type { Span } from '../language/model/text.ts'
import { exampleLines } from '../language/parser/examples.ts'
import { type Entry, entryAbout, type Way } from '../language/reference/index.ts'
import type { Found } from './lookup.ts'
import { escaped } from './markdown.ts'
import { entryText } from './reference-pages.ts'
import { treesOf } from './syntax.ts'
import type { Workspace } from './workspace.ts'

/** What a word, a number or a sign says in the line that it stands in. */
export interface WordMeaning {
	/** The word, counted from the beginning of its definition. */
	readonly span: Span
	/** Markdown. */
	readonly text: string
	/** Is it a word of the language, and not a name, a number, or the unit or sign of one? */
	readonly isKeyword: boolean
}

/** Forms that say something by what they are part of: that has more to say than how numbers are written. */
const smallParts = new Set(['Mass', 'Time', 'Range', 'DateBound'])

/** They belong to the number before them. */
const units = new Set(['kg', 'lb', 'min'])

/** What the reference says of the word at a place; `undefined` in texts, in comments, and where nothing stands. */
export function wordMeaningAt({ definition, file, start, offset }: Found, workspace: Workspace): WordMeaning | undefined {
	const part = file.parts.find(one => one.start === start)
	const parsed = part && treesOf(part, workspace.reader).findLast(one => one.start <= offset)
	const root = parsed?.tree?.$cstNode
	const leaf = root && CstUtils.findLeafNodeAtOffset(root, offset - parsed.start)
	if (!leaf || leaf.hidden || leaf.tokenType.name.endsWith('STRING')) return undefined
	const entry = entryOf(leaf, definition.kind)
	const line = entry && lineOf(leaf, entry)
	if (!line) return undefined
	const around = lazily(() => traitsOf(textAbout(entry, leaf, definition.kind)))
	const ways = waysLike(entry, leaf, around)
	const what = escaped(line.what.slice(0, 1).toUpperCase() + line.what.slice(1))
	const heading = ways.length > 0 ? `**${what}**` : `${what}, as in: \`${exampleLike(line.example, entry, leaf, around)}\``
	return {
		span: { start: parsed.start + leaf.offset, end: parsed.start + leaf.end },
		text: `${heading}\n\n${entryText(entry, ways)}`,
		isKeyword: isKeyword(leaf) && /^[a-z]{2}/i.test(leaf.text) && !units.has(leaf.text.toLowerCase()),
	}
}

function isKeyword({ grammarSource, tokenType }: LeafCstNode): boolean {
	return GrammarAST.isKeyword(grammarSource) || tokenType.name === 'AT_MOST' || tokenType.name === 'EACH_SIDE'
}

/** How a word is written that is pasted from elsewhere, or as a sign of its own. */
function meantText({ grammarSource, tokenType, text }: LeafCstNode): string {
	if (GrammarAST.isKeyword(grammarSource)) return grammarSource.value
	return tokenType.name === 'TIMES' ? 'x' : tokenType.name === 'DASH' ? '-' : text
}

/** From the form of the grammar that a word stands in to the whole definition. */
function* formsAround(leaf: LeafCstNode): Generator<string> {
	const rule = AstUtils.getContainerOfType(leaf.grammarSource, GrammarAST.isParserRule)?.name
	if (rule !== undefined && rule !== 'InClause') yield rule
	for (let node: typeof leaf.astNode | undefined = leaf.astNode; node; node = node.$container) {
		// A log reads both with one rule, since both begin with the same word.
		yield node.$type === 'InClause' && 'reps' in node ? 'ClustersClause' : node.$type
	}
}

/** The entry about the innermost form around a word that has one. */
function entryOf(leaf: LeafCstNode, kind: DefinitionKind): Entry | undefined {
	const forms = [...formsAround(leaf)]
	// The days of a session, and of sessions that take turns, are written alike.
	const isOfTurn = forms.includes('TurnLine')
	const own = forms.filter(form => !smallParts.has(form) && !(isOfTurn && /^(Named|Numbered)Day$/.test(form)))
	return own.map(form => entryAbout(form, kind)).find(entry => entry !== undefined)
}

/** What the innermost form that an entry is about is called, and how it is written. */
function lineOf(leaf: LeafCstNode, { forms }: Entry) {
	const around = [...formsAround(leaf)].filter(form => forms.includes(form) && !smallParts.has(form))
	return [...around, ...forms].map(form => exampleLines[form]).find(line => line !== undefined)
}

/** The text around a word that the same entry is about. */
function textAbout(entry: Entry, leaf: LeafCstNode, kind: DefinitionKind): string {
	let whole = leaf.astNode
	while (whole.$container && entry.forms.includes(whole.$container.$type)) whole = whole.$container
	const leaves = whole.$cstNode ? CstUtils.flattenCst(whole.$cstNode).toArray() : []
	return leaves
		.filter(one => !one.hidden && entryOf(one, kind) === entry)
		.map(meantText)
		.join(' ')
}

/** What an entry says of the ways of writing that are most like what stands there: those that show the word, where some do. */
function waysLike({ ways }: Entry, leaf: LeafCstNode, around: () => Traits): Way[] {
	if (ways.length === 0) return []
	const word = meantText(leaf)
	const showing = ways.filter(way => way.written.some(one => shows(one, word)))
	const rated = (showing.length > 0 ? showing : ways).map(way => ({
		way,
		likeness: Math.max(...way.written.map(one => likeness(one, around()))),
	}))
	const most = Math.max(...rated.map(one => one.likeness))
	return rated.filter(one => one.likeness === most && most > -Infinity).map(one => one.way)
}

/** The usual example, or, where it does not show the word of the language, the one that is most like what stands there. */
function exampleLike(usual: string, { examples }: Entry, leaf: LeafCstNode, around: () => Traits): string {
	const word = meantText(leaf)
	if (!isKeyword(leaf) || shows(usual, word)) return usual
	const showing = examples.filter(one => shows(one, word))
	return showing.toSorted((a, b) => likeness(b, around()) - likeness(a, around()))[0] ?? usual
}

/** What a way of writing consists of: its words and signs, one of several or not, and which of them follow each other. */
type Traits = ReadonlySet<string>

function traitsOf(text: string): Traits {
	const all = wordsOf(text)
	const words = all.filter(word => word !== '#')
	return new Set([...words, ...pairsOf(all), ...pairsOf(words)])
}

function pairsOf(words: readonly string[]): string[] {
	return words.slice(1).map((word, index) => `${words[index]} ${word}`)
}

/** All numbers are alike. */
function wordsOf(text: string): string[] {
	const words = text.toLowerCase().match(/[a-z][a-z-]*|\d+(?:\.\d+)?|[^\s\w."]/g) ?? []
	return words.map(word => (/^\d/.test(word) ? '#' : word.replace(/(?<=[a-z]{2})s$/, '')))
}

function shows(text: string, word: string): boolean {
	const [only] = wordsOf(word)
	return only !== undefined && only !== '#' && wordsOf(text).includes(only)
}

/** What is too much says more against a likeness than what is in common says for it, what lacks says little, and words say more than pairs. */
function likeness(written: string, around: Traits): number {
	const traits = [...traitsOf(written)]
	const shared = traits.filter(one => around.has(one))
	const weight = (some: readonly string[]) => some.reduce((sum, one) => sum + (one.includes(' ') ? 1 : 5), 0)
	if (shared.length === 0) return -Infinity
	return 5 * weight(shared) - 3 * weight(traits) - (around.size - shared.length) / 10
}

function lazily<Value>(make: () => Value): () => Value {
	let made: { readonly value: Value } | undefined
	return () => {
		made ??= { value: make() }
		return made.value
	}
}
