import { DefaultWorkspaceManager, inject, type LangiumDocument, type Module, URI } from 'langium'
import {
	createDefaultModule,
	createDefaultSharedModule,
	type LangiumServices,
	type LangiumSharedServices,
	type PartialLangiumServices,
	type PartialLangiumSharedServices,
	startLanguageServer,
} from 'langium/lsp'
import { NodeFileSystem } from 'langium/node'
import type { WorkspaceFolder } from 'vscode-languageserver'
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node'
import { BarstaveGeneratedModule, BarstaveGeneratedSharedModule } from '../../language/grammar/generated/module.ts'
import { libraryFiles } from '../../language/library/index.ts'
import { BarstaveTokenBuilder, BarstaveValueConverter } from '../../language/parser/tokens.ts'

/**
 * The reference of the bench: a Langium server as it comes, on the same grammar, texts and library. It has no rules: all that it reports is
 * what does not read and names that nobody defines.
 */
const connection = createConnection(ProposedFeatures.all)

const module: Module<LangiumServices, PartialLangiumServices> = {
	parser: { TokenBuilder: () => new BarstaveTokenBuilder(), ValueConverter: () => new BarstaveValueConverter() },
}

/** The library is there from the start, as ours is. */
class WithLibrary extends DefaultWorkspaceManager {
	protected override async loadAdditionalDocuments(
		_: WorkspaceFolder[],
		collect: (document: LangiumDocument) => void,
	): Promise<void> {
		for (const { path, text } of libraryFiles)
			collect(this.langiumDocuments.createDocument(URI.parse(`builtin:///${path}`), text))
	}
}

const ownModule: Module<LangiumSharedServices, PartialLangiumSharedServices> = {
	workspace: { WorkspaceManager: services => new WithLibrary(services) },
}
const shared = inject(createDefaultSharedModule({ connection, ...NodeFileSystem }), BarstaveGeneratedSharedModule, ownModule)
const services = inject(createDefaultModule({ shared }), BarstaveGeneratedModule, module)
shared.ServiceRegistry.register(services)
startLanguageServer(shared)
