// The page of a plan, printed by a real browser on both papers.
import { execFile } from 'node:child_process'
import { readdirSync } from 'node:fs'
import path from 'node:path'
import { pathToFileURL } from 'node:url'
import { promisify } from 'node:util'
import { describe, expect, test } from 'vitest'
import type { LoadSheet } from '../../language/reports/load-sheet.ts'
import { readPdf } from '../client/outputs/support/pdf.ts'
import { launchBrowser } from './workbench/browser.ts'
import { temporaryFolder } from './workbench/temporary-folder.ts'

const root = path.resolve(import.meta.dirname, '../..')
const club = path.join(root, 'examples/club')
const plans = readdirSync(path.join(club, 'plans')).map(name => path.basename(name, '.stave'))

async function barstave(...words: string[]): Promise<string> {
	return (await promisify(execFile)(process.execPath, [path.join(root, 'dist/barstave.cjs'), ...words], { cwd: club })).stdout
}

/** In points, with the little that a browser rounds. */
const papers = { A4: [595.3, 841.9], Letter: [612, 792] } as const

describe('a printed page', async () => {
	await using folder = await temporaryFolder()
	const browser = await launchBrowser()
	try {
		const page = await browser.newPage()
		for (const plan of plans) {
			const file = path.join(folder.path, `${plan}.html`)
			await barstave('sheet', plan, '--format', 'html', '--out', file)
			const sheet: LoadSheet = JSON.parse(await barstave('sheet', plan, '--format', 'json'))
			await page.goto(pathToFileURL(file).href)
			for (const paper of ['A4', 'Letter'] as const) {
				const { pages } = await readPdf(await page.pdf({ format: paper, printBackground: true }))
				test(`${plan} has its calendar, then one week a page on ${paper} with room to write, then the totals and the cautions`, () => {
					const weeks = [...new Set(sheet.sessions.map(session => session.planWeek))]
					const [calendar, ...others] = pages
					expect(calendar!.text).not.toContain('Felt, 0–10')
					for (const [index, week] of weeks.entries()) {
						const { text, width, height } = others[index]!
						expect(Math.abs(width - papers[paper][0])).toBeLessThan(1.5)
						expect(Math.abs(height - papers[paper][1])).toBeLessThan(1.5)
						expect(text).toMatch(new RegExp(`\\bWeek ${week}\\b`))
						for (const { date } of sheet.sessions.filter(session => session.planWeek === week)) expect(text).toContain(date)
						expect(text).toContain('Felt, 0–10')
					}
					const rest = others.slice(weeks.length).map(page => page.text)
					expect(rest[0]).toMatch(/^Weekly volume/)
					expect(rest.join(' ')).not.toContain('Felt, 0–10')
					expect(rest.at(-1)).toContain('no medical advice')
				})
			}
		}
	} finally {
		await browser.close()
	}
})
