import { spawn } from 'node:child_process'
import path from 'node:path'
import { root } from './root.mjs'

/** The variables for a child: tools and `node` are those of the node modules, or of the process that we run in. */
function toolEnvironment() {
	const PATH = [path.join(root, 'node_modules/.bin'), path.dirname(process.execPath), process.env.PATH].join(path.delimiter)
	return { ...process.env, PATH }
}

/** Runs a tool from the node modules in the root folder, its output to ours; gives its exit status. */
export function tool(name, ...args) {
	return new Promise((resolve, reject) => {
		const child = spawn(name, args, { cwd: root, env: toolEnvironment(), stdio: 'inherit', shell: process.platform === 'win32' })
		child.once('error', reject)
		child.once('exit', (status, signal) => resolve(signal ? 1 : status))
	})
}
