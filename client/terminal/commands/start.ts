import { mkdir, readdir } from 'node:fs/promises'
import path from 'node:path'
import { Command } from 'commander'
import { starterFiles } from '../../starter/files.ts'
import { layoutFor, print } from '../output.ts'
import { Refusal } from '../refusal.ts'
import { plain } from '../text/plain.ts'
import { reasonOf } from '../workspace/find-files.ts'
import { writeWhole } from '../workspace/write-file.ts'

/** `start FOLDER`: a small workspace to begin with. */
export function start(): Command {
	return new Command('start')
		.description('write a small workspace to begin with: gym, lifter, block, plan')
		.argument('<folder>', 'a folder that is empty, or not there yet')
		.action(run)
}

async function run(folder: string): Promise<void> {
	try {
		await mkdir(folder, { recursive: true })
		if ((await readdir(folder)).length > 0)
			throw new Refusal(`"${folder}" is not empty. Name a folder that is, or that is not there yet.`)
		for (const { path: name, text } of starterFiles) await writeWhole(path.join(folder, name), text)
	} catch (problem) {
		if (problem instanceof Refusal) throw problem
		throw new Refusal(`"${folder}" cannot be written: ${reasonOf(problem)}.`)
	}
	const { style } = layoutFor(undefined)
	const names = starterFiles.map(file => `  ${file.path}`).join('\n')
	const option =
		path.resolve(folder) === process.cwd() ? '' : ` --workspace ${/^[\w./\\:-]+$/.test(folder) ? folder : `"${folder}"`}`
	print(
		`${style.strong(plain(`Written into ${folder}:`))}\n${names}\n
Begin with gym.stave: the comments in each file say what to change.
Then look at what comes of it:
  barstave check${option}
  barstave sheet first-plan${option}`,
	)
}
