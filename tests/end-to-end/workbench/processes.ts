import { execFile } from 'node:child_process'
import { promisify } from 'node:util'

/** The process ids of the language servers that run below a process. */
export async function languageServersBelow(ancestor: number): Promise<number[]> {
	const { stdout } = await promisify(execFile)('ps', ['-eo', 'pid=,ppid=,args='], { maxBuffer: 1 << 24 })
	const processes = stdout
		.trim()
		.split('\n')
		.map(line => /^\s*(\d+)\s+(\d+)\s+(.*)$/.exec(line)!)
		.map(([, pid, parent, words]) => ({ pid: Number(pid), parent: Number(parent), words: words! }))
	const below = new Set([ancestor])
	// A child may be listed before its parent, so this goes on until nothing is added.
	for (let before = 0; before !== below.size; ) {
		before = below.size
		for (const { pid, parent } of processes) if (below.has(parent)) below.add(pid)
	}
	return processes.filter(({ pid, words }) => below.has(pid) && /[\\/]dist[\\/]server\.cjs\b/.test(words)).map(({ pid }) => pid)
}

export function isAlive(pid: number): boolean {
	try {
		process.kill(pid, 0)
		return true
	} catch {
		return false
	}
}
