import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { getL10nJson } from '@vscode/l10n-dev'
import ts from 'typescript'
import { describe, expect, test } from 'vitest'

const root = path.resolve(import.meta.dirname, '../../..')
const read = (file: string) => readFileSync(path.join(root, file), 'utf8')
const json = (file: string): Record<string, unknown> => JSON.parse(read(file))

/** What the extension and its panel are made of; the command line speaks English. */
const sources = ['client/editor', 'client/preview', 'client/views'].flatMap(folder =>
	readdirSync(path.join(root, folder), { recursive: true, encoding: 'utf8' })
		.filter(file => /\.tsx?$/.test(file) && !file.endsWith('.d.ts'))
		.map(file => path.join(folder, file)),
)

/** `{0}` and `{1}`, sorted. */
const places = (text: unknown) => [...String(text).matchAll(/\{\d+\}/g)].map(([place]) => place).sort()

describe('the manifest', () => {
	const manifest = json('package.json')
	const english = json('package.nls.json')
	const german = json('package.nls.de.json')

	test('everything that people read stands under a key', () => {
		const isRead = /^(title|description|markdownDescription|enumDescriptions|markdownEnumDescriptions|label|shortTitle|altText)$/
		const plain: string[] = []
		const look = (value: unknown, name: string) => {
			if (typeof value === 'string' && isRead.test(name) && !/^%.+%$/.test(value) && value !== 'Barstave') plain.push(value)
			if (Array.isArray(value)) for (const one of value) look(one, name)
			else if (typeof value === 'object' && value !== null) for (const [key, one] of Object.entries(value)) look(one, key)
		}
		look(manifest.contributes, 'contributes')
		look(manifest.description, 'description')
		expect(plain).toEqual([])
	})

	test('every key that is used has its English, and no other', () => {
		const used = [...read('package.json').matchAll(/"%([^%"]+)%"/g)].map(([, key]) => key)
		expect(Object.keys(english).sort()).toEqual([...new Set(used)].sort())
	})

	test('every key has its German', () => {
		expect(Object.keys(german).sort()).toEqual(Object.keys(english).sort())
		for (const [key, text] of Object.entries(german)) expect(text, key).not.toBe(english[key])
		// The links of the walkthrough lead to the same commands.
		for (const [key, text] of Object.entries(english)) expect(commandsIn(german[key]), key).toEqual(commandsIn(text))
	})
})

const commandsIn = (text: unknown) => [...String(text).matchAll(/\(command:[^)]*\)/g)].map(([link]) => link)

describe('the extension and its panel', () => {
	test('every text has its German, with the same gaps', async () => {
		const files = sources.map(file => ({ extension: path.extname(file) as '.ts' | '.tsx', contents: read(file) }))
		const texts = Object.keys(await getL10nJson(files))
		const german = json('l10n/bundle.l10n.de.json')
		expect(texts.length).toBeGreaterThan(100)
		expect(Object.keys(german).sort()).toEqual(texts.sort())
		for (const [text, translated] of Object.entries(german)) expect(places(translated), text).toEqual(places(text))
	})

	test.each(sources)('%s has no words that cannot be translated', file => {
		expect(plainWords(file)).toEqual([])
	})
})

/** Texts with words in them that stand outside of `l10n.t`. */
function plainWords(file: string): string[] {
	const source = ts.createSourceFile(file, read(file), ts.ScriptTarget.Latest, true)
	const found: string[] = []
	const look = (node: ts.Node): void => {
		if (isTranslated(node) || isOfProgram(node)) return
		if (ts.isJsxText(node)) {
			if (/\p{L}{2}/u.test(node.text)) found.push(node.text.trim())
		} else if (ts.isStringLiteralLike(node) || ts.isTemplateHead(node) || ts.isTemplateMiddle(node) || ts.isTemplateTail(node)) {
			if (saysSomething(node.text, file)) found.push(node.text)
		}
		ts.forEachChild(node, look)
	}
	look(source)
	return found
}

/** In a file of words every word is meant for people; elsewhere a capital, or several words, give a text away. */
function saysSomething(text: string, file: string): boolean {
	if (path.basename(file) === 'words.ts') return /\p{L}{2}/u.test(text)
	if (text === 'Barstave' || isMarkup.test(text)) return false
	return /\p{L}{2,}[,.;:]? \p{L}/u.test(text) || /^\p{Lu}\p{Ll}+$/u.test(text)
}

const isMarkup = /<|>|^"/

function isTranslated(node: ts.Node): boolean {
	if (ts.isCallExpression(node)) return isT(node.expression)
	return ts.isTaggedTemplateExpression(node) && isT(node.tag)
}

function isT(node: ts.Node): boolean {
	return node.getText() === 'l10n.t'
}

/** What no one sees: imports, types, names of classes and the like. */
function isOfProgram(node: ts.Node): boolean {
	if (ts.isImportDeclaration(node) || ts.isTypeNode(node) || ts.isCaseClause(node.parent ?? node))
		return !ts.isReturnStatement(node)
	// The language has no other words than its own.
	if (ts.isJsxElement(node)) return node.openingElement.tagName.getText() === 'pre'
	if (ts.isCallExpression(node))
		return /(\.closest|\.querySelector|\.querySelectorAll|^compileFunction)$/.test(node.expression.getText())
	if (ts.isJsxAttribute(node)) return /^(class|key|viewBox|d|id|name|href|http-equiv|content)$/.test(node.name.getText())
	if (ts.isPropertyAssignment(node)) return /^(id|message)$/.test(node.name.getText())
	return false
}
