import path from 'node:path'
import type { Frame, FrameLocator, Locator, Page } from 'playwright-core'
import type { ThemeKind } from './themes.ts'
import type { View } from './views.ts'

const screenshots = path.resolve(import.meta.dirname, '../screenshots')

/** The workbench in the browser, driven by keys and mouse as a person does. */
export class Workbench {
	readonly page: Page
	/** What ran that was only to be shown, and what a content policy had to stop. */
	readonly ran: string[] = []
	/** Faults of programs that nobody caught, in the window or in a page within it. */
	readonly faults: string[] = []

	private constructor(page: Page) {
		this.page = page
		page.on('pageerror', problem => this.faults.push(problem.stack ?? problem.message))
		page.on('console', message => {
			if (ofContentPolicy.test(message.text())) this.ran.push(`console: ${message.text()}`)
		})
	}

	/**
	 * Opens an editor that shows a folder, and waits until its files are there.
	 * @param language what the workbench tells extensions that it speaks; its own words stay English
	 */
	static async open(page: Page, url: string, language?: string): Promise<Workbench> {
		const bench = new Workbench(page)
		if (language !== undefined)
			await page.addInitScript(spoken => {
				Object.defineProperty(globalThis, '_VSCODE_NLS_LANGUAGE', { get: () => spoken, set: () => undefined })
			}, language)
		await page.exposeFunction('ran', (mark: unknown) => void bench.ran.push(`ran: ${mark}`))
		await page.goto(url)
		await bench.#whenReady()
		return bench
	}

	/** Loads the window again. The command, unlike the browser, lets the workbench first keep what is open. */
	async reload(): Promise<void> {
		const loaded = this.page.waitForEvent('load')
		await this.run('Developer: Reload Window')
		await loaded
		await this.#whenReady()
	}

	async #whenReady(): Promise<void> {
		await this.page.locator('.monaco-workbench .explorer-folders-view').first().waitFor({ timeout: 60_000 })
	}

	/** Opens a file by its path below the folder. */
	async openFile(file: string): Promise<void> {
		await this.#quickInput('Control+p', file, path.basename(file))
		await this.page.locator('.tab.active', { hasText: path.basename(file) }).waitFor()
		await this.editor.locator('.view-line').first().waitFor()
	}

	/** Opens a file that lies in the folder itself. Not every editor finds new files by their names. */
	async openFromExplorer(file: string): Promise<void> {
		await this.page.locator('.explorer-folders-view .monaco-list-row', { hasText: file }).dblclick()
		await this.page.locator('.tab.active', { hasText: file }).waitFor()
		await this.editor.locator('.view-line').first().waitFor()
	}

	/** Runs a command by its title in the command palette. */
	async run(title: string): Promise<void> {
		await this.#quickInput('F1', `>${title}`, title)
	}

	/** Puts the cursor before a text. */
	async goTo({ line, column }: Place): Promise<void> {
		await this.#quickInput('Control+g', `:${line}:${column}`, 'Go to line')
		// The cursor follows a moment after the list; the status bar says where it is.
		await this.page
			.locator('#status\\.editor\\.selection', { hasText: new RegExp(`^\\D*${line}\\D`) })
			.waitFor({ state: 'attached' })
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
		// The workbench has boxes of the same kind for its own lists, open where the mouse last was; and one opens before its words are there.
		const hover = this.page.locator('.monaco-hover:not(.workbench-hover):visible', { hasNotText: 'Loading...' }).first()
		for (let attempt = 1; ; attempt++) {
			// The editor opens the box where the mouse first rests, and keeps it: so it comes from far away, and moves on the text alone.
			await this.page.mouse.move(0, 0)
			await hover.waitFor({ state: 'hidden' })
			const box = await this.#boxOfCursor()
			await this.page.mouse.move(box.x + 6, box.y + 2)
			await this.page.mouse.move(box.x + 6, box.y + box.height / 2, { steps: 4 })
			const opens = hover.locator('.hover-contents, .monaco-hover-content').first().waitFor({ timeout: 4_000 })
			if (
				await opens.then(
					() => true,
					() => false,
				)
			)
				return hover
			if (attempt === 5) throw new Error(`Resting on "${place.text}" opens nothing.`)
		}
	}

	/** Gives the name at a place another one. */
	async rename(place: Place, name: string): Promise<void> {
		await this.goTo(place)
		await this.page.keyboard.press('F2')
		const box = this.page.locator('.rename-box input')
		await box.waitFor()
		await box.fill(name)
		await this.page.keyboard.press('Enter')
		await box.waitFor({ state: 'hidden' })
	}

	/** The item of the status bar with a label for those who hear it. */
	statusItem(label: string): Locator {
		return this.page.locator(`.statusbar-item [aria-label^="${label}"]`)
	}

	/** Picks from the list that is open by typing words of the row. */
	async pick(words: string, row: string): Promise<void> {
		await this.#choose(words, row)
	}

	/** Answers a dialog for a folder or a file with a path. */
	async fillDialog(path: string, button: string): Promise<void> {
		const input = this.page.locator('.quick-input-widget:visible input').first()
		await input.waitFor()
		// The dialog writes its own proposal a moment after it opens, also over what stands there already.
		for (let rested = 0; rested < 3; ) {
			if ((await input.inputValue()) === path) rested++
			else {
				rested = 0
				await input.fill(path)
			}
			await this.page.waitForTimeout(150)
		}
		await this.page.locator('.quick-input-widget').getByRole('button', { name: button }).click()
		await input.waitFor({ state: 'hidden' })
	}

	/** Takes back what was typed, until a line stands there again. */
	async undoUntil(line: string): Promise<void> {
		for (let step = 0; step < 20 && !(await this.lines()).includes(line); step++) await this.page.keyboard.press('Control+z')
		if (!(await this.lines()).includes(line)) throw new Error(`"${line}" does not come back.`)
	}

	/** The lines of the text that are in sight. */
	async lines(): Promise<string[]> {
		const lines = await this.editor.locator('.view-line').allTextContents()
		return lines.map(line => line.replaceAll('\u00a0', ' '))
	}

	/** The load of the first main work of a lift, as the preview shows it. */
	async loadInPreview(lift: string): Promise<string | undefined> {
		const row = this.webview.locator('tr.sets.main', { hasText: lift }).first()
		return (await row.locator('td.load strong').textContent())?.replaceAll('\u00a0', ' ')
	}

	/** The text editor that has the focus, or had it last. */
	get editor(): Locator {
		return this.page
			.locator('.editor-group-container.active .editor-instance .monaco-editor, .editor-instance .monaco-editor')
			.first()
	}

	/** Opens the Problems view, and gives its rows; of many, only those on the screen are there. */
	async problems(): Promise<Locator> {
		await this.run('Problems: Focus on Problems View')
		return this.page.locator('.markers-panel .monaco-list-row')
	}

	/** Opens the Problems view with the rows that have a text, until `restore` shows all again. */
	async problemsWith(text: string): Promise<{ readonly rows: Locator; restore(): Promise<void> }> {
		await this.problems()
		await this.page.keyboard.press('Control+f')
		await this.page.keyboard.type(text)
		return {
			rows: this.page.locator('.markers-panel .monaco-list-row', { hasText: text }),
			restore: () => this.page.keyboard.press('Escape'),
		}
	}

	/** The page inside a webview, through the two frames that the editor puts around it. */
	get webview(): FrameLocator {
		return this.page.frameLocator('iframe.webview.ready').frameLocator('iframe#active-frame')
	}

	/** Gives the editor other colours, and waits until the preview, where there is one, has them. */
	async setTheme({ title, body }: ThemeKind): Promise<void> {
		await this.page.keyboard.press('Control+k')
		await this.page.keyboard.press('Control+t')
		await this.#choose(title, title)
		if ((await this.page.locator('iframe.webview.ready').count()) > 0) await this.webview.locator(`body.${body}`).waitFor()
		// The editor fades from one theme to the next.
		await this.page.waitForTimeout(500)
	}

	/** Leaves the preview: a text that is opened while it has the focus takes its place. */
	async focusText(): Promise<void> {
		const tab = this.page.locator('.tabs-container .tab').first()
		if (await tab.isVisible()) await tab.click()
	}

	/** Opens a view in the preview, beside the text that leads to it. */
	async showView({ file, picked, heading }: View): Promise<void> {
		await this.focusText()
		await this.openFile(file)
		await this.run('Barstave: Open preview beside the text')
		await this.webview.locator('main').waitFor()
		await this.followInPreview()
		if (picked !== undefined) await this.pickInPreview(picked)
		await this.webview.getByRole('heading', { name: heading, exact: true }).waitFor()
	}

	/** Picks what the preview shows, by the words of its list. */
	async pickInPreview(choice: string): Promise<void> {
		await this.webview.getByRole('combobox').click()
		await this.webview.getByRole('option', { name: choice }).click()
	}

	/** Lets the preview follow the cursor again. */
	async followInPreview(): Promise<void> {
		const follow = this.webview.getByRole('checkbox')
		if (!(await follow.isChecked())) await this.webview.locator('vscode-checkbox').click()
	}

	/** Makes the window as high as what the preview shows, so that a picture has all of it. */
	async growToContent(most: number): Promise<void> {
		const view = this.page.viewportSize()!
		const [content, room] = await this.webview.locator('html').evaluate(html => [html.scrollHeight, html.clientHeight] as const)
		await this.page.setViewportSize({ width: view.width, height: Math.min(most, view.height + content - room) })
	}

	/** A picture of the preview alone. */
	async pictureOfPreview(file: string): Promise<void> {
		await this.page.mouse.move(0, 0)
		await this.page.locator('iframe.webview.ready').screenshot({ path: file })
	}

	/** The same as a frame, for what must run in it. */
	async webviewFrame(): Promise<Frame> {
		const html = await this.webview.locator('html').elementHandle()
		return (await html!.ownerFrame())!
	}

	/** Keeps a picture for whoever looks into a failure, or at the looks. */
	async screenshot(name: string): Promise<void> {
		await this.page.screenshot({ path: path.join(screenshots, `${name}.png`) })
	}

	/** Where the cursor stands on the screen, once it and the lines have come to rest. */
	async #boxOfCursor() {
		const cursor = this.page.locator('.editor-instance .cursors-layer .cursor').first()
		for (let before = await cursor.boundingBox(); ; ) {
			await this.page.waitForTimeout(150)
			const box = await cursor.boundingBox()
			if (!box) throw new Error('The editor shows no cursor.')
			if (box.x === before?.x && box.y === before.y) return box
			before = box
		}
	}

	async #quickInput(key: string, words: string, row: string): Promise<void> {
		await this.page.keyboard.press(key)
		await this.#choose(words, row)
	}

	/** Types into the list that is open, and takes the row that is marked then. */
	async #choose(words: string, row: string): Promise<void> {
		const input = this.page.locator('.quick-input-widget:visible input').first()
		await input.waitFor()
		await input.fill(words)
		// The list follows the words a moment later; Enter takes what is marked then.
		await this.page.locator('.quick-input-widget .monaco-list-row.focused', { hasText: row }).waitFor()
		await this.page.keyboard.press('Enter')
	}
}

const ofContentPolicy = /content security policy|refused to/i

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
