// npm run build [-- --production]: everything that runs, each as one file in dist/. `--production` is what ships: small, without maps.
import { chmod, rm, writeFile } from 'node:fs/promises'
import path from 'node:path'
import { generate } from './needs/grammar.mjs'
import { licencesOf } from './needs/licences.mjs'
import { root } from './needs/root.mjs'
import { script } from './script.mjs'

const dist = path.join(root, 'dist')

// The parser cannot run on an older Node, and says so in no words that help.
const startOfProgram = `#!/usr/bin/env node
if (parseInt(process.versions.node, 10) < 22) {
	console.error('Barstave needs Node 22 or later; this is Node ' + process.versions.node + '.')
	process.exit(2)
}`

await script(async words => {
	const { build } = await import('esbuild')
	await generate()
	await rm(dist, { recursive: true, force: true })

	const production = words.includes('--production')
	const common = {
		absWorkingDir: root,
		bundle: true,
		minify: production,
		sourcemap: !production,
		metafile: true,
		logLevel: 'warning',
		// The built-in library and the rules' pages are part of the program; nothing reads files for them at run time.
		loader: { '.stave': 'text', '.md': 'text', '.woff': 'binary' },
		define: {
			'process.env.NODE_ENV': production ? '"production"' : '"development"',
			// PDFKit works out where a colour profile lies that we do not use; a file's address would be this machine's.
			'import.meta.url': '"file:///"',
		},
	}
	const node = { ...common, platform: 'node', format: 'cjs', target: 'node22' }
	const browser = { ...common, platform: 'browser', format: 'iife', target: 'es2023' }
	try {
		const results = await Promise.all([
			build({ ...node, entryPoints: ['client/editor/main-node.ts'], outfile: 'dist/extension.cjs', external: ['vscode'] }),
			build({ ...node, entryPoints: ['client/editor/session-node.ts'], outfile: 'dist/session.cjs', external: ['vscode'] }),
			build({ ...node, entryPoints: ['server/main-node.ts'], outfile: 'dist/server.cjs' }),
			build({
				...browser,
				entryPoints: ['client/editor/main-browser.ts'],
				outfile: 'dist/extension-browser.cjs',
				external: ['vscode'],
				format: 'cjs',
			}),
			build({ ...browser, entryPoints: ['server/main-browser.ts'], outfile: 'dist/server-browser.js' }),
			build({ ...node, entryPoints: ['client/terminal/main.ts'], outfile: 'dist/barstave.cjs', banner: { js: startOfProgram } }),
			build({ ...browser, entryPoints: ['client/preview/main.tsx'], outfile: 'dist/preview.js' }),
			build({
				...browser,
				entryPoints: ['client/outputs/main.ts'],
				outfile: 'dist/outputs.js',
				// A worker runs it in a browser; where there is Node, whoever runs it takes this.
				globalName: 'module.exports',
			}),
		])
		await writeFile(path.join(dist, 'third-party-licences.txt'), licencesOf(results.map(({ metafile }) => metafile)))
	} catch (problem) {
		// esbuild has printed what is wrong, with the place.
		if (problem.errors) return 1
		throw problem
	}
	await chmod(path.join(dist, 'barstave.cjs'), 0o755)
})
