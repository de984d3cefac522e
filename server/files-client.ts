import type { Connection } from 'vscode-languageserver'
import { type Files, withoutByteOrderMark } from './files.ts'

/**
 * Files that only the editor can read, such as those of a repository on the web or of a folder in the browser: it is asked for them. An
 * editor that does not know how has none.
 */
export function clientFiles(connection: Connection): Files {
	const ask = <T>(method: string, uri: string, otherwise: T): Promise<T> =>
		connection.sendRequest<T>(method, { uri }).catch(() => otherwise)
	return {
		list: folder => ask('barstave/listFiles', folder, []),
		async read(uri) {
			const text = await ask<string | null>('barstave/readFile', uri, null)
			return text === null ? undefined : withoutByteOrderMark(text)
		},
	}
}

/** Files of two kinds: those that the first knows by their scheme, and all others. */
export function filesByScheme(scheme: string, ofScheme: Files, others: Files): Files {
	const filesOf = (uri: string) => (uri.startsWith(`${scheme}:`) ? ofScheme : others)
	return {
		list: folder => filesOf(folder).list(folder),
		read: uri => filesOf(uri).read(uri),
	}
}
