import path from 'node:path'
import { watch } from 'chokidar'
import { Refusal } from '../refusal.ts'
import { fileEnding, isSkipped, reasonOf } from './find-files.ts'

/** Editors save in several steps: so long nothing more must happen before a change is looked at, in milliseconds. */
const quiet = 100

/**
 * Calls back once a folder is watched, for what has changed before that, and then after each change of a text in it and below it, when what
 * changes has come to rest; never while the last call is at work. It goes on until the program ends.
 * @throws {Refusal} where this machine cannot watch the folder.
 */
export function watchFolder(root: string, changed: () => Promise<void>): Promise<never> {
	let timer: NodeJS.Timeout | undefined
	let atWork = Promise.resolve()
	return new Promise((_, reject) => {
		const look = () => {
			atWork = atWork.then(changed).catch(reject)
		}
		watch(root, {
			ignored: (where, stats) => isSkippedBelow(root, where) || (stats?.isFile() === true && !where.endsWith(fileEnding)),
			ignoreInitial: true,
			// A folder that cannot be opened is named by whoever reads the texts.
			ignorePermissionErrors: true,
		})
			.on('ready', look)
			.on('all', () => {
				clearTimeout(timer)
				timer = setTimeout(look, quiet)
			})
			.on('error', problem => reject(new Refusal(`"${root}" cannot be watched: ${reasonOf(problem)}.`)))
	})
}

function isSkippedBelow(root: string, where: string): boolean {
	return path.relative(root, where).split(path.sep).some(isSkipped)
}
