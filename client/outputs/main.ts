import { type FileRequest, writeFile } from './write-file.ts'

// One script for both kinds of editor, run when a file is asked for and not before: in a browser by a worker, where there is Node by the
// extension, which takes what is exported here.

/** What a worker answers with; an error's words where there is no file. */
export type FileAnswer = { readonly bytes: Uint8Array } | { readonly fault: string }

/** A browser's worker, seen from within. */
interface WorkerScope {
	onmessage: ((message: { readonly data: FileRequest }) => void) | null
	postMessage(answer: FileAnswer): void
}

const scope = globalThis as unknown as WorkerScope & { readonly importScripts?: unknown }

if (typeof scope.importScripts === 'function') {
	scope.onmessage = async ({ data }) => {
		try {
			scope.postMessage({ bytes: await writeFile(data) })
		} catch (problem) {
			scope.postMessage({ fault: problem instanceof Error ? (problem.stack ?? problem.message) : String(problem) })
		}
	}
}

export { writeFile }
