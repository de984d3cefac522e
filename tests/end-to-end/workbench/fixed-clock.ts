import { writeFile } from 'node:fs/promises'
import path from 'node:path'

/**
 * Writes a script below a folder that sets the clock of a Node program, and gives the variables that make every program of an editor begin
 * with it: pictures of the example club show the same day, whenever they are taken.
 */
export async function clockOf(folder: string, day: string): Promise<Readonly<Record<string, string>>> {
	const file = path.join(folder, 'clock.cjs')
	await writeFile(
		file,
		`const RealDate = Date
const ahead = RealDate.parse('${day}T10:00:00') - RealDate.now()
globalThis.Date = class Date extends RealDate {
	constructor(...given) {
		super(...(given.length === 0 ? [RealDate.now() + ahead] : given))
	}
	static now() {
		return RealDate.now() + ahead
	}
}
`,
	)
	return { NODE_OPTIONS: `--require ${file}` }
}
