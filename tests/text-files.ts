import { readFileSync } from 'node:fs'
import type { Plugin } from 'vitest/config'

/** Imports `.stave` and `.md` files as text, as the build does. */
export const textFiles: Plugin = {
	name: 'text-files',
	enforce: 'pre',
	load(id) {
		return /\.(stave|md)$/.test(id) ? `export default ${JSON.stringify(readFileSync(id, 'utf8'))}` : undefined
	},
}
