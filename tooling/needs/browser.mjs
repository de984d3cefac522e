import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import path from 'node:path'
import { Hindrance } from './hindrance.mjs'

/** Where a Chromium stands, or `undefined`: what CHROMIUM names, or the first on the PATH. */
function find() {
	if (process.env.CHROMIUM) return process.env.CHROMIUM
	for (const folder of [...(process.env.PATH ?? '').split(path.delimiter), '/usr/bin'])
		for (const name of ['chromium', 'chromium-browser', 'google-chrome'])
			if (existsSync(path.join(folder, name))) return path.join(folder, name)
	return undefined
}

/**
 * Gives the path of a Chromium for the tests in a real editor, after installing Debian's where there is none. With it comes `procps`, which
 * the editor's server and the tests ask for the processes that run.
 */
export function installBrowser() {
	const present = find()
	if (present && existsSync('/bin/ps')) return present
	if (process.platform !== 'linux' || process.getuid() !== 0 || !existsSync('/usr/bin/apt-get')) {
		if (present) return present
		throw new Hindrance(
			'The tests in a real editor need Chromium. Install it (on Debian: "apt-get install chromium procps" as root), or name one with CHROMIUM=/path/to/chromium, and try again.',
		)
	}
	console.log('Installing Chromium for the tests in a real editor (apt-get) …')
	const apt = (...args) => {
		const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
		const { status, stdout, stderr } = spawnSync('apt-get', args, { env, encoding: 'utf8', maxBuffer: 1 << 26 })
		if (status !== 0)
			throw new Hindrance(`"apt-get ${args[0]}" did not succeed, so the tests in a real editor cannot run.\n${stdout}${stderr}`)
	}
	apt('update')
	apt('install', '--yes', '--no-install-recommends', 'chromium', 'procps')
	return find()
}
