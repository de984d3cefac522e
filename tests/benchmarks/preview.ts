import { mkdtemp, readFile, rm } from 'node:fs/promises'
import os from 'node:os'
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import { show } from '../../client/preview/messages.ts'
import type { PreviewData } from '../../language/reports/preview.ts'
import { PreviewPage } from '../client/preview/support/page.ts'
import { Driver } from './driver.ts'
import { milliseconds, summary } from './statistics.ts'
import { fileName, makeWorkspace } from './workspaces.ts'

/** About a hundred lines each: a workspace of 2,000 lines. */
const files = 20
const keys = 40

/**
 * From a key to the panel's new picture on a workspace of 2,000 lines: the server takes the change in and answers with the picture, the
 * page (as it ships, in Chromium) draws it. The page's time is taken in the page itself, until what has changed is painted; the way
 * between the processes of an editor is not in it.
 */
export async function measurePreview(program: string): Promise<string> {
	const folder = await makeWorkspace(files)
	const pageFolder = await mkdtemp(path.join(os.tmpdir(), 'barstave-bench-page-'))
	const driver = await Driver.start(program, folder)
	const preview = await PreviewPage.open(pageFolder, { minify: true })
	try {
		const uri = pathToFileURL(path.join(folder, fileName(0))).href
		const text = await readFile(path.join(folder, fileName(0)), 'utf8')
		const texts = [text, text.replace(/ at (\d+)%/, (_, percent) => ` at ${Number(percent) + 0.5}%`)]
		if (texts[0] === texts[1]) throw new Error('the text to change has no percent')
		// The plan comes last in its file.
		const question = { uri, at: { line: text.split('\n').length - 3, character: 0 } }
		await driver.open(uri, text)
		const ofServer: number[] = []
		const ofPage: number[] = []
		const together: number[] = []
		for (let key = -10; key < keys; key++) {
			const start = performance.now()
			await driver.change(uri, key + 12, texts[(key + 10) % 2]!)
			const data = await driver.request<PreviewData>('barstave/preview', question)
			const server = performance.now() - start
			if (data.picture?.sheet == null) throw new Error('no plan is shown')
			const page = await preview.paint(show, data)
			// The first ones warm up.
			if (key < 0) continue
			ofServer.push(server)
			ofPage.push(page)
			together.push(server + page)
		}
		const pair = (times: readonly number[]) => {
			const { median, p95 } = summary(times)
			return `${milliseconds(median)} / ${milliseconds(p95)}`
		}
		return `preview, key to new picture on 2,000 lines: ${pair(together)} (median / p95 of ${keys}); the server ${pair(ofServer)}, the page ${pair(ofPage)}`
	} finally {
		driver.stop()
		await preview.close(pageFolder)
		await rm(folder, { recursive: true })
	}
}
