// What people have written, in the panel's page and in exported pages: text, whatever it looks like, in a real browser.
import { mkdtemp, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { show } from '../../../client/preview/messages.ts'
import { renderPage } from '../../../client/views/page.tsx'
import { pictureOfBlock, pictureOfPlan } from '../../../language/reports/picture.ts'
import { plannedAgainstDone } from '../../../language/reports/planned-against-done.ts'
import type { PreviewData, PreviewProblem, Subject } from '../../../language/reports/preview.ts'
import { teamOverview } from '../../../language/reports/team-overview.ts'
import { Folder } from '../../../language/workspace/folder.ts'
import { TextReader } from '../../../language/workspace/text-file.ts'
import { hostile } from '../../end-to-end/steps/hostile.ts'
import { PreviewPage } from './support/page.ts'

const folder = new Folder(new TextReader())
for (const [name, text] of Object.entries(hostile.files)) folder.setFile(name, text)
const { markup } = hostile

const place = { uri: 'a', range: { start: { line: 0, character: 0 }, end: { line: 0, character: 1 } } }
const problem: PreviewProblem = {
	file: `visitors/${markup}.stave`,
	line: 1,
	column: 1,
	code: 'syntax',
	level: 'error',
	message: markup,
	source: markup,
	place,
}
const plan = pictureOfPlan(folder.find('plan', 'hostile-plan')!, folder, { problems: [problem] })
const block = pictureOfBlock(folder.find('block', 'hostile-block')!, folder, { problems: [problem] })
const nothing = { picture: null, team: null, log: null }
const views: Readonly<Record<Subject['kind'], Pick<PreviewData, 'picture' | 'team' | 'log'>>> = {
	plan: { ...nothing, picture: plan },
	block: { ...nothing, picture: block },
	team: { ...nothing, team: teamOverview(folder.find('team', 'hostile-team')!, folder, () => [problem]) },
	log: { ...nothing, log: plannedAgainstDone('guest-hostile', folder, () => place) },
}
/** How often such words stand in a view at least: each title, note and reason of it. */
const least = { plan: 12, block: 6, team: 6, log: 6 } as const

let files: string
let preview: PreviewPage

beforeAll(async () => {
	files = await mkdtemp(path.join(tmpdir(), 'barstave-hostile-'))
	preview = await PreviewPage.open(files)
}, 60_000)

afterAll(() => preview?.close(files))

const foreign = 'img, iframe, object, embed, form, a:not([href^="#"])'

test.each(Object.entries(views))('the view of a %s shows it as text, and nothing of it runs', async (kind, view) => {
	const chosen = { kind: kind as Subject['kind'], name: 'hostile' }
	const choices = [{ ...chosen, title: markup, lifterTitle: markup }]
	const stale = { message: markup, blocks: [] }
	await preview.page.evaluate(() => Object.assign(window, { ran: () => Object.assign(window, { hurt: true }) }))
	await preview.tell(show, { version: 1, choices, chosen, ...view, stale })
	const text = await preview.page.locator('#preview').evaluate(element => element.textContent ?? '')
	expect(text.split(markup).length - 1).toBeGreaterThanOrEqual(least[chosen.kind])
	expect(await preview.page.locator(`#preview :is(${foreign}, script, style)`).count()).toBe(0)
	expect(await preview.page.evaluate(() => 'hurt' in window)).toBe(false)
	expect(preview.complaints).toEqual([])
})

test.each(Object.entries({ plan, block }))('the exported page of a %s does the same', async (kind, picture) => {
	const file = path.join(files, `${kind}.html`)
	await writeFile(file, renderPage({ ...picture, locale: 'en-GB' }))
	const { page } = preview
	await page.goto(pathToFileURL(file).href)
	const text = await page.locator('body').evaluate(element => element.textContent ?? '')
	expect(text.split(markup).length - 1).toBeGreaterThanOrEqual(least[kind as keyof typeof least] - 2)
	expect(await page.locator(`${foreign}, script`).count()).toBe(0)
	expect(await page.locator('style').count()).toBe(1)
	expect(preview.complaints).toEqual([])
})
