import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import path from 'node:path'

/** A new folder that goes away with `await using`. */
export async function temporaryFolder(): Promise<{ readonly path: string } & AsyncDisposable> {
	const folder = await mkdtemp(path.join(tmpdir(), 'barstave-'))
	return { path: folder, [Symbol.asyncDispose]: () => rm(folder, { recursive: true, force: true, maxRetries: 5 }) }
}
