import { gzipSync } from 'node:zlib'
import { build } from 'esbuild'
import { expect, it } from 'vitest'
import { root } from '../../support/build-program.ts'

const most = 200_000

it('comes as a page of at most 200 KB, packed, without the chart library', async () => {
	const { outputFiles } = await build({
		absWorkingDir: root,
		entryPoints: ['client/preview/main.tsx'],
		outdir: 'nowhere',
		bundle: true,
		write: false,
		minify: true,
		format: 'iife',
		target: 'es2023',
		define: { 'process.env.NODE_ENV': '"production"' },
		external: ['echarts', 'echarts/*', 'zrender', 'zrender/*'],
		logLevel: 'error',
	})
	const bytes = outputFiles.reduce((sum, { contents }) => sum + gzipSync(contents).length, 0)
	expect(bytes).toBeGreaterThan(20_000)
	expect(bytes).toBeLessThanOrEqual(most)
})
