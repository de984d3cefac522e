import { AstUtils, CstUtils, GrammarAST, type LeafCstNode } from 'langium'
import { type DefinitionKind, definitionKinds } from '../../language/model/definitions.ts'
import type { Parsed } from '../../language/parser/parse.ts'
import { type TokenModifier, type TokenType, typeOfKind } from './legend.ts'

/** A word with its colour; the place counts from the beginning of its tree's text. */
export interface ColouredWord {
	readonly start: number
	readonly end: number
	readonly type: TokenType
	readonly modifiers: readonly TokenModifier[]
}

const units = new Set(['kg', 'lb', 's', 'min', 'm', '%', 'rm'])
const signs = new Set(['TIMES', 'DASH', '+'])

/** Names that are no definition's, by the property of the grammar that holds them. */
const typeOfProperty: Readonly<Record<string, TokenType>> = {
	session: 'method',
	sessions: 'method',
	missed: 'method',
	rule: 'decorator',
}

/** What each word of a definition is: by its place in the grammar, so that a word of the language that is used as a name is a name. */
export function colouredWords({ tree }: Parsed): ColouredWord[] {
	const root = tree?.$cstNode
	if (!root) return []
	const leaves = CstUtils.flattenCst(root).toArray()
	return written(leaves)
		.map(leaf => colour(leaf))
		.filter(word => word !== undefined)
}

/** The words that stand in the text, in its order: one that is only meant has the place of a word beside it. */
function written(leaves: readonly LeafCstNode[]): LeafCstNode[] {
	const isOnlyMeant = ({ grammarSource, text }: LeafCstNode) =>
		GrammarAST.isKeyword(grammarSource) && grammarSource.value !== text.toLowerCase()
	const inOrder = leaves.toSorted((a, b) => a.offset - b.offset || Number(isOnlyMeant(a)) - Number(isOnlyMeant(b)))
	let end = 0
	return inOrder.filter(leaf => {
		const isApart = leaf.offset >= end
		if (isApart) end = leaf.end
		return isApart
	})
}

function colour(leaf: LeafCstNode): ColouredWord | undefined {
	const word = (type: TokenType, modifiers: readonly TokenModifier[] = []): ColouredWord => ({
		start: leaf.offset,
		end: leaf.end,
		type,
		modifiers,
	})
	const { name } = leaf.tokenType
	const source = leaf.grammarSource
	if (name.endsWith('STRING')) return word('string')
	if (name.endsWith('DATE')) return word('number', ['date'])
	if (name === 'TEMPO' || name.endsWith('NUMBER') || name === 'DECIMAL_COMMA') return word('number')
	if (signs.has(name)) return word('operator')
	// What it is the name of is looked up where all names are known.
	if (AstUtils.getContainerOfType(source, GrammarAST.isCrossReference)) return word('variable')
	if (GrammarAST.isKeyword(source) || name === 'AT_MOST' || name === 'EACH_SIDE') {
		if (units.has(leaf.text)) return word('keyword', ['unit'])
		if (!/^[a-z]/i.test(leaf.text)) return undefined
		return word('keyword', ruleOf(source) === 'Role' ? ['role'] : [])
	}
	const property = AstUtils.getContainerOfType(source, GrammarAST.isAssignment)?.feature ?? ''
	if (property !== 'name') return word(typeOfProperty[property] ?? 'enumMember')
	const rule = ruleOf(source)
	if (rule === 'Session') return word('method', ['declaration'])
	const kind = kindOf(rule)
	return kind && word(typeOfKind[kind], ['declaration'])
}

function ruleOf(source: GrammarAST.AbstractElement | undefined): string {
	return AstUtils.getContainerOfType(source, GrammarAST.isParserRule)?.name ?? ''
}

/** The kind that a rule of the grammar reads. */
function kindOf(rule: string): DefinitionKind | undefined {
	const name = rule === 'RuleLevels' ? 'rules' : rule.toLowerCase()
	return definitionKinds.find(kind => kind === name)
}
