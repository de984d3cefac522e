import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { npm } from './npm.mjs'
import { root } from './root.mjs'

const folder = path.join(root, 'tests/end-to-end/host')

/**
 * Installs the editor that the end-to-end tests drive: code-server, a whole VS Code workbench as an npm package. Its own install script
 * compiles for minutes what the tests do not need, so it is left out, and its inner dependencies are installed here. They cannot be had
 * with `npm ci` (its shrinkwrap is not complete), and the optional ones are needed: one of them watches files.
 */
export function installHost() {
	const version = JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8')).dependencies['code-server']
	const done = path.join(folder, 'node_modules/.installed')
	if (existsSync(done) && readFileSync(done, 'utf8') === version) return
	console.log('Installing the editor for the end-to-end tests (code-server) …')
	npm(folder, 'ci', '--ignore-scripts')
	const inner = path.join(folder, 'node_modules/code-server/lib/vscode')
	npm(inner, 'install', '--omit=dev', '--ignore-scripts')
	writeFileSync(done, version)
}
