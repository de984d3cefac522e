import path from 'node:path'
import { decode } from './file-text.ts'
import { type Workspace, withSlashes } from './workspace.ts'

/** How standard input is named on the command line, and in reports where no path says what it stands for. */
export const standardInput = '-'

/** All bytes of standard input. */
export async function readStandardInput(): Promise<Uint8Array> {
	const chunks: Buffer[] = []
	for await (const chunk of process.stdin) chunks.push(chunk)
	return Buffer.concat(chunks)
}

/**
 * Takes standard input into the workspace: in place of the file that its path names, or beside all files.
 * @param standsFor Relative to the current folder, or absolute; the file need not be there.
 * @returns its path in the workspace.
 */
export async function takeStandardInput(workspace: Workspace, standsFor: string | undefined): Promise<string> {
	const where = standsFor === undefined ? standardInput : withSlashes(path.relative(workspace.root, path.resolve(standsFor)))
	workspace.set(where, decode(await readStandardInput()))
	return where
}
