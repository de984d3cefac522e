import { type FSWatcher, watch } from 'node:fs'
import { Refusal } from '../refusal.ts'
import { isSkipped, reasonOf } from './find-files.ts'

/** Editors save in several steps: so long nothing more must happen before a change is looked at, in milliseconds. */
const quiet = 100

/**
 * Calls back after each change in a folder and below it, once what changes has come to rest, and never while the last call is at work.
 * It goes on until the program ends.
 * @throws {Refusal} where this machine cannot watch the folder.
 */
export function watchFolder(root: string, changed: () => Promise<void>): Promise<never> {
	let timer: NodeJS.Timeout | undefined
	let atWork = Promise.resolve()
	return new Promise((_, reject) => {
		const look = () => {
			atWork = atWork.then(changed).catch(reject)
		}
		let watcher: FSWatcher
		try {
			watcher = watch(root, { recursive: true }, (_event, name) => {
				if (name?.split(/[\\/]/).some(isSkipped)) return
				clearTimeout(timer)
				timer = setTimeout(look, quiet)
			})
		} catch (problem) {
			reject(cannotWatch(problem))
			return
		}
		watcher.on('error', problem => reject(cannotWatch(problem)))
	})

	function cannotWatch(problem: unknown): Refusal {
		return new Refusal(`"${root}" cannot be watched: ${reasonOf(problem)}.`)
	}
}
