// Exported pages in a real browser under axe: light and dark, with more contrast, and with the reader's own colours.
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { renderPage } from '../../../client/views/page.tsx'
import { pictureOfBlock, pictureOfPlan } from '../../../language/reports/picture.ts'
import { Folder } from '../../../language/workspace/folder.ts'
import { TextReader } from '../../../language/workspace/text-file.ts'
import { launchBrowser } from '../../end-to-end/workbench/browser.ts'
import { violationsIn } from '../../support/axe.ts'
import { textsBelow } from '../../support/texts.ts'

const folder = new Folder(new TextReader())
for (const [name, text] of Object.entries(textsBelow('examples/club'))) folder.setFile(name, text)
const pages = {
	plan: renderPage({ ...pictureOfPlan(folder.find('plan', 'mara-autumn')!, folder, { problems: [] }), locale: 'en-GB' }),
	block: renderPage({ ...pictureOfBlock(folder.find('block', 'hinge-rebuild')!, folder, { problems: [] }), locale: null }),
}
const looks = {
	light: { colorScheme: 'light' },
	dark: { colorScheme: 'dark' },
	'light with more contrast': { colorScheme: 'light', contrast: 'more' },
	'dark with more contrast': { colorScheme: 'dark', contrast: 'more' },
	'the colours of the system': { colorScheme: 'light', forcedColors: 'active' },
} as const

let browser: Browser
let page: Page

beforeAll(async () => {
	browser = await launchBrowser()
	page = await browser.newPage({ viewport: { width: 1000, height: 800 } })
}, 60_000)

afterAll(() => browser?.close())

describe.each(Object.entries(pages))('the page of a %s', (_, html) => {
	it.each(Object.entries(looks))(
		'has no fault that axe knows, in %s',
		async (_name, look) => {
			await page.emulateMedia({ contrast: null, forcedColors: null, ...look })
			await page.setContent(html)
			expect(await violationsIn(page)).toEqual([])
		},
		60_000,
	)
})
