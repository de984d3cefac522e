import { spawnSync } from 'node:child_process'
import path from 'node:path'
import { Hindrance } from './hindrance.mjs'

/**
 * Runs npm in a folder, and not as a child of the npm script that we may be in: its variables point to another package, and its PATH leads
 * to a Node inside the very folder that npm is about to replace.
 */
export function npm(folder, ...args) {
	const env = Object.fromEntries(Object.entries(process.env).filter(([name]) => !ofNpmScript.test(name)))
	env.PATH = (env.PATH ?? '')
		.split(path.delimiter)
		.filter(entry => !/node_modules[\\/]\.bin[\\/]?$/.test(entry))
		.join(path.delimiter)
	const { status, error } = spawnSync('npm', [...args, '--no-audit', '--no-fund', '--loglevel=error'], {
		cwd: folder,
		env,
		stdio: 'inherit',
		shell: process.platform === 'win32',
	})
	if (status !== 0)
		throw new Hindrance(
			`"npm ${args[0]}" did not succeed in ${folder}${error ? `: ${error.message}` : ''}. Is the network there?`,
		)
}

const ofNpmScript = /^(npm_(config_local_prefix|package|lifecycle|command|execpath|node_execpath).*|INIT_CWD)$/
