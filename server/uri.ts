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
