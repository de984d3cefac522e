import { readdirSync } from 'node:fs'
import { afterAll, beforeAll, expect, it } from 'vitest'
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
