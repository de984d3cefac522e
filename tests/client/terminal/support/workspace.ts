import { mkdir, writeFile } from 'node:fs/promises'
import path from 'node:path'
import { temporaryFolder } from './program.ts'

/** A workspace on the disk: files by path, texts or bytes. */
export async function workspaceOf(files: Readonly<Record<string, string | Uint8Array>>): Promise<string> {
	const folder = await temporaryFolder()
	for (const [name, content] of Object.entries(files)) {
		await mkdir(path.dirname(path.join(folder, name)), { recursive: true })
		await writeFile(path.join(folder, name), content)
	}
	return folder
}

/** A sound text. */
export const sound = `block first-steps "First steps"
  weeks 1
  session pull-day on monday
    accessory plank 3 x 30 s
`

/** An error: `no-such-movement` at 4:15 is a name that nothing gives. */
export const withError = sound.replace('plank', 'no-such-movement')

/** A warning: a stability movement as main work at 4:5. */
export const withWarning = sound.replace('accessory', 'main')

/** A hint, which a safe correction takes away: a times sign without its spaces. */
export const withHint = sound.replace('3 x 30 s', '3x30 s')
