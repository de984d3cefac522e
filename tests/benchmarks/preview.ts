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

/** What is looked at while the keys come: the weeks at the top of the page, or the charts below them. */
const views = { weeks: 'body', charts: '.charts .drawing' } as const

/**
 * From a key to the panel's new picture on a workspace of 2,000 lines: the server takes the change in and answers with the picture, the
 * page (as it ships, in Chromium) draws it. As the panel does, it is then asked once more, for the open problems. The page's time is taken in the page itself, until what has changed and is in view is
 * painted; the way between the processes of an editor is not in it.
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
		let version = 1
		const type = async () => {
			const start = performance.now()
			version++
			await driver.change(uri, version, texts[version % 2]!)
			const data = await driver.request<PreviewData>('barstave/preview', { ...question, problemsMayBeOld: true })
			const server = performance.now() - start
			if (data.picture?.sheet == null) throw new Error('no plan is shown')
			const page = await preview.paint(show, data)
			const again = performance.now()
			const whole = await driver.request<PreviewData>('barstave/preview', question)
			const problems = performance.now() - again
			return { server, page, problems: problems + (await preview.paint(show, whole)) }
		}
		const lines: string[] = []
		for (const [name, part] of Object.entries(views)) {
			for (let warm = 0; warm < 10; warm++) await type()
			await preview.page.locator(part).first().scrollIntoViewIfNeeded()
			const times: { readonly server: number; readonly page: number; readonly problems: number }[] = []
			for (let key = 0; key < keys; key++) times.push(await type())
			const pair = (of: (time: (typeof times)[number]) => number) => {
				const { median, p95 } = summary(times.map(of))
				return `${milliseconds(median)} / ${milliseconds(p95)}`
			}
			const together = pair(({ server, page }) => server + page)
			const parts = `the server ${pair(one => one.server)}, the page ${pair(one => one.page)}`
			lines.push(`${name} in view ${together}; ${parts}; the open problems after that ${pair(one => one.problems)}`)
		}
		return `preview, key to new picture on 2,000 lines (median / p95 of ${keys}):\n  ${lines.join('\n  ')}`
	} finally {
		driver.stop()
		await preview.close(pageFolder)
		await rm(folder, { recursive: true })
	}
}
