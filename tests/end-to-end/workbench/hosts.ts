import { mkdir, readdir, writeFile } from 'node:fs/promises'
import path from 'node:path'
import { exampleClub } from '../example-club.ts'
import { launchBrowser } from './browser.ts'
import { type CodeServer, installExtension, Profile, startCodeServer } from './code-server.ts'
import { temporaryFolder } from './temporary-folder.ts'
import { startWebServer } from './web-server.ts'
import { Workbench } from './workbench.ts'

const dist = path.resolve(import.meta.dirname, '../../../dist')

/** Of the club's folder, whoever opens it. */
const settings = {
	'editor.hover.delay': 100,
	'editor.minimap.enabled': false,
	'files.autoSave': 'off',
	'[barstave]': { 'editor.formatOnSave': true },
	// Sessions of the club are on no part of the day.
	'barstave.calendar.begin': 'evening 18:30',
}

/** An editor with the packaged extension that shows a copy of the example club. */
export interface Host extends AsyncDisposable {
	readonly bench: Workbench
	/** Where the club lies for the editor. */
	readonly root: string
	/** The process below which the extension runs, where it is no worker of the browser. */
	readonly server: CodeServer | undefined
}

export interface Wishes {
	/** Changes the copy of the club before it is opened. */
	readonly prepare?: (club: string) => Promise<void>
	/** The language of the editor; English where none is named. */
	readonly language?: string
}

/** Both kinds of editor in the browser, by what sets them apart. */
export const hosts = {
	'a workbench with an extension host of its own': openFullWorkbench,
	'a workbench in the browser alone': openWebWorkbench,
} as const satisfies Record<string, (wishes?: Wishes) => Promise<Host>>

async function openFullWorkbench(wishes: Wishes = {}): Promise<Host> {
	return open(wishes, async (profile, club) => {
		const server = await startCodeServer(profile)
		return { url: server.urlOf(club), root: club, server, stop: server.stop }
	})
}

async function openWebWorkbench(wishes: Wishes = {}): Promise<Host> {
	return open(wishes, async (profile, club, scratch) => {
		const { url, stop } = await startWebServer(profile.extensions, club, scratch)
		return { url, root: '', server: undefined, stop: async () => stop() }
	})
}

type Start = (
	profile: Profile,
	club: string,
	scratch: string,
) => Promise<{ url: string; root: string; server: CodeServer | undefined; stop: () => Promise<void> }>

async function open({ prepare, language }: Wishes, start: Start): Promise<Host> {
	const ends = new AsyncDisposableStack()
	try {
		const folder = ends.use(await temporaryFolder())
		const club = await exampleClub(folder.path)
		await mkdir(path.join(club, '.vscode'))
		await writeFile(path.join(club, '.vscode/settings.json'), JSON.stringify(settings))
		await prepare?.(club)

		const profile = await Profile.create(folder.path)
		const vsix = (await readdir(dist)).find(file => file.endsWith('.vsix'))
		if (vsix === undefined) throw new Error('There is no package; npm run package makes it.')
		await installExtension(profile, path.join(dist, vsix))
		const { url, root, server, stop } = await start(profile, club, path.join(folder.path, 'scratch'))
		ends.defer(stop)
		const browser = await launchBrowser()
		ends.defer(() => browser.close())
		const page = await browser.newPage({ viewport: { width: 1500, height: 950 } })
		page.setDefaultTimeout(60_000)
		const bench = await Workbench.open(page, url, language)
		const all = ends.move()
		return { bench, root, server, [Symbol.asyncDispose]: () => all.disposeAsync() }
	} finally {
		await ends.disposeAsync()
	}
}
