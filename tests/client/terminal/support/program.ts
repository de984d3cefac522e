import { spawn } from 'node:child_process'
import { mkdtemp, rm } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { afterAll } from 'vitest'
import { buildProgram, root } from '../../../support/build-program.ts'

export { root }

let program: Promise<string> | undefined

/** The program, built from the sources as it ships, once for each file of tests. */
export function builtProgram(): Promise<string> {
	program ??= temporaryFolder().then(folder => buildProgram('client/terminal/main.ts', path.join(folder, 'barstave.cjs')))
	return program
}

/** How a run of the program ended. */
export interface Ended {
	readonly status: number | null
	/** Standard output. */
	readonly out: string
	/** Standard error. */
	readonly said: string
}

export interface RunOptions {
	readonly cwd?: string
	readonly input?: string | Uint8Array
	/** Beside the environment of the tests. */
	readonly env?: NodeJS.ProcessEnv
}

/** Runs the program to its end. */
export async function barstave(words: readonly string[], options: RunOptions = {}): Promise<Ended> {
	const started = await startBarstave(words, options)
	started.process.stdin.end(options.input ?? '')
	return started.ended
}

/** Starts the program and leaves it running. */
export async function startBarstave(words: readonly string[], { cwd = root, env }: RunOptions = {}) {
	const started = spawn(process.execPath, [await builtProgram(), ...words], { cwd, env: { ...process.env, ...env } })
	const texts = { out: '', said: '' }
	started.stdout.setEncoding('utf8').on('data', chunk => {
		texts.out += chunk
	})
	started.stderr.setEncoding('utf8').on('data', chunk => {
		texts.said += chunk
	})
	// A program that ends before it has read its input is judged by how it ended.
	started.stdin.on('error', () => {})
	const ended = new Promise<Ended>((resolve, reject) => {
		started.on('error', reject)
		started.on('close', status => resolve({ status, ...texts }))
	})
	return { process: started, texts, ended }
}

const folders: string[] = []
afterAll(async () => {
	for (const folder of folders) await rm(folder, { recursive: true, force: true })
})

/** A folder that is gone when the tests of its file are. */
export async function temporaryFolder(): Promise<string> {
	const folder = await mkdtemp(path.join(os.tmpdir(), 'barstave-terminal-'))
	folders.push(folder)
	return folder
}
