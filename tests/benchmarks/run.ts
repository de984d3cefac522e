import { execFile } from 'node:child_process'
import { mkdtemp, readFile, rm } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import { promisify } from 'node:util'
import type { Counters } from '../../server/features/counters.ts'
import { buildProgram } from '../support/build-program.ts'
import { Driver } from './driver.ts'
import { measurePreview } from './preview.ts'
import { milliseconds, summary } from './statistics.ts'
import { fileName, makeWorkspace } from './workspaces.ts'

/** Files of the workspaces to measure; 0 measures the compute core alone. */
const sizes = (process.argv[2] ?? '1,100,1000')
	.split(',')
	.map(Number)
	.filter(files => files > 0)
const keys = 40

interface Row {
	readonly server: string
	readonly files: number
	readonly first: string
	readonly key: string
	readonly completion: string
	readonly preview: string
	readonly work: string
	readonly memory: string
}

async function measure(name: string, program: string, folder: string, files: number): Promise<Row> {
	const uri = pathToFileURL(path.join(folder, fileName(0))).href
	const text = await readFile(path.join(folder, fileName(0)), 'utf8')
	const faulty = text.replace(/main [a-z-]+/, 'main nothing-like-this')
	if (faulty === text) throw new Error('the text to break has no main item')
	const isOurs = name === 'Barstave'

	const firsts: number[] = []
	let driver: Driver | undefined
	for (let round = 0; round < (files >= 1000 ? 3 : 5); round++) {
		driver?.stop()
		const start = performance.now()
		driver = await Driver.start(program, folder)
		const shown = driver.whenPublished(uri, params => /nothing-like-this/.test(JSON.stringify(params.diagnostics)))
		await driver.open(uri, faulty)
		await shown
		firsts.push(performance.now() - start)
	}
	// Everything must be read before a key is timed.
	let version = 1
	const toggle = async () => {
		version++
		const isFaulty = version % 2 === 1
		const shown = driver!.whenPublished(
			uri,
			params => params.diagnostics.some(one => /nothing-like-this/.test(JSON.stringify(one.message))) === isFaulty,
		)
		const start = performance.now()
		await driver!.change(uri, version, isFaulty ? faulty : text)
		await shown
		return performance.now() - start
	}
	for (let warm = 0; warm < 6; warm++) await toggle()
	if (isOurs) await driver!.request('barstave/preview', { uri })
	const before = isOurs ? await driver!.request<Counters>('barstave/counters') : undefined
	const publishedBefore = driver!.published
	const times: number[] = []
	for (let key = 0; key < keys; key++) times.push(await toggle())
	const after = isOurs ? await driver!.request<Counters>('barstave/counters') : undefined
	const completions: number[] = []
	const line = text.split('\n').findIndex(one => /^\s+accessory /.test(one))
	for (let round = 0; round < 20; round++) {
		const start = performance.now()
		const position = { line, character: text.split('\n')[line]!.indexOf('accessory') + 'accessory '.length }
		await driver!.request('textDocument/completion', { textDocument: { uri }, position })
		completions.push(performance.now() - start)
	}
	const previews: number[] = []
	if (isOurs) {
		for (let round = 0; round < 20; round++) {
			version++
			const start = performance.now()
			await driver!.change(uri, version, text.replace('% ', `${'.5% '}`.repeat(round % 2) || '% '))
			await driver!.request('barstave/preview', { uri })
			previews.push(performance.now() - start)
		}
	}
	const memory = await driver!.memory()
	driver!.stop()
	const first = summary(firsts)
	const key = summary(times)
	const completion = summary(completions)
	const preview = summary(previews)
	const per = (what: keyof Counters) => ((after![what] - before![what]) / keys).toFixed(1)
	const work =
		after && before
			? `${per('read')} read, ${per('linked')} linked, ${per('checked')} checked, ${per('published')} published`
			: `${((driver!.published - publishedBefore) / keys).toFixed(1)} published`
	const pair = ({ median, p95 }: { median: number; p95: number }) => `${milliseconds(median)} / ${milliseconds(p95)}`
	return {
		server: name,
		files,
		first: pair(first),
		key: pair(key),
		completion: pair(completion),
		preview: previews.length > 0 ? pair(preview) : '',
		work,
		memory: `${Math.round(memory)} MB`,
	}
}

async function checkAsProcess(program: string, folder: string): Promise<{ median: number; p95: number }> {
	const times: number[] = []
	for (let round = 0; round < 5; round++) {
		const start = performance.now()
		const { stdout } = await promisify(execFile)(
			process.execPath,
			[program, 'check', '--workspace', folder, '--format', 'json'],
			{
				maxBuffer: 1 << 28,
			},
		)
		times.push(performance.now() - start)
		const { counts } = JSON.parse(stdout) as { counts: { error: number; warning: number } }
		if (counts.error + counts.warning > 0) throw new Error(`the workspace to measure is not sound: ${JSON.stringify(counts)}`)
	}
	return summary(times)
}

/** The compute core alone, in a fresh process that checks what comes out. */
async function measureCompute(program: string): Promise<string> {
	const rounds: { plans: number; sets: number; milliseconds: number; megabytes: number }[] = []
	for (let round = 0; round < 5; round++) {
		const { stdout } = await promisify(execFile)(process.execPath, ['--expose-gc', program])
		rounds.push(JSON.parse(stdout))
	}
	const { plans, sets } = rounds[0]!
	const time = summary(rounds.map(round => round.milliseconds))
	const memory = summary(rounds.map(round => round.megabytes))
	const many = (count: number) => count.toLocaleString('en')
	return `compute core: loads for ${many(plans)} plans of 12 weeks (${many(sets)} sets) ${milliseconds(time.median)} / ${milliseconds(time.p95)} (median / p95 of 5), ${Math.round(memory.median)} MB kept`
}

/** The extension's own work when an editor starts it: 20 fresh processes. */
async function measureActivation(program: string, extension: string): Promise<string> {
	const rounds: { activation: number; later: number; waits: number }[] = []
	for (let round = 0; round < 20; round++) {
		const { stdout } = await promisify(execFile)(process.execPath, [program, extension, out])
		rounds.push(JSON.parse(stdout))
	}
	const own = summary(rounds.map(({ activation }) => activation))
	const later = summary(rounds.map(round => round.later))
	const waits = Math.max(...rounds.map(round => round.waits))
	if (waits > 0) throw new Error(`the extension waited ${waits} times for a file while it started`)
	return `activation: ${milliseconds(own.median)} / ${milliseconds(own.p95)} of work (median / p95 of 20), no wait for a file; in later turns ${milliseconds(later.median)} / ${milliseconds(later.p95)}`
}

const out = await mkdtemp(path.join(os.tmpdir(), 'barstave-bench-'))
const bundle = (entry: string, name: string) => buildProgram(entry, path.join(out, name), { minify: true })
const [ours, plain, terminal, compute, activation, extension] = await Promise.all([
	bundle('server/main-node.ts', 'server.cjs'),
	bundle('tests/benchmarks/plain-server.ts', 'plain.cjs'),
	bundle('client/terminal/main.ts', 'barstave.cjs'),
	bundle('tests/benchmarks/compute.ts', 'compute.cjs'),
	bundle('tests/benchmarks/activation.ts', 'activation.cjs'),
	// The extension stands in its folder as it does when it is installed.
	bundle('client/editor/main-node.ts', 'dist/extension.cjs'),
	bundle('client/editor/session-node.ts', 'dist/session.cjs'),
])

console.log(await measureActivation(activation, extension))
console.log(await measureCompute(compute))

const rows: Row[] = []
for (const files of sizes) {
	const folder = await makeWorkspace(files)
	const check = await checkAsProcess(terminal, folder)
	console.log(`${files} files: check as a process ${milliseconds(check.median)} / ${milliseconds(check.p95)} (median / p95 of 5)`)
	rows.push(await measure('Barstave', ours, folder, files), await measure('plain Langium', plain, folder, files))
	await rm(folder, { recursive: true })
}
if (rows.length > 0) {
	console.log('\nServers over stdio, median / p95; work is per key.')
	console.table(rows)
}
console.log(await measurePreview(ours))
await rm(out, { recursive: true })
