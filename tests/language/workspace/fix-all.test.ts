import { readdirSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { fileProblems } from '../../../language/workspace/file-problems.ts'
import { fixAll } from '../../../language/workspace/fix-all.ts'
import { Folder } from '../../../language/workspace/folder.ts'
import { TextReader } from '../../../language/workspace/text-file.ts'
import { textsBelow } from '../../support/texts.ts'

const reader = new TextReader()

function folderOf(texts: Readonly<Record<string, string>>): Folder {
	const folder = new Folder(reader)
	for (const [name, text] of Object.entries(texts)) folder.setFile(`file:///${name}`, text)
	return folder
}

const count = (folder: Folder, uri: string, code: string) => fileProblems(folder, uri).filter(one => one.code === code).length

/** Written as a coach in a hurry would: what reads in part, what a correction brings up, and what is not to be corrected. */
const hurried = `lifter ann “Ann”
  bodyweight 68,4 kg
  best deadlift 160kg on 5.10.2026
block b "B"
  weeks 2
  session s on munday
    main deadlift 4x5 72,5%
    accessory plank 3x30 s
      week 1 - 2: 3x30 s
plan p for ann
  start 2026-10-05
  run b
`

describe('all safe corrections', () => {
	const folders = ['club', ...readdirSync('examples/faults').map(name => `faults/${name}`)]
	it.each(folders)('settle in %s: nothing is left to correct, and nothing becomes unreadable', name => {
		const folder = folderOf(textsBelow(`examples/${name}`))
		for (const uri of folder.fileUris()) {
			const before = count(folder, uri, 'syntax')
			const { rounds } = fixAll(folder, uri)
			expect(rounds.length).toBeLessThan(10)
			expect(fixAll(folder, uri).made).toBe(0)
			expect(count(folder, uri, 'syntax')).toBeLessThanOrEqual(before)
		}
	})

	it('take several rounds where one brings up another', () => {
		const folder = folderOf({ 'a.stave': hurried })
		const { text, rounds, made } = fixAll(folder, 'file:///a.stave')
		expect(made).toBeGreaterThan(3)
		expect(rounds.flat().length).toBeGreaterThanOrEqual(made)
		expect(text).toContain('bodyweight 68.4 kg')
		expect(text).toContain('"Ann"')
		expect(text).toContain('160 kg')
		expect(fixAll(folder, 'file:///a.stave').made).toBe(0)
	})

	it('make no note of words that have no form: what they mean is for the coach to say', () => {
		const lines = ['fails deadlift with back-rounding most days', 'best back-squat 100kg mostly', 'plays at midnight']
		const text = `lifter ann "Ann"\n  best deadlift 160kg on 5.10.2026\n${lines.map(line => `  ${line}\n`).join('')}`
		const folder = folderOf({ 'a.stave': text })
		const titles = fileProblems(folder, 'file:///a.stave').flatMap(problem => problem.corrections.map(({ title }) => title))
		expect(titles).toEqual(expect.arrayContaining(['Keep it as a note', 'Keep the line as a note']))
		const corrected = fixAll(folder, 'file:///a.stave').text
		expect(corrected).toContain('best deadlift 160 kg on 2026-10-05')
		for (const line of lines) expect(corrected).toContain(`  ${line}\n`)
	})

	it('guess no role of work, and no year', () => {
		const lines = ['deadlift 3 x 5 at 100 kg', 'plank 3 x 30 s', 'start 5.10.', 'pause 5.10.2026 to 6.12.2026 because "away"']
		const [deadlift, plank, start, pause] = lines
		const block = `block b "B"\n  weeks 2\n  session s on Mon\n    ${deadlift}\n    ${plank}\n`
		const text = `${block}plan p for ann\n  ${start}\n  run b\n  ${pause}\n  meet 2026-12-19 "Winter meet"\n`
		const folder = folderOf({ 'a.stave': text })
		const corrected = fixAll(folder, 'file:///a.stave').text
		expect(corrected).toContain('session s on monday')
		for (const line of lines) expect(corrected).toContain(line)
	})

	it('are tried out in a copy that leaves the folder as it is', () => {
		const folder = folderOf({ 'a.stave': hurried })
		const before = fileProblems(folder, 'file:///a.stave')
		const copy = folder.copy()
		expect(fixAll(copy, 'file:///a.stave').text).not.toBe(hurried)
		expect(folder.file('file:///a.stave')?.text).toBe(hurried)
		expect(fileProblems(folder, 'file:///a.stave')).toEqual(before)
		expect(fileProblems(copy, 'file:///a.stave').length).toBeLessThan(before.length)
	})
})
