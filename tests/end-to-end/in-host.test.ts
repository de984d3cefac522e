// The suite inside the extension host of code-server, the editor that needs no screen.
import path from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { describe } from 'vitest'
import { exampleClub } from './example-club.ts'
import { bundleSuite, reportAsTests } from './in-host/results.ts'
import { launchBrowser } from './workbench/browser.ts'
import { Profile, startCodeServer } from './workbench/code-server.ts'
import { temporaryFolder } from './workbench/temporary-folder.ts'
import { Workbench } from './workbench/workbench.ts'

const root = path.resolve(import.meta.dirname, '../..')

describe('in the extension host of code-server', async () => {
	await using folder = await temporaryFolder()
	const club = await exampleClub(folder.path)
	const suite = await bundleSuite(folder.path)
	const results = path.join(folder.path, 'results.json')
	process.env.BARSTAVE_RESULTS = results
	const server = await startCodeServer(await Profile.create(folder.path), '--vscode-option', 'enable-smoke-test-driver')
	try {
		const browser = await launchBrowser()
		try {
			const page = await browser.newPage()
			const log: string[] = []
			const ended = new Promise<number>(resolve => void page.exposeFunction('codeAutomationExit', resolve))
			await page.exposeFunction(
				'codeAutomationLog',
				(type: string, words: unknown[]) => void log.push(`${type} ${words.join(' ')}`),
			)
			const remote = (file: string) => `vscode-remote://127.0.0.1:${server.port}${file}`
			const payload = [
				['extensionDevelopmentPath', remote(root)],
				['extensionTestsPath', remote(suite)],
			] as const
			await Workbench.open(page, server.urlOf(club, payload))
			const status = await Promise.race([ended, pause(120_000, 'no answer in two minutes', { ref: false })])
			if (status !== 0) throw new Error(`The editor ended with ${status}:\n${log.slice(-20).join('\n')}`)
		} finally {
			await browser.close()
		}
	} finally {
		await server.stop()
	}
	await reportAsTests(results)
})
