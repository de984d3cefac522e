import { createRequire } from 'node:module'
import path from 'node:path'

/**
 * The extension's own work at its start, in a process of its own: from before its program is loaded until its `activate` has given the
 * host its hand back. The host is as thin as can be: whatever the program asks of it is there and costs nothing. What is printed is the
 * work in milliseconds, as the time of processors, so that others on the machine count little: until then, and from then until the first
 * command of a coach would be answered; and how often a file was waited for.
 */
const [program = '', extension = ''] = process.argv.slice(2)

/** Stands for every class, function and object of the host: it can be called, built upon, and asked for more of its kind. */
function anything(known: Readonly<Record<string | symbol, unknown>> = {}): unknown {
	const parts = new Map<string | symbol, unknown>(Reflect.ownKeys(known).map(key => [key, known[key as string]]))
	return new Proxy(class {}, {
		get(target, key) {
			if (key === 'prototype') return target.prototype
			// A thing with `then` would be waited for, and one with an iterator gone through.
			if (key === 'then') return undefined
			if (key === Symbol.iterator) return () => [].values()
			if (key === Symbol.toPrimitive) return () => ''
			if (!parts.has(key)) parts.set(key, anything())
			return parts.get(key)
		},
		set: (_, key, value) => Boolean(parts.set(key, value)),
		apply: () => anything(),
		construct: () => anything() as object,
	})
}

const uri = { scheme: 'file', fsPath: extension, path: extension, toString: () => `file://${extension}` }
const commands = new Map<string, () => unknown>()
const host = anything({
	Uri: anything({ joinPath: (_: unknown, ...parts: string[]) => ({ ...uri, fsPath: path.join(extension, ...parts) }) }),
	workspace: anything({ workspaceFolders: undefined }),
	commands: anything({ registerCommand: (name: string, run: () => unknown) => commands.set(name, run) }),
	version: '1.101.0',
})

const require = createRequire(program)
// An editor has loaded these long before.
for (const name of ['child_process', 'crypto', 'fs', 'net', 'os', 'path', 'url', 'util']) require(`node:${name}`)
const modules = require('node:module') as { _load(name: string, ...rest: unknown[]): unknown }
const load = modules._load
modules._load = (name, ...rest) => (name === 'vscode' ? host : load(name, ...rest))

// The program itself is read by whoever loads it; what it reads in turn counts.
const fs = require('node:fs') as Record<string, (...words: unknown[]) => unknown>
let waits = 0
const work = () => {
	const { user, system } = process.cpuUsage()
	return (user + system) / 1000
}
const start = work()
const { activate } = require(program) as { activate(context: unknown): void }
for (const name of Object.keys(fs).filter(name => name.endsWith('Sync'))) {
	const wait = fs[name]!
	fs[name] = (...words) => {
		waits++
		return wait(...words)
	}
}
activate({ extensionUri: uri, subscriptions: [], workspaceState: { get: (_: string, otherwise: unknown) => otherwise } })
const activated = work()
// What is left for later turns: the library that talks to the server.
Promise.resolve(commands.get('barstave.showLog')!()).then(() => {
	console.log(JSON.stringify({ activation: activated - start, later: work() - activated, waits }))
	process.exit(0)
})
