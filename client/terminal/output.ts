import { existsSync, statSync, writeSync } from 'node:fs'
import { mkdir } from 'node:fs/promises'
import path from 'node:path'
import { Refusal } from './refusal.ts'
import { type Style, styleFor } from './text/style.ts'
import { reasonOf } from './workspace/find-files.ts'
import { writeWhole } from './workspace/write-file.ts'

/** Lines of a report for people are as wide as the terminal, within what reads well; the same width for every pipe. */
const narrowest = 60
const widest = 120
const widthOfPipes = 120

/** Prints a result. It ends with one line break, whatever the report ends with. */
export function print(text: string): void {
	process.stdout.write(wholeLines(text))
}

function wholeLines(text: string): string {
	return text.endsWith('\n') ? text : `${text}\n`
}

/**
 * What is no text would only disturb a terminal; a pipe or a file takes it.
 * @throws {Refusal} where it would go to a terminal.
 */
export function refuseBytesOnTerminal(out: string | undefined): void {
	if (out !== undefined || !process.stdout.isTTY) return
	throw new Refusal('This is no text that a terminal could show. Say which file it goes into, such as --out sheet.pdf.')
}

/** How a report for people is laid out where it goes: into a file as through a pipe. */
export function layoutFor(out: string | undefined): { readonly style: Style; readonly width: number } {
	return out === undefined ? layoutOfTerminal() : { style: styleFor(false), width: widthOfPipes }
}

function layoutOfTerminal(): { readonly style: Style; readonly width: number } {
	const { stdout } = process
	if (!stdout.isTTY) return { style: styleFor(false), width: widthOfPipes }
	return { style: styleFor(stdout.hasColors()), width: Math.min(widest, Math.max(narrowest, stdout.columns)) }
}

/**
 * Prints a result, or writes it into a file.
 * @throws {Refusal} where the file cannot be written.
 */
export async function deliver(result: string | Uint8Array, out: string | undefined): Promise<void> {
	if (out === undefined) return typeof result === 'string' ? print(result) : void process.stdout.write(result)
	try {
		await writeWhole(out, typeof result === 'string' ? wholeLines(result) : result)
	} catch (problem) {
		throw new Refusal(`"${out}" cannot be written: ${reasonOf(problem)}.`)
	}
}

/** Does `--out` name a folder: one that is there, or a name that ends with a slash? */
export function isFolder(out: string | undefined): out is string {
	return out !== undefined && (/[\\/]$/.test(out) || (existsSync(out) && statSync(out).isDirectory()))
}

/**
 * Where the result about one plan or block is written: into a folder, each into a file of its own name.
 * @param ending As in `pdf`.
 * @throws {Refusal} where the folder cannot be made.
 */
export async function fileOf(out: string | undefined, name: string, ending: string): Promise<string | undefined> {
	if (!isFolder(out)) return out
	try {
		await mkdir(out, { recursive: true })
	} catch (problem) {
		throw new Refusal(`"${out}" cannot be written: ${reasonOf(problem)}.`)
	}
	return path.join(out, `${name.replaceAll('/', '-')}.${ending === 'text' ? 'txt' : ending}`)
}

/** Says something beside the result: a note, a fault. */
export function say(text: string): void {
	process.stderr.write(`${text}\n`)
}

/** A reader that has seen enough (`barstave check | head`) is no fault; the status stays what it is. */
export function endQuietlyOnClosedPipe(): void {
	process.stdout.on('error', (problem: NodeJS.ErrnoException) => {
		if (problem.code !== 'EPIPE') throw problem
		process.exit()
	})
}

/** Shorter work than this shows no progress, in milliseconds. */
const patience = 500

/** Shows how far long work has come, on a terminal and only there: one line that is taken away when the work is done. */
export class Progress {
	private readonly begun = performance.now()
	private readonly shows = process.stderr.isTTY === true
	private shown = ''

	constructor(private readonly what: string) {}

	at(done: number, of: number): void {
		if (!this.shows || performance.now() - this.begun < patience) return
		const line = `${this.what}: ${Math.floor((100 * done) / of)} %`
		if (line === this.shown) return
		this.shown = line
		// The work that follows holds the program up: what is written later would be seen later.
		writeSync(2, `\r${line}`)
	}

	done(): void {
		if (this.shown !== '') writeSync(2, `\r${' '.repeat(this.shown.length)}\r`)
	}
}
