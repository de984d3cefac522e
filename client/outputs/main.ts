import { type FileRequest, writeFile } from './write-file.ts'

// One program for both kinds of editor: a module that the extension loads where there is Node, and a worker in a browser. Neither loads it
// before a file is asked for.

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
