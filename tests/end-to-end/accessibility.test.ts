// Every view of the panel in a real editor, in each kind of theme, under axe.
import { readdir } from 'node:fs/promises'
import path from 'node:path'
import type { Browser } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest'
import { violationsIn } from '../support/axe.ts'
import { exampleClub } from './example-club.ts'
import { launchBrowser } from './workbench/browser.ts'
import { type CodeServer, installExtension, Profile, startCodeServer } from './workbench/code-server.ts'
import { temporaryFolder } from './workbench/temporary-folder.ts'
import { type Theme, themes } from './workbench/themes.ts'
import { views } from './workbench/views.ts'
import { Workbench } from './workbench/workbench.ts'

const dist = path.resolve(import.meta.dirname, '../../dist')

let folder: Awaited<ReturnType<typeof temporaryFolder>>
let server: CodeServer
let browser: Browser
let bench: Workbench

beforeAll(async () => {
	folder = await temporaryFolder()
	const club = await exampleClub(folder.path)
	const profile = await Profile.create(folder.path)
	const vsix = (await readdir(dist)).find(file => file.endsWith('.vsix'))
	expect(vsix, 'npm run package has made it').toBeDefined()
	await installExtension(profile, path.join(dist, vsix!))
	server = await startCodeServer(profile)
	browser = await launchBrowser()
	const page = await browser.newPage({ viewport: { width: 1500, height: 950 } })
	page.setDefaultTimeout(60_000)
	bench = await Workbench.open(page, server.urlOf(club))
})

afterEach(async ({ task }) => {
	if (task.result?.state === 'fail') await bench.screenshot(`failed: ${task.name}`)
})

afterAll(async () => {
	await browser?.close()
	await server?.stop()
	await folder?.[Symbol.asyncDispose]()
})

describe.each(Object.entries(views))('the view of a %s', (_, view) => {
	beforeAll(async () => {
		await bench.showView(view)
	})

	test.each(Object.keys(themes) as Theme[])('has no fault that axe knows, in the %s theme', async theme => {
		await bench.setTheme(themes[theme])
		// What folds out counts too.
		await bench.webview.locator('details').evaluateAll(all => {
			for (const one of all) (one as HTMLDetailsElement).open = true
		})
		expect(await violationsIn(await bench.webviewFrame())).toEqual([])
	})
})
