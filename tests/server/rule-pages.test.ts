import { readdirSync } from 'node:fs'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Hover, MarkupContent } from 'vscode-languageserver'
import { rules } from '../../language/rules/registry.ts'
import { pathOf } from '../language/rules/harness/markdown.ts'
import { Editor, makeFolder } from './support/editor.ts'

let editor: Editor
beforeAll(async () => {
	editor = await Editor.start([await makeFolder({})])
})
afterAll(() => editor.stop())

const textAt = (uri: string) => editor.request<string>('barstave/libraryText', { uri })
const listedIn = (index: string) =>
	[...index.matchAll(/^- \[(.+?)\]\((.+?)\) \((.+?)\): (.+)$/gm)].map(([, code, uri, level, summary]) => ({
		code,
		uri,
		level,
		summary,
	}))

it('lists as many rules as there are codes and pages, each once, with its level and what it says', async () => {
	const listed = listedIn(await textAt('barstave-library:/rules/index.md'))
	const pages = readdirSync(pathOf('language/rules'), { recursive: true, encoding: 'utf8' })
		.filter(path => path.endsWith('.md') && !path.endsWith('.cases.md'))
		.map(path => path.replace(/^.*[\\/]/, '').replace(/\.md$/, ''))
	expect(listed.map(({ code, level, summary }) => ({ code, level, summary }))).toEqual(
		rules.map(({ code, level, summary }) => ({ code, level, summary })),
	)
	expect(pages.sort()).toEqual(listed.map(({ code }) => code).sort())
})

it('links to pages that are there, and from each of them back', async () => {
	for (const { code, uri } of listedIn(await textAt('barstave-library:/rules/index.md'))) {
		const page = await textAt(uri!)
		const rule = rules.find(one => one.code === code)!
		expect(page.startsWith(rule.page.trimEnd())).toBe(true)
		expect(page).toContain(`source: ${rule.source}`)
		expect(page).toContain('(barstave-library:/rules/index.md)')
	}
})

it('says so where there is no such page', async () => {
	expect(await textAt('barstave-library:/rules/no-such-rule.md')).toContain('Nothing built in is called')
})

describe('the reference of the language', () => {
	it('is read inside the editor, with links that lead to pages that are there', async () => {
		const seen = new Set<string>()
		const left = ['barstave-library:/reference/README.md']
		for (let uri = left.pop(); uri !== undefined; uri = left.pop()) {
			if (seen.has(uri)) continue
			seen.add(uri)
			const page = await textAt(uri)
			expect(page, uri).not.toContain('Nothing built in is called')
			const links = [...page.matchAll(/\]\(([^)]+)\)/g)].map(match => match[1]!.split('#')[0]!)
			for (const link of links.filter(one => one !== '')) {
				expect(link, uri).toMatch(/^(barstave-library:|https:)/)
				if (link.startsWith('barstave-library:/reference/')) left.push(link)
				else if (link.startsWith('barstave-library:')) expect(await textAt(link), uri).not.toContain('Nothing built in is called')
			}
		}
		expect(seen.size).toBeGreaterThan(12)
	})

	it.each([
		['plates 20 kg x 2', 'plates', 'gym.md#plates-the-discs'],
		['round down', 'round', 'gym.md#round'],
	])('says over a word of %s what it means', async (line, word, link) => {
		const folder = await makeFolder({ 'a.stave': `gym hall "Hall"\n  ${line}\n` })
		const other = await Editor.start([folder])
		const uri = await other.open(folder, 'a.stave')
		const hover = await other.request<Hover>('textDocument/hover', { textDocument: { uri }, position: { line: 1, character: 3 } })
		await other.stop()
		expect((hover.contents as MarkupContent).value).toContain(word)
		expect((hover.contents as MarkupContent).value).toContain(`(barstave-library:/reference/${link})`)
	})
})
