import { execFile, spawn } from 'node:child_process'
import { mkdir, writeFile } from 'node:fs/promises'
import path from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { promisify } from 'node:util'
import { freePort } from './free-port.ts'

/** code-server is a whole VS Code workbench served to a browser; npm test installs it into tests/end-to-end/host. */
const program = path.resolve(import.meta.dirname, '../host/node_modules/code-server/out/node/entry.js')

/** Settings of the person who sits at the workbench: nothing that asks the network, moves by itself or covers what the tests look at. */
const settings = {
	'chat.disableAIFeatures': true,
	'editor.hover.delay': 100,
	'editor.minimap.enabled': false,
	'extensions.autoCheckUpdates': false,
	'extensions.autoUpdate': false,
	'extensions.ignoreRecommendations': true,
	'files.autoSave': 'off',
	'files.hotExit': 'off',
	'git.enabled': false,
	'security.workspace.trust.enabled': false,
	'telemetry.telemetryLevel': 'off',
	'update.mode': 'none',
	'window.confirmBeforeClose': 'never',
	'workbench.enableExperiments': false,
	'workbench.secondarySideBar.defaultVisibility': 'hidden',
	'workbench.startupEditor': 'none',
	'workbench.tips.enabled': false,
}

/** Folders of one person's editor, apart from those of whoever runs the tests. */
export class Profile {
	readonly #home: string
	readonly #data: string
	readonly #extensions: string

	private constructor(folder: string) {
		this.#home = path.join(folder, 'home')
		this.#data = path.join(folder, 'data')
		this.#extensions = path.join(folder, 'extensions')
	}

	/** Makes them below a folder; `own` are settings beside those of every test. */
	static async create(folder: string, own: Readonly<Record<string, unknown>> = {}): Promise<Profile> {
		const profile = new Profile(folder)
		for (const each of [profile.#home, profile.#extensions, path.join(profile.#data, 'User')])
			await mkdir(each, { recursive: true })
		await writeFile(path.join(profile.#data, 'User', 'settings.json'), JSON.stringify({ ...settings, ...own }))
		return profile
	}

	/** Where extensions are installed. */
	get extensions(): string {
		return this.#extensions
	}

	get words(): string[] {
		return ['--user-data-dir', this.#data, '--extensions-dir', this.#extensions]
	}

	get options(): { cwd: string; env: NodeJS.ProcessEnv } {
		const ofOthers = /^(VSCODE_|npm_|NODE_OPTIONS$|VITEST|PORT$|PASSWORD$)/
		const env = Object.fromEntries(Object.entries(process.env).filter(([name]) => !ofOthers.test(name)))
		return { cwd: this.#home, env: { ...env, HOME: this.#home, XDG_RUNTIME_DIR: this.#home } }
	}
}

/** Installs a `.vsix` as a person would, and gives the extensions that are installed then, with their versions. */
export async function installExtension(profile: Profile, vsix: string): Promise<string[]> {
	const run = promisify(execFile)
	await run(process.execPath, [program, ...profile.words, '--install-extension', vsix], profile.options)
	const { stdout } = await run(
		process.execPath,
		[program, ...profile.words, '--list-extensions', '--show-versions'],
		profile.options,
	)
	return stdout.trim().split('\n')
}

export interface CodeServer {
	readonly port: number
	/** The address that opens a folder; `payload` is for the workbench itself. */
	urlOf(folder: string, payload?: readonly (readonly [string, string])[]): string
	readonly pid: number
	/** What it has said, for the day a test fails. */
	log(): string
	stop(): Promise<void>
}

/** Starts the editor's server on a free port of this machine. */
export async function startCodeServer(profile: Profile, ...words: string[]): Promise<CodeServer> {
	const port = await freePort()
	const quiet = [
		'--disable-telemetry',
		'--disable-update-check',
		'--disable-workspace-trust',
		'--disable-getting-started-override',
	]
	const child = spawn(
		process.execPath,
		[program, '--auth', 'none', '--bind-addr', `127.0.0.1:${port}`, ...profile.words, ...quiet, '--disable-proxy', ...words],
		{ ...profile.options, stdio: ['ignore', 'pipe', 'pipe'] },
	)
	let log = ''
	child.stdout.on('data', data => {
		log += data
	})
	child.stderr.on('data', data => {
		log += data
	})
	const ended = new Promise<void>(resolve => child.once('exit', () => resolve()))
	const stop = async () => {
		child.kill('SIGTERM')
		await Promise.race([ended, pause(10_000)])
		child.kill('SIGKILL')
		await ended
	}
	for (const deadline = Date.now() + 60_000; ; await pause(100)) {
		if (child.exitCode !== null) throw new Error(`code-server ended at once:\n${log}`)
		const answer = await fetch(`http://127.0.0.1:${port}/healthz`).catch(() => undefined)
		if (answer?.ok) break
		if (Date.now() > deadline) {
			await stop()
			throw new Error(`code-server did not start:\n${log}`)
		}
	}
	const urlOf = (folder: string, payload: readonly (readonly [string, string])[] = []) => {
		const url = new URL(`http://127.0.0.1:${port}/`)
		url.searchParams.set('folder', folder)
		if (payload.length > 0) url.searchParams.set('payload', JSON.stringify(payload))
		return url.href
	}
	return { port, urlOf, pid: child.pid!, log: () => log, stop }
}
