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

const parsers = new WeakMap<LangiumCoreServices, LangiumCompletionParser>()

/** What the grammar expects after a text that begins a definition; empty where the text does not read up to its end. */
export function expectedAfter(text: string, services: LangiumCoreServices): Expected[] {
	const found = new Map<string, Expected>()
	for (const { feature } of nextFeatures(text, services)) {
		const expected = toExpected(feature)
		if (expected) found.set(JSON.stringify(expected), expected)
	}
	return [...found.values()]
}

function nextFeatures(text: string, services: LangiumCoreServices): NextFeature[] {
	let parser = parsers.get(services)
	if (!parser) {
		parser = createCompletionParser(services)
		parsers.set(services, parser)
	}
	const { tokens, tokenIndex, elementStack } = parser.parse(text)
	if (tokenIndex > 0) {
		const stack = elementStack.map(feature => ({ feature }))
		return findNextFeatures([stack], tokens.slice(tokenIndex))
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

function toExpected(feature: GrammarAST.AbstractElement): Expected | undefined {
	const rule = AstUtils.getContainerOfType(feature, GrammarAST.isParserRule)?.name ?? ''
	if (GrammarAST.isKeyword(feature)) return /^[a-z]/.test(feature.value) ? { kind: 'word', word: feature.value, rule } : undefined
	const property = AstUtils.getContainerOfType(feature, GrammarAST.isAssignment)?.feature
	if (GrammarAST.isCrossReference(feature)) return property ? { kind: 'name', rule, property } : undefined
	if (!GrammarAST.isRuleCall(feature)) return undefined
	const called = feature.rule.ref?.name ?? ''
	const words = wordsOfTokens[called]
	if (words) return { kind: 'word', word: words, rule }
	return called === 'ID' && property ? { kind: 'name', rule, property } : undefined
}
