// npm run screenshots: pictures from a real editor for the docs: the panel's views in each kind of theme, and what the editor does at a
// text. With `-- FOLDER` the views go there instead, whole pages, narrow and enlarged too, to be looked at.
import { mkdir, readdir, readFile } from 'node:fs/promises'
import path from 'node:path'
import type { Browser } from 'playwright-core'
import { exampleClub } from './example-club.ts'
import { launchBrowser } from './workbench/browser.ts'
import { installExtension, Profile, startCodeServer } from './workbench/code-server.ts'
import { temporaryFolder } from './workbench/temporary-folder.ts'
import { themes } from './workbench/themes.ts'
import { views } from './workbench/views.ts'
import { placeOf, Workbench } from './workbench/workbench.ts'

const root = path.resolve(import.meta.dirname, '../..')
const dist = path.join(root, 'dist')
const [wanted, ...only] = process.argv.slice(2)
const out = wanted ?? path.join(root, 'examples/pictures')
/** These two stand in the README, which goes with the extension. */
const media = path.join(root, 'client/editor/media')

/** The rooms that a page must fit in: as for the docs, a narrow panel, and all at twice the size. */
const rooms = {
	docs: { width: 1000, height: 1300, scale: 1 },
	narrow: { width: 420, height: 1300, scale: 1 },
	enlarged: { width: 640, height: 800, scale: 2 },
} as const

await mkdir(out, { recursive: true })
await using folder = await temporaryFolder()
const club = await exampleClub(folder.path)
const profile = await Profile.create(folder.path)
const vsix = (await readdir(dist)).find(file => file.endsWith('.vsix'))
if (vsix === undefined) throw new Error('Run npm run package first.')
await installExtension(profile, path.join(dist, vsix))
const server = await startCodeServer(profile)
const browser = await launchBrowser()
try {
	for (const [name, room] of Object.entries(rooms)) {
		if (wanted === undefined && name !== 'docs') continue
		if (only.length > 0 && !only.includes(name)) continue
		await takePictures(browser, name as keyof typeof rooms, room)
	}
	if (wanted === undefined) await takePicturesOfEditor(browser)
} finally {
	await browser.close()
	await server.stop()
}

async function takePictures(
	browser: Browser,
	room: keyof typeof rooms,
	{ width, height, scale }: (typeof rooms)[keyof typeof rooms],
): Promise<void> {
	// The text takes the other half of the window.
	const viewport = { width: 2 * width + 50, height }
	const context = await browser.newContext({ viewport, deviceScaleFactor: scale, locale: 'en-GB' })
	const page = await context.newPage()
	page.setDefaultTimeout(30_000)
	const bench = await Workbench.open(page, server.urlOf(club))
	await bench.run('View: Toggle Primary Side Bar Visibility')
	for (const [name, view] of Object.entries(views)) {
		await bench.showView(view)
		for (const [theme, kind] of Object.entries(themes)) {
			await bench.setTheme(kind)
			if (wanted !== undefined) await bench.growToContent(9_000)
			await bench.pictureOfPreview(path.join(out, `${name}-${theme}${room === 'docs' ? '' : `-${room}`}.png`))
			await page.setViewportSize(viewport)
		}
	}
	await context.close()
	console.log(`${room}: ${(await readdir(out)).length} files, ${await bytesIn(out)} bytes in ${path.relative(root, out)}`)
}

/** What the editor does at a text: the problem and its explanation, the fix, the load under the pointer, what fits, the preview beside. */
async function takePicturesOfEditor(browser: Browser): Promise<void> {
	const context = await browser.newContext({ viewport: { width: 1400, height: 800 }, locale: 'en-GB' })
	const page = await context.newPage()
	page.setDefaultTimeout(30_000)
	const bench = await Workbench.open(page, server.urlOf(club))
	const picture = (folder: string, name: string) => page.screenshot({ path: path.join(folder, `${name}.png`) })
	const [plan, block] = await Promise.all(
		['plans/mara-autumn.stave', 'blocks/hinge-rebuild.stave'].map(file => readFile(path.join(club, file), 'utf8')),
	)

	await bench.openFile('plans/mara-autumn.stave')
	await bench.setTheme(themes.light)
	await bench.typeOver(placeOf(plan!, 'rebuild', 'run hinge'), 'rebuilt')
	await bench.editor.locator('.squiggly-error').first().waitFor()
	await bench.problems()
	await bench.openFile('plans/mara-autumn.stave')
	await bench.goTo(placeOf(plan!, 'hinge', 'run'))
	await page.keyboard.press('Control+.')
	await page.locator('.action-widget .monaco-list-row.focused', { hasText: 'hinge-rebuild' }).waitFor()
	await picture(media, 'fix')
	await page.keyboard.press('Enter')
	await bench.editor.locator('.squiggly-error').first().waitFor({ state: 'detached' })
	await bench.run('View: Toggle Panel Visibility')

	await bench.openFile('blocks/hinge-rebuild.stave')
	await bench.hover(placeOf(block!, '70%', 'week 1'))
	await picture(out, 'editor-hover')

	await bench.typeOver(placeOf(block!, 'side-plank'), 'sus')
	await page.locator('.suggest-widget.visible .monaco-list-row.focused').waitFor()
	await picture(out, 'editor-completion')
	await page.keyboard.press('Escape')
	await bench.undoUntil('    accessory side-plank 3 x 30 s each side')

	await bench.run('View: Toggle Primary Side Bar Visibility')
	await bench.run('Barstave: Open preview beside the text')
	await bench.webview.getByRole('heading', { name: views.plan.heading }).waitFor()
	await bench.goTo(placeOf(block!, '70%', 'week 1'))
	await bench.webview.locator('tr.lit').first().waitFor()
	await bench.webview.locator('#week-1').evaluate(week => week.scrollIntoView())
	await picture(media, 'preview')
	await context.close()
}

async function bytesIn(folder: string): Promise<number> {
	const files = await Promise.all((await readdir(folder)).map(file => readFile(path.join(folder, file))))
	return files.reduce((sum, { length }) => sum + length, 0)
}
