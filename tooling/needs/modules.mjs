import { readFileSync } from 'node:fs'
import path from 'node:path'
import { npm } from './npm.mjs'
import { root } from './root.mjs'

/** Installs what the lock file names, unless it stands there already. */
export function installModules() {
	if (areInstalled()) return
	console.log('Installing what Barstave is built with (npm ci) …')
	npm(root, 'ci')
}

/** npm writes what it has installed into `node_modules/.package-lock.json`; packages for other platforms are left out of it. */
function areInstalled() {
	const wanted = JSON.parse(readFileSync(path.join(root, 'package-lock.json'), 'utf8')).packages
	let present
	try {
		present = JSON.parse(readFileSync(path.join(root, 'node_modules/.package-lock.json'), 'utf8')).packages
	} catch {
		return false
	}
	return Object.entries(wanted).every(
		([place, entry]) => place === '' || present[place]?.version === entry.version || (entry.optional && !present[place]),
	)
}
