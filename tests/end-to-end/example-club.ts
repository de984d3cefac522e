import { cp } from 'node:fs/promises'
import path from 'node:path'

/** Copies the example club below a folder, so that tests may write in it; gives the copy's path. */
export async function exampleClub(folder: string): Promise<string> {
	const copy = path.join(folder, 'club')
	await cp(path.resolve(import.meta.dirname, '../../examples/club'), copy, { recursive: true })
	return copy
}
