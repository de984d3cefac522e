import { readFile } from 'node:fs/promises'
import path from 'node:path'
import { build } from 'esbuild'
import { expect, test } from 'vitest'

/** What became of one case inside the editor. */
export interface Result {
	readonly name: string
	/** What went wrong, with its stack. */
	readonly fault: string | undefined
}

/** Makes the suite one file that an extension host can load, and gives its path. */
export async function bundleSuite(folder: string): Promise<string> {
	const outfile = path.join(folder, 'suite.cjs')
	await build({
		entryPoints: [path.join(import.meta.dirname, 'suite.ts')],
		outfile,
		bundle: true,
		platform: 'node',
		format: 'cjs',
		target: 'node22',
		external: ['vscode'],
		sourcemap: 'inline',
	})
	return outfile
}

/** Each case inside the editor becomes a test of ours. */
export async function reportAsTests(file: string): Promise<void> {
	const results: Result[] = JSON.parse(await readFile(file, 'utf8'))
	for (const { name, fault } of results)
		test(name, () => {
			expect.soft(fault).toBeUndefined()
		})
	test('the suite has cases', () => {
		expect(results.length).toBeGreaterThan(0)
	})
}
