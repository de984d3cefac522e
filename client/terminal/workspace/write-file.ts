import { chmod, open, realpath, rename, rm, stat } from 'node:fs/promises'
import path from 'node:path'

/**
 * Writes a file in one step: whoever ends the program meanwhile leaves the old text or the new one, never half of it. A link stays one,
 * and the file keeps who may read it.
 */
export async function writeWhole(where: string, content: string | Uint8Array): Promise<void> {
	const target = await realpath(where).catch(() => path.resolve(where))
	// A hidden name beside the file: no reader of the workspace sees it, and a rename within one folder is one step.
	const beside = path.join(path.dirname(target), `.${path.basename(target)}.${process.pid}.part`)
	const mode = await stat(target).then(
		({ mode }) => mode,
		() => undefined,
	)
	try {
		const file = await open(beside, 'wx')
		try {
			await file.writeFile(content)
			await file.sync()
		} finally {
			await file.close()
		}
		if (mode !== undefined) await chmod(beside, mode)
		await rename(beside, target)
	} catch (problem) {
		await rm(beside, { force: true })
		throw problem
	}
}
