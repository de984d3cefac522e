// The same steps of a person in both kinds of workbench: the one with an extension host of its own, and the one in the browser alone.
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises'
import path from 'node:path'
import type { Browser } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest'
import { exampleClub } from './example-club.ts'
import { hostile } from './steps/hostile.ts'
import { type Club, steps } from './steps/steps.ts'
import { launchBrowser } from './workbench/browser.ts'
import { installExtension, Profile, startCodeServer } from './workbench/code-server.ts'
import { temporaryFolder } from './workbench/temporary-folder.ts'
import { startWebServer } from './workbench/web-server.ts'
import { Workbench } from './workbench/workbench.ts'

const dist = path.resolve(import.meta.dirname, '../../dist')

interface Host {
	readonly url: string
	/** Where the folder lies for the editor. */
	readonly root: string
	stop(): void | Promise<void>
}

/** Each starts an editor that shows a folder, with the extension installed in a profile. */
const hosts: Readonly<Record<string, (profile: Profile, club: string, scratch: string) => Promise<Host>>> = {
	'a workbench with an extension host of its own': async (profile, club) => {
		const server = await startCodeServer(profile)
		return { url: server.urlOf(club), root: club, stop: server.stop }
	},
	'a workbench in the browser alone': async (profile, club, scratch) => {
		const server = await startWebServer(profile.extensions, club, scratch)
		return { ...server, root: '' }
	},
}

/** Of this folder, whoever opens it. */
const settings = {
	'editor.hover.delay': 100,
	'editor.minimap.enabled': false,
	'files.autoSave': 'off',
	'[barstave]': { 'editor.formatOnSave': true },
}

describe.each(Object.entries(hosts))('%s', (name, start) => {
	let folder: Awaited<ReturnType<typeof temporaryFolder>>
	let host: Host
	let browser: Browser
	let bench: Workbench
	let club: Club

	beforeAll(async () => {
		folder = await temporaryFolder()
		const copy = await exampleClub(folder.path)
		await mkdir(path.join(copy, '.vscode'))
		await writeFile(path.join(copy, '.vscode/settings.json'), JSON.stringify(settings))
		const read = (file: string) => readFile(path.join(copy, file), 'utf8')
		const texts = { plan: await read('plans/mara-autumn.stave'), block: await read('blocks/hinge-rebuild.stave') }
		await mkdir(path.join(copy, 'empty'))
		await mkdir(path.join(copy, path.dirname(hostile.file)))
		await writeFile(path.join(copy, hostile.file), hostile.text)

		const profile = await Profile.create(folder.path)
		const vsix = (await readdir(dist)).find(file => file.endsWith('.vsix'))
		expect(vsix, 'npm run package has made it').toBeDefined()
		await installExtension(profile, path.join(dist, vsix!))
		host = await start(profile, copy, path.join(folder.path, 'scratch'))
		club = { root: host.root, ...texts }
		browser = await launchBrowser()
		const page = await browser.newPage({ viewport: { width: 1500, height: 950 } })
		page.setDefaultTimeout(20_000)
		bench = await Workbench.open(page, host.url)
	})

	afterEach(async ({ task }) => {
		if (task.result?.state === 'fail') await bench.screenshot(`failed: ${name}: ${task.name}`)
	})

	afterAll(async () => {
		await browser?.close()
		await host?.stop()
		await folder?.[Symbol.asyncDispose]()
	})

	for (const [step, act] of Object.entries(steps)) test(step, () => act(bench, club))
})
