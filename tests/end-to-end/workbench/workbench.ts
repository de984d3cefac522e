import path from 'node:path'
import type { FrameLocator, Locator, Page } from 'playwright-core'

const screenshots = path.resolve(import.meta.dirname, '../screenshots')

/** The workbench in the browser, driven by keys and mouse as a person does. */
export class Workbench {
	private constructor(readonly page: Page) {}

	/** Opens a folder, and waits until its files are shown. */
	static async open(
		page: Page,
		port: number,
		folder: string,
		payload: readonly (readonly [string, string])[] = [],
	): Promise<Workbench> {
		const url = new URL(`http://127.0.0.1:${port}/`)
		url.searchParams.set('folder', folder)
		if (payload.length > 0) url.searchParams.set('payload', JSON.stringify(payload))
		await page.goto(url.href)
		await page.locator('.monaco-workbench .explorer-folders-view').first().waitFor({ timeout: 60_000 })
		return new Workbench(page)
	}

	/** Opens a file by its path below the folder. */
	async openFile(file: string): Promise<void> {
		await this.#quickInput('Control+p', file, path.basename(file))
		await this.page.locator('.tab.active', { hasText: path.basename(file) }).waitFor()
		await this.editor.locator('.view-line').first().waitFor()
	}

	/** Runs a command by its title in the command palette. */
	async run(title: string): Promise<void> {
		await this.#quickInput('F1', `>${title}`, title)
	}

	/** Puts the cursor before a text. */
	async goTo({ line, column }: Place): Promise<void> {
		await this.#quickInput('Control+g', `:${line}:${column}`, 'Go to line')
	}

	/** Types over a text. */
	async typeOver(place: Place, replacement: string): Promise<void> {
		await this.goTo(place)
		for (let step = 0; step < place.text.length; step++) await this.page.keyboard.press('Shift+ArrowRight')
		await this.page.keyboard.type(replacement)
	}

	/** Rests the mouse on a text of the editor, and gives the box that opens. */
	async hover(place: Place): Promise<Locator> {
		await this.goTo(place)
		await this.page.keyboard.press('Escape')
		const box = await this.#boxOfCursor()
		// The mouse must move for the editor to notice it.
		await this.page.mouse.move(box.x + 40, box.y + 2)
		await this.page.mouse.move(box.x + 6, box.y + box.height / 2, { steps: 4 })
		const hover = this.page.locator('.monaco-hover:visible .hover-contents, .monaco-hover:visible .monaco-hover-content').first()
		await hover.waitFor({ timeout: 15_000 })
		return this.page.locator('.monaco-hover:visible').first()
	}

	/** The text editor that has the focus, or had it last. */
	get editor(): Locator {
		return this.page
			.locator('.editor-group-container.active .editor-instance .monaco-editor, .editor-instance .monaco-editor')
			.first()
	}

	/** Opens the Problems view, and gives its rows. */
	async problems(): Promise<Locator> {
		await this.run('Problems: Focus on Problems View')
		return this.page.locator('.markers-panel .monaco-list-row')
	}

	/** The page inside a webview, through the two frames that the editor puts around it. */
	get webview(): FrameLocator {
		return this.page.frameLocator('iframe.webview.ready').frameLocator('iframe#active-frame')
	}

	/** Keeps a picture for whoever looks into a failure, or at the looks. */
	async screenshot(name: string): Promise<void> {
		await this.page.screenshot({ path: path.join(screenshots, `${name}.png`) })
	}

	async #boxOfCursor() {
		const box = await this.page.locator('.editor-instance .cursors-layer .cursor').first().boundingBox()
		if (!box) throw new Error('The editor shows no cursor.')
		return box
	}

	async #quickInput(key: string, words: string, row: string): Promise<void> {
		await this.page.keyboard.press(key)
		const input = this.page.locator('.quick-input-widget:visible input').first()
		await input.waitFor()
		await input.fill(words)
		// The list follows the words a moment later; Enter takes what is marked then.
		await this.page.locator('.quick-input-widget .monaco-list-row.focused', { hasText: row }).waitFor()
		await this.page.keyboard.press('Enter')
		await input.waitFor({ state: 'hidden' })
	}
}

/** Where a text stands; line and column from 1. */
export interface Place {
	readonly text: string
	readonly line: number
	readonly column: number
}

/** Finds the place of `text` in a file, after the first occurrence of `after`. */
export function placeOf(file: string, text: string, after = ''): Place {
	const start = file.indexOf(text, file.indexOf(after))
	if (start < 0 || !file.includes(after)) throw new Error(`"${text}" does not stand after "${after}".`)
	const before = file.slice(0, start).split('\n')
	return { text, line: before.length, column: before.at(-1)!.length + 1 }
}
