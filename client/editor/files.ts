import { Disposable, FileType, Uri, workspace } from 'vscode'
import type { BaseLanguageClient } from 'vscode-languageclient'

/** Gives the server the files that it cannot read by itself: those of folders that lie on no disk. */
export function registerFiles(client: BaseLanguageClient): Disposable {
	const uriOf = (uri: string) => client.protocol2CodeConverter.asUri(uri)
	return Disposable.from(
		client.onRequest('barstave/listFiles', async ({ uri }: { uri: string }): Promise<string[]> => {
			const found = await listBelow(uriOf(uri))
			return found.map(file => client.code2ProtocolConverter.asUri(file))
		}),
		client.onRequest('barstave/readFile', async ({ uri }: { uri: string }): Promise<string | null> => {
			try {
				return new TextDecoder().decode(await workspace.fs.readFile(uriOf(uri)))
			} catch {
				// Gone, or not ours to read.
				return null
			}
		}),
	)
}

/** All `.stave` files below a folder; hidden folders and `node_modules` are left out, and links to folders are not followed. */
async function listBelow(folder: Uri): Promise<Uri[]> {
	const entries = await Promise.resolve(workspace.fs.readDirectory(folder)).catch(() => [])
	const found = await Promise.all(
		entries.map(async ([name, type]) => {
			if (name.startsWith('.') || name === 'node_modules') return []
			const where = Uri.joinPath(folder, name)
			if (type === FileType.Directory) return listBelow(where)
			return type & FileType.File && name.endsWith('.stave') ? [where] : []
		}),
	)
	return found.flat()
}
