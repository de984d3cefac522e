import { readFileSync } from 'node:fs'
import path from 'node:path'
import type { Plugin } from 'vitest/config'

const mark = '\0text:'
const bytesMark = '\0bytes:'

/**
 * Imports `.stave`, `.md` and `.css` files as text, as the build does. They go by a name of their own, so that nobody takes a style sheet
 * for one to be built. Fonts are taken in as bytes.
 */
export const textFiles: Plugin = {
	name: 'text-files',
	enforce: 'pre',
	resolveId(source, importer) {
		if (source.endsWith('.woff')) return `${bytesMark}${import.meta.resolve(source).slice('file://'.length)}.bytes`
		if (!importer || !/^\..*\.(stave|md|css)$/.test(source)) return undefined
		return `${mark}${path.resolve(path.dirname(importer), source)}.text`
	},
	load(id) {
		if (id.startsWith(bytesMark)) {
			const bytes = readFileSync(id.slice(bytesMark.length, -'.bytes'.length)).toString('base64')
			return `export default Uint8Array.from(atob(${JSON.stringify(bytes)}), letter => letter.charCodeAt(0))`
		}
		if (!id.startsWith(mark)) return undefined
		const file = id.slice(mark.length, -'.text'.length)
		this.addWatchFile(file)
		return `export default ${JSON.stringify(readFileSync(file, 'utf8'))}`
	},
}
