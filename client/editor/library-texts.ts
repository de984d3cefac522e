import { type Disposable, workspace } from 'vscode'
import type { BaseLanguageClient } from 'vscode-languageclient'

/**
 * Opens the files of the built-in library, such as the one with all movements, as texts that can be read and not changed. They are part of
 * the server, which is asked for them.
 */
export function registerLibraryTexts(client: BaseLanguageClient): Disposable {
	return workspace.registerTextDocumentContentProvider('barstave-library', {
		provideTextDocumentContent: (uri, token) =>
			client.sendRequest<string>('barstave/libraryText', { uri: client.code2ProtocolConverter.asUri(uri) }, token),
	})
}
