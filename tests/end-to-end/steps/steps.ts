import type { Locator } from 'playwright-core'
import { expect } from 'vitest'
import { placeOf, type Workbench } from '../workbench/workbench.ts'
import { hostile } from './hostile.ts'
import type { Step } from './names.ts'

/** What a person does at a workbench on the example club with the texts of `hostile` in it. One after the other: each leaves the texts as it found them. */
export const steps: Readonly<Record<Step, (bench: Workbench, club: Club) => Promise<void>>> = {
	'a wrong name is underlined while it is typed': async (bench, { plan }) => {
		await bench.openFile('plans/mara-autumn.stave')
		await bench.typeOver(placeOf(plan, 'rebuild', 'run hinge'), 'rebuilt')
		await bench.editor.locator('.squiggly-error').first().waitFor()
	},
	'the problem is in the list of problems': async bench => {
		const { rows, restore } = await bench.problemsWith('hinge-rebuilt')
		const row = rows.filter({ hasText: 'unknown-name' })
		await row.waitFor()
		expect(await row.textContent()).toMatch(/hinge-rebuilt.*hinge-rebuild/)
		await restore()
	},
	'a quick fix corrects it': async (bench, { plan }) => {
		await bench.openFile('plans/mara-autumn.stave')
		await bench.goTo(placeOf(plan, 'hinge-rebuild', 'run'))
		await bench.page.keyboard.press('Control+.')
		await bench.page.locator('.action-widget .monaco-list-row.focused', { hasText: 'hinge-rebuild' }).waitFor()
		await bench.page.keyboard.press('Enter')
		await expect.poll(() => bench.lines()).toContain('  run hinge-rebuild')
		await bench.editor.locator('.squiggly-error').first().waitFor({ state: 'detached' })
	},
	'resting on a load tells how it came about': async (bench, { block }) => {
		await bench.openFile('blocks/hinge-rebuild.stave')
		const hover = await bench.hover(placeOf(block, '70', 'week 1'))
		expect(await hover.textContent()).toContain('70% of 160 kg = 112 kg')
	},
	'completion offers what fits': async (bench, { block }) => {
		await bench.openFile('blocks/hinge-rebuild.stave')
		await bench.typeOver(placeOf(block, 'side-plank'), 'romanian')
		await bench.page.locator('.suggest-widget.visible .monaco-list-row.focused', { hasText: 'romanian-deadlift' }).waitFor()
		await bench.page.keyboard.press('Enter')
		await expect.poll(() => bench.lines()).toContain('    accessory romanian-deadlift 3 x 30 s each side')
		await bench.undoUntil('    accessory side-plank 3 x 30 s each side')
	},
	'the loads stand behind the percents': async (bench, { block }) => {
		await bench.openFile('blocks/hinge-rebuild.stave')
		await bench.goTo(placeOf(block, '70', 'week 1'))
		await expect.poll(() => bench.lines()).toContainEqual(expect.stringMatching(/week 1: 4 x 5 at 70%.*112\.5 kg/))
	},
	'a name changes in all files at once': async (bench, { block }) => {
		await bench.openFile('blocks/hinge-rebuild.stave')
		await bench.rename(placeOf(block, 'hinge-rebuild', '\nblock'), 'hinge-again')
		await expect.poll(() => bench.lines()).toContain('block hinge-again "Hinge rebuild"')
		await bench.openFile('plans/mara-autumn.stave')
		await expect.poll(() => bench.lines()).toContain('  run hinge-again')
		await bench.openFile('blocks/hinge-rebuild.stave')
		await bench.rename(placeOf(block, 'hinge-rebuild', '\nblock'), 'hinge-rebuild')
		await expect.poll(() => bench.lines()).toContain('block hinge-rebuild "Hinge rebuild"')
		await bench.openFile('plans/mara-autumn.stave')
		await expect.poll(() => bench.lines()).toContain('  run hinge-rebuild')
	},
	'a text is laid out when it is saved': async (bench, { plan }) => {
		await bench.openFile('plans/mara-autumn.stave')
		await bench.typeOver(placeOf(plan, ' ', 'run'), '    ')
		await expect.poll(() => bench.lines()).toContain('  run    hinge-rebuild')
		await bench.page.keyboard.press('Control+s')
		await expect.poll(() => bench.lines()).toContain('  run hinge-rebuild')
		await bench.page.locator('.tab.active:not(.dirty)').waitFor()
	},
	'the outline has the sessions of a block': async bench => {
		await bench.openFile('blocks/hinge-rebuild.stave')
		await bench.run('Explorer: Focus on Outline View')
		const rows = bench.page.locator('.outline-pane .monaco-list-row')
		// The list holds only what there is room for.
		for (const title of ['Hinge rebuild', 'Heavy pull']) await rows.filter({ hasText: title }).first().waitFor()
	},
	'the preview shows the loads of the plan that runs the block': async bench => {
		await bench.openFile('blocks/hinge-rebuild.stave')
		await bench.run('Barstave: Open preview beside the text')
		await bench.webview.getByRole('heading', { name: 'Mara, to the regionals' }).waitFor()
		await expect.poll(() => bench.loadInPreview('Deadlift')).toBe('112.5 kg')
	},
	'the preview follows the keys': async (bench, { block }) => {
		await bench.openFile('blocks/hinge-rebuild.stave')
		await bench.typeOver(placeOf(block, '70', 'week 1'), '75')
		await expect.poll(() => bench.loadInPreview('Deadlift')).toBe('120 kg')
		await bench.typeOver(placeOf(block, '70', 'week 1'), '70')
		await expect.poll(() => bench.loadInPreview('Deadlift')).toBe('112.5 kg')
	},
	'only what a key changes is drawn again in the preview': async (bench, { block }) => {
		await bench.openFile('blocks/hinge-rebuild.stave')
		await expect.poll(() => bench.loadInPreview('Deadlift')).toBe('112.5 kg')
		const frame = await bench.webviewFrame()
		await frame.evaluate(() => {
			const touched: string[] = []
			Object.assign(window, { touched })
			new MutationObserver(changes => {
				for (const { target, type, addedNodes, removedNodes } of changes) {
					const element = target instanceof Element ? target : target.parentElement
					const week = element?.closest('section.week')?.id
					// Lit sets move with the cursor.
					if (type === 'attributes' && element?.matches('tr.sets')) continue
					for (const node of [...addedNodes, ...removedNodes]) if (node.nodeName === 'MAIN') touched.push('all of it')
					if (week !== undefined && week !== 'week-1') touched.push(week)
					if (element?.closest('.calendar, .gates')) touched.push('calendar or gates')
				}
			}).observe(document.body, { subtree: true, childList: true, characterData: true, attributes: true })
		})
		await bench.typeOver(placeOf(block, '70', 'week 1'), '75')
		await expect.poll(() => bench.loadInPreview('Deadlift')).toBe('120 kg')
		await bench.typeOver(placeOf(block, '70', 'week 1'), '70')
		await expect.poll(() => bench.loadInPreview('Deadlift')).toBe('112.5 kg')
		expect(await frame.evaluate(() => (window as unknown as { touched: string[] }).touched)).toEqual([])
	},
	'a broken text keeps the last picture, and says so': async (bench, { block }) => {
		await bench.openFile('blocks/hinge-rebuild.stave')
		const place = placeOf(block, 'deadlift', 'main')
		await bench.typeOver(place, '@@@')
		await bench.webview.locator('.warning', { hasText: 'Hinge rebuild' }).waitFor()
		expect(await bench.loadInPreview('Deadlift')).toBe('112.5 kg')
		expect(await bench.webview.locator('section.week.stale').count()).toBe(5)
		await bench.typeOver({ ...place, text: '@@@' }, 'deadlift')
		await bench.page.keyboard.press('Escape')
		await bench.webview.locator('section.week.stale').first().waitFor({ state: 'detached' })
		await expect.poll(() => bench.loadInPreview('Deadlift')).toBe('112.5 kg')
	},
	'a click on a set goes to its very text, and the cursor lights the set': async (bench, { block }) => {
		await bench.openFile('blocks/hinge-rebuild.stave')
		await bench.goTo(placeOf(block, 'weeks'))
		// The bench press stands twice in week 1: on squat day, and lighter on position day.
		const rows = bench.webview.locator('#week-1 tr.sets.main', { hasText: 'Bench press' })
		expect(await rows.count()).toBe(2)
		await rows.last().getByRole('button').click()
		const { line, column, text } = placeOf(block, '4 x 6 at 67.5%')
		const selected = `Ln ${line}, Col ${column + text.length} (${text.length} selected)`
		await bench.statusItem(selected).waitFor()
		await bench.webview.locator('#week-1 tr.sets.lit', { hasText: '4 × 6' }).first().waitFor()
		expect(await bench.webview.locator('#week-1 tr.sets.lit').count()).toBe(1)
		await bench.focusText()
	},
	'what is picked in the preview stays, until it follows the cursor again': async bench => {
		await bench.pickInPreview('Tom Aas · Tom, first winter')
		await bench.webview.getByRole('heading', { name: 'Tom, first winter' }).waitFor()
		await bench.focusText()
		await bench.openFile('blocks/hinge-rebuild.stave')
		await bench.webview.getByRole('heading', { name: 'Tom, first winter' }).waitFor()
		await bench.followInPreview()
		await bench.webview.getByRole('heading', { name: 'Mara, to the regionals' }).waitFor()
		await bench.focusText()
	},
	'the panel lets nothing in but its own script and style': async bench => {
		const page = bench.webview.locator('#preview')
		await page.waitFor()
		// What a text could try if it were not shown as text.
		const outcome = await page.evaluate(async element => {
			const script = document.createElement('script')
			script.textContent = 'document.documentElement.dataset.hurt = "script"'
			element.ownerDocument.body.append(script)
			const image = document.createElement('img')
			image.setAttribute('onerror', 'document.documentElement.dataset.hurt = "handler"')
			image.src = 'x'
			element.ownerDocument.body.append(image)
			const reached = await fetch('https://example.invalid/').then(
				() => true,
				() => false,
			)
			await new Promise(resolve => setTimeout(resolve, 300))
			script.remove()
			image.remove()
			return { hurt: document.documentElement.dataset.hurt ?? null, reached }
		})
		expect(outcome).toEqual({ hurt: null, reached: false })
		expect(bench.ran.length, 'the browser says what it has stopped').toBeGreaterThan(0)
		bench.ran.length = 0
	},
	'the status bar says whose loads are shown, and others can be chosen': async bench => {
		await bench.openFile('blocks/pull-drive.stave')
		const item = bench.statusItem('Loads are those of')
		await expect.poll(() => item.textContent()).toContain('Jon Marrow')
		await item.click()
		await bench.pick('Per Holst', 'per-holst')
		await expect.poll(() => item.textContent()).toContain('Per Holst')
		await bench.run('Barstave: Choose whose loads are shown')
		await bench.pick('Those of the file', 'Those of the file in front')
		await expect.poll(() => item.textContent()).toContain('Jon Marrow')
	},
	'the sheet of a plan opens by its name': async bench => {
		await bench.run('Barstave: Open the sheet of a plan')
		await bench.pick('rosa', 'Rosa, autumn')
		await bench.webview.getByRole('heading', { name: 'Rosa, autumn' }).waitFor()
	},
	'above a block stands who runs it, and a way to the sheet': async bench => {
		await bench.openFile('blocks/pull-drive.stave')
		const lenses = bench.editor.locator('.codelens-decoration')
		await lenses.filter({ hasText: 'Jon Marrow' }).first().waitFor()
		await lenses.getByRole('button', { name: 'Open the sheet of Per Holst' }).click()
		await bench.webview.getByRole('heading', { name: 'Per, autumn' }).waitFor()
	},
	'what the preview shows is saved as a calendar, a PDF and a page': async (bench, { root }) => {
		await bench.openFile('plans/mara-autumn.stave')
		await bench.run('Barstave: Open the sheet of a plan')
		await bench.pick('mara', 'Mara, to the regionals')
		await bench.page.locator('.tab', { hasText: 'Preview: Mara, to the regionals' }).click()
		const saved = async (format: string, file: string) => {
			const told = await saveAs(bench, format, `${root}/${file}`)
			await told.filter({ hasText: `"${file}" is written.` }).waitFor()
			await told.hover()
			await told.getByRole('button', { name: 'Clear Notification' }).click()
		}
		await bench.page.locator('.editor-actions').getByRole('button', { name: 'Save the sheet as a file' }).click()
		await saved('Calendar', 'mara.ics')
		await bench.page.locator('.tab', { hasText: 'mara-autumn.stave' }).click()
		await bench.openFromExplorer('mara.ics')
		await expect.poll(() => bench.lines()).toContain('UID:mara-autumn.hinge-rebuild-1.week-1.heavy-pull@mara-lind.barstave')
		expect(await bench.lines()).toContain('DTSTART;VALUE=DATE:20261005')
		await bench.openFile('plans/mara-autumn.stave')
		await bench.run('Barstave: Save the sheet as a file')
		await saved('PDF, A4', 'mara.pdf')
		await bench.run('Barstave: Save the sheet as a file')
		await saved('Page', 'mara.html')
		await bench.openFromExplorer('mara.html')
		await expect.poll(() => bench.lines()).toContainEqual(expect.stringContaining('<!doctype html>'))
	},
	'a calendar has the times that the settings say, and is written without them where they are unclear': async (
		bench,
		{ root },
	) => {
		const say = async (before: string, now: string) => {
			await bench.openFile('.vscode/settings.json')
			await expect.poll(() => bench.lines()).toContainEqual(expect.stringContaining(`"${before}"`))
			const text = (await bench.lines()).join('\n')
			await bench.typeOver(placeOf(text, before, 'barstave.calendar.begin'), now)
			await bench.page.keyboard.press('Control+s')
			await bench.page.locator('.tab.active:not(.dirty)').waitFor()
		}
		const saved = async (file: string) => {
			await bench.openFile('plans/mara-autumn.stave')
			await bench.run('Barstave: Save the sheet as a file')
			return saveAs(bench, 'Calendar', `${root}/${file}`)
		}
		await say('evening 18:30', '7')
		const told = await saved('mara-unclear.ics')
		await told.filter({ hasText: 'every session in it takes the whole day. In the settings write "7:00" or "19:00"' }).waitFor()
		await told.getByRole('button', { name: 'Open the settings' }).click()
		// The settings lie over everything else.
		const settings = bench.page.locator('.monaco-modal-editor-block')
		await settings.locator('.settings-editor', { hasText: 'When sessions begin' }).waitFor()
		await settings.getByRole('button', { name: 'Close Modal Editor' }).click()
		await bench.openFromExplorer('mara-unclear.ics')
		await expect.poll(() => bench.lines()).toContain('DTSTART;VALUE=DATE:20261005')
		await say('7', '17:30')
		const toldAgain = await saved('mara-timed.ics')
		await toldAgain.filter({ hasText: '"mara-timed.ics" is written.' }).waitFor()
		await bench.openFromExplorer('mara-timed.ics')
		await expect.poll(() => bench.lines()).toContain('DTSTART:20261005T173000')
		expect(await bench.lines()).toContain('UID:mara-autumn.hinge-rebuild-1.week-1.heavy-pull@mara-lind.barstave')
		await say('17:30', 'evening 18:30')
	},
	'what somebody has written is shown as text, and nothing of it runs': async bench => {
		await bench.openFile(hostile.file)
		await bench.run('Barstave: Open the sheet of a plan')
		await bench.pick(hostile.plan, hostile.plan)
		for (const { choice, heading } of hostile.views) {
			await bench.pickInPreview(choice)
			await bench.webview.getByRole('heading', { name: heading, level: 1 }).waitFor()
			// Not what a chart draws with, which is the library's own.
			const foreign = bench.webview.locator('#preview').locator('img, script, style, iframe, a:not([href^="#"])')
			expect(await foreign.count()).toBe(0)
		}
		await bench.followInPreview()
		await bench.focusText()
		await bench.openFile(hostile.file)
		for (const name of hostile.names) {
			const hover = await bench.hover(placeOf(hostile.files[hostile.file], name.at, name.after))
			expect(await hover.locator('img, script, a[href^="javascript:"], a[data-href^="command:"]').count()).toBe(0)
			expect(await hover.textContent()).toContain(name.shows)
		}
		expect(bench.ran).toEqual([])
	},
	'a first workspace is written into an empty folder, and into no other': async (bench, { root }) => {
		const told = bench.page.locator('.notification-toast', { hasText: 'is not empty' })
		await bench.run('Barstave: Write a first workspace')
		await bench.fillDialog(`${root}/plans/`, 'Write them here')
		await told.waitFor()
		await told.getByRole('button', { name: 'Choose another one' }).click()
		await bench.fillDialog(`${root}/empty/`, 'Write them here')
		await bench.page.locator('.tab.active', { hasText: 'gym.stave' }).waitFor()
		await expect.poll(() => bench.lines()).toContain('gym first-gym "Our gym"')
		await bench.openFile('empty/plan.stave')
		await expect.poll(() => bench.statusItem('Loads are those of').textContent()).toContain('First Lifter')
	},
	'after a reload everything is there again': async bench => {
		await bench.openFile('blocks/hinge-rebuild.stave')
		await bench.run('Barstave: Open the sheet of a plan')
		await bench.pick('mara', 'Mara, to the regionals')
		await bench.webview.getByRole('heading', { name: 'Mara, to the regionals' }).waitFor()
		await bench.reload()
		await bench.webview.getByRole('heading', { name: 'Mara, to the regionals' }).waitFor()
		await expect.poll(() => bench.loadInPreview('Deadlift')).toBe('112.5 kg')
	},
	'no program has failed on the way': async bench => {
		expect(bench.faults).toEqual([])
	},
}

/** The club before anything is typed. */
export interface Club {
	/** Where it lies for the editor. */
	readonly root: string
	readonly plan: string
	readonly block: string
}

/** Picks a format and a place for a file; gives what the editor then tells about it. */
async function saveAs(bench: Workbench, format: string, to: string): Promise<Locator> {
	await bench.pick(format, format)
	await bench.fillDialog(to, 'OK')
	return bench.page.locator('.notification-toast', { hasText: to.split('/').at(-1)! })
}
