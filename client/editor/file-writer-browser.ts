import { Uri } from 'vscode'
import type { FileAnswer } from '../outputs/main.ts'
import { type FileWriter, writersScript } from './file-writer.ts'

/** Writes files in a browser: a worker for each, which is gone when the file is there. */
export function fileWriter(extensionUri: Uri): FileWriter {
	const script = Uri.joinPath(extensionUri, 'dist', writersScript).toString(true)
	return async request => {
		const worker = new Worker(script)
		try {
			const answer = await new Promise<FileAnswer>((resolve, reject) => {
				worker.onmessage = ({ data }: MessageEvent<FileAnswer>) => resolve(data)
				worker.onerror = event => reject(new Error(event.message))
				worker.postMessage(request)
			})
			if ('fault' in answer) throw new Error(answer.fault)
			return answer.bytes
		} finally {
			worker.terminate()
		}
	}
}
