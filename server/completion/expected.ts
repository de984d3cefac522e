import type { IToken } from 'chevrotain'
import {
	AstUtils,
	createCompletionParser,
	GrammarAST,
	GrammarUtils,
	type LangiumCompletionParser,
	type LangiumCoreServices,
} from 'langium'
import { findFirstFeatures, findNextFeatures, type NextFeature } from 'langium/lsp'

/** What may stand next: a word of the language, or a name in one place of one rule of the grammar. */
export type Expected =
	| { readonly kind: 'word'; readonly word: string; readonly rule: string }
	| { readonly kind: 'name'; readonly rule: string; readonly property: string }

/** Tokens of the grammar that begin with a word of two. */
const wordsOfTokens: Readonly<Record<string, string>> = { AT_MOST: 'at most', EACH_SIDE: 'each side' }

/** A text whose last line goes on with the first word of such a token, with the second one; `undefined` of any other. */
export function withSecondWord(text: string): string | undefined {
	const first = /\S[ \t]+(at|each)[ \t]+$/.exec(text)?.[1]
	const words = Object.values(wordsOfTokens).find(one => first !== undefined && one.startsWith(`${first} `))
	return words && `${text.trimEnd()}${words.slice(first!.length)}`
}

const parsers = new WeakMap<LangiumCoreServices, LangiumCompletionParser>()

/** What the grammar expects after a text that begins a definition; empty where the text does not read up to its end. */
export function expectedAfter(text: string, services: LangiumCoreServices): Expected[] {
	const found = new Map<string, Expected>()
	const all = [...nextFeatures(text, services).map(({ feature }) => toExpected(feature)), secondWordAfter(text, services)]
	for (const expected of all) if (expected) found.set(JSON.stringify(expected), expected)
	return [...found.values()]
}

/** Where a text ends with the first word of a token of two: the second one, if the token may stand there. */
function secondWordAfter(text: string, services: LangiumCoreServices): Expected | undefined {
	const [ending, first] = /(?:^|\s)(at|each)\s+$/.exec(text) ?? []
	if (ending === undefined) return undefined
	for (const { feature } of nextFeatures(text.slice(0, -ending.length), services)) {
		const expected = toExpected(feature)
		if (expected?.kind !== 'word' || !expected.word.startsWith(`${first} `)) continue
		return { ...expected, word: expected.word.slice(first!.length + 1) }
	}
	return undefined
}

/** Where in the grammar a text ends that begins a definition. */
export interface Ending {
	/** From the whole to the last word: each rule, with the property of it that is being read. */
	readonly path: readonly { readonly rule: string; readonly property: string | undefined }[]
	/** Rules that may go on right after it. */
	readonly next: readonly string[]
}

/** `undefined` where the text does not read up to its end. */
export function endingOf(text: string, services: LangiumCoreServices): Ending | undefined {
	const { tokens, tokenIndex, elementStack } = parserFor(services).parse(text)
	if (tokenIndex === 0 || tokenIndex < tokens.length) return undefined
	return {
		path: elementStack.map(element => ({
			rule: ruleOf(element),
			property: AstUtils.getContainerOfType(element, GrammarAST.isAssignment)?.feature,
		})),
		next: [...new Set(findNextFeatures([elementStack.map(feature => ({ feature }))], []).map(({ feature }) => ruleOf(feature)))],
	}
}

/** The words that a rule of the grammar may begin with; empty for one that begins with a number or a name. */
export function firstWords(rule: string, services: LangiumCoreServices): string[] {
	const found = services.Grammar.rules.find(one => one.name === rule)
	if (!GrammarAST.isParserRule(found)) return []
	return findFirstFeatures(found.definition).flatMap(stack => {
		const expected = toExpected(stack[stack.length - 1]!.feature)
		return expected?.kind === 'word' ? [expected.word] : []
	})
}

/** The rules that a rule of the grammar is a choice of, those that are choices themselves replaced by theirs. */
export function choicesOf(rule: string, services: LangiumCoreServices): string[] {
	const found = services.Grammar.rules.find(one => one.name === rule)
	if (!GrammarAST.isParserRule(found) || !GrammarAST.isAlternatives(found.definition)) return [rule]
	const { elements } = found.definition
	const names = elements.map(element => (GrammarAST.isRuleCall(element) ? element.rule.$refText : undefined))
	return names.every(name => name !== undefined) ? names.flatMap(name => choicesOf(name, services)) : [rule]
}

function ruleOf(element: GrammarAST.AbstractElement): string {
	return AstUtils.getContainerOfType(element, GrammarAST.isParserRule)?.name ?? ''
}

function parserFor(services: LangiumCoreServices): LangiumCompletionParser {
	let parser = parsers.get(services)
	if (!parser) {
		parser = createCompletionParser(services)
		parsers.set(services, parser)
	}
	return parser
}

function nextFeatures(text: string, services: LangiumCoreServices): NextFeature[] {
	const { tokens, tokenIndex, elementStack } = parserFor(services).parse(text)
	if (tokenIndex > 0) {
		const stack = elementStack.map(feature => ({ feature }))
		const next = findNextFeatures([stack], tokens.slice(tokenIndex))
		return tokenIndex < tokens.length ? next : [...next, ...otherwiseNext(text, tokens.at(-1)!, services)]
	}
	const entry = GrammarUtils.getEntryRule(services.Grammar)
	const first = entry && 'definition' in entry ? findFirstFeatures(entry.definition).map(stack => stack[stack.length - 1]!) : []
	return tokens.length === 0
		? first
		: findNextFeatures(
				first.map(feature => [feature]),
				tokens.slice(1),
			)
}

/** What follows the last word where it is one of the language that the parser has taken for another, or for a name: `avoid pattern`, a swap `in week 2`. */
function otherwiseNext(text: string, last: IToken, services: LangiumCoreServices): NextFeature[] {
	const { tokens, tokenIndex, elementStack } = parserFor(services).parse(text.slice(0, last.startOffset))
	if (tokenIndex === 0 || tokenIndex < tokens.length) return []
	const here = findNextFeatures([elementStack.map(feature => ({ feature }))], [])
	const words = here.filter(({ feature }) => GrammarAST.isKeyword(feature) && feature.value === last.image)
	return findNextFeatures(
		words.map(word => [word]),
		[],
	)
}

function toExpected(feature: GrammarAST.AbstractElement): Expected | undefined {
	const rule = ruleOf(feature)
	if (GrammarAST.isKeyword(feature)) return /^[a-z]/.test(feature.value) ? { kind: 'word', word: feature.value, rule } : undefined
	const property = AstUtils.getContainerOfType(feature, GrammarAST.isAssignment)?.feature
	if (GrammarAST.isCrossReference(feature)) return property ? { kind: 'name', rule, property } : undefined
	if (!GrammarAST.isRuleCall(feature)) return undefined
	const called = feature.rule.ref?.name ?? ''
	const words = wordsOfTokens[called]
	if (words) return { kind: 'word', word: words, rule }
	return called === 'ID' && property ? { kind: 'name', rule, property } : undefined
}
