// npm run package: the extension as a file that an editor installs.
import { readFileSync, statSync } from 'node:fs'
import path from 'node:path'
import { Hindrance } from './needs/hindrance.mjs'
import { root } from './needs/root.mjs'
import { tool } from './needs/tool.mjs'
import { script } from './script.mjs'

const largest = 3_000_000

await script(async () => {
	const { name, version } = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8'))
	const file = `dist/${name}-${version}.vsix`
	// vsce first runs the script `vscode:prepublish`, the build for production. All code is bundled, so no dependency goes in.
	const words = ['package', '--no-dependencies', '--allow-missing-repository', '--no-rewrite-relative-links', '--out', file]
	if ((await tool('vsce', ...words)) !== 0) return 1
	const { size } = statSync(path.join(root, file))
	if (size > largest) throw new Hindrance(`${file} has ${size} bytes; the limit is ${largest}.`)
	console.log(`${file}: ${(size / 1e6).toFixed(2)} MB`)
})
