import { judge } from '../../language/workspace/problems.ts'
import type { Feature } from '../feature.ts'

/** What the server has done since it started. */
export interface Counters {
	/** Definitions whose text was parsed and read. */
	readonly read: number
	/** Definitions that were kept though their file changed. */
	readonly kept: number
	/** Names whose meaning changed, so that whoever looked them up looks again. */
	readonly linked: number
	/** Definitions that the rules looked at. */
	readonly checked: number
	/** Lists of problems that were sent. */
	readonly published: number
}

/** Says what was done, so that tests and the bench can count work instead of time. */
export const counters: Feature = {
	capabilities: {},
	register({ connection, workspace }) {
		connection.onRequest('barstave/counters', async (): Promise<Counters> => {
			workspace.settle()
			await workspace.idle()
			const folders = workspace.allFolders()
			const sum = (count: (folder: (typeof folders)[number]) => number) =>
				folders.reduce((total, folder) => total + count(folder), 0)
			return {
				read: workspace.reader.counters.definitionsRead,
				kept: workspace.reader.counters.definitionsKept,
				linked: sum(folder => folder.namesChanged),
				checked: sum(folder => folder.timesWorkedOut(judge)),
				published: workspace.counters.filesPublished,
			}
		})
	},
}
