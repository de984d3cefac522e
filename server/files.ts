/** How the server gets at files: each host gives its own, so that the rest runs anywhere. */
export interface Files {
	/** All `.stave` files below a folder, as URIs; hidden folders and `node_modules` are left out. Empty for a folder that cannot be read. */
	list(folder: string): Promise<string[]>
	/** The text of a file without a byte-order mark, or `undefined` where it is not there. */
	read(uri: string): Promise<string | undefined>
}

/** Takes the byte-order mark off: it belongs to the file, not to its text. */
export function withoutByteOrderMark(text: string): string {
	return text.charCodeAt(0) === 0xfeff ? text.slice(1) : text
}
