import path from 'node:path'
import { build } from 'esbuild'

/** The repository's folder. */
export const root = path.resolve(import.meta.dirname, '../..')

/** Builds a program for Node from the sources, one file as it ships. */
export async function buildProgram(entry: string, outfile: string, { minify = false } = {}): Promise<string> {
	await build({
		absWorkingDir: root,
		entryPoints: [entry],
		outfile,
		bundle: true,
		platform: 'node',
		format: 'cjs',
		target: 'node22',
		loader: { '.stave': 'text', '.md': 'text', '.woff': 'binary' },
		define: { 'import.meta.url': '"file:///"' },
		logLevel: 'error',
		minify,
		// The editor's own, which it gives to extensions.
		external: ['vscode'],
	})
	return outfile
}
