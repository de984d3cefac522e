import type { IToken } from 'chevrotain'
import {
	type CstNodeBuilder,
	createDefaultCoreModule,
	createDefaultSharedCoreModule,
	createLangiumParser,
	DefaultLexer,
	EmptyFileSystem,
	inject,
	type LangiumCoreServices,
	type LangiumParser,
	type LexerResult,
	type Module,
	type PartialLangiumCoreServices,
} from 'langium'
import { BarstaveGeneratedModule, BarstaveGeneratedSharedModule } from '../grammar/generated/module.ts'
import { BarstaveTokenBuilder, BarstaveValueConverter } from './tokens.ts'

/**
 * A lexer that can be handed tokens: a text is lexed once, split into definitions, its tokens repaired where a word is misspelt, and each
 * definition is then parsed from the tokens that it was given.
 */
export class HandedLexer extends DefaultLexer {
	private handed: LexerResult | undefined

	/** The next `tokenize` gives these tokens, whatever the text. */
	hand(result: LexerResult): void {
		this.handed = result
	}

	override tokenize(text: string): LexerResult {
		const handed = this.handed
		this.handed = undefined
		return handed ?? super.tokenize(text)
	}
}

const barstaveModule: Module<LangiumCoreServices, PartialLangiumCoreServices> = {
	parser: {
		TokenBuilder: () => new BarstaveTokenBuilder(),
		ValueConverter: () => new BarstaveValueConverter(),
		Lexer: services => new HandedLexer(services),
		LangiumParser: services => placedByTokens(createLangiumParser(services)),
	},
}

/** A leaf of the tree takes the place that its token has in the text, whatever word that is read as. */
function placedByTokens(parser: LangiumParser): LangiumParser {
	const { nodeBuilder } = parser as unknown as { nodeBuilder: CstNodeBuilder }
	const build = nodeBuilder.buildLeafNode.bind(nodeBuilder)
	nodeBuilder.buildLeafNode = (token: IToken, feature) => {
		const leaf = build(token, feature)
		Object.assign(leaf, { _length: token.endOffset! + 1 - token.startOffset })
		return leaf
	}
	return parser
}

/** Langium's services for the language, without an editor and without files. */
export function createBarstaveServices(): LangiumCoreServices {
	const shared = inject(createDefaultSharedCoreModule(EmptyFileSystem), BarstaveGeneratedSharedModule)
	const services = inject(createDefaultCoreModule({ shared }), BarstaveGeneratedModule, barstaveModule)
	shared.ServiceRegistry.register(services)
	return services
}
