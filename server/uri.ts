import { URI } from 'langium'

/** One spelling of a URI: editors and Node escape different characters. */
export function normalUri(uri: string): string {
	return URI.parse(uri).toString()
}

/** Is the file in the folder or below it? */
export function isBelow(uri: string, folder: string): boolean {
	const base = folder.endsWith('/') ? folder : `${folder}/`
	return uri.startsWith(base)
}

/** The folder that a file lies in. */
export function parentOf(uri: string): string {
	return uri.slice(0, uri.lastIndexOf('/'))
}

/** The path of a file from a folder, as people read it. */
export function relativePath(uri: string, folder: string): string {
	const below = isBelow(uri, folder)
		? uri.slice(folder.length + (folder.endsWith('/') ? 0 : 1))
		: uri.slice(uri.lastIndexOf('/') + 1)
	return decodeURIComponent(below)
}
