import { type AstNode, AstUtils, CstUtils, GrammarAST, type LeafCstNode } from 'langium'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { CompletionList, Hover, LocationLink, Position, Range, SemanticTokens } from 'vscode-languageserver'
import { TextDocument } from 'vscode-languageserver-textdocument'
import { anchorOf } from '../../language/reference/index.ts'
import { tokenModifiers, tokenTypes } from '../../server/semantic/legend.ts'
import { treesOf } from '../../server/syntax.ts'
import { entries, reader } from '../language/reference/support/pages.ts'
import { textsBelow } from '../support/texts.ts'
import { Editor, makeFolder, uriOf } from './support/editor.ts'

/**
 * Every form of the language, as the examples of the reference have it, and every fault that has an example: asked about at each word, as they
 * are and with wide letters before each line.
 */

const wide = '/* 💪🏽 深蹲 e\u0301 */ '
const examples = entries.flatMap(entry => entry.examples.map(example => example.whole))
const texts: Readonly<Record<string, string>> = Object.fromEntries(
	[...new Set(examples), ...Object.values(textsBelow('examples/faults'))]
		// A line inside a comment or a text has no place for another comment.
		.filter(text => !/\/\*|^[^"\n/]*"[^"\n]*$/m.test(text))
		.map((text, index) => [`${String(index).padStart(3, '0')}.stave`, text]),
)
const widened = (text: string) => text.replace(/^(?=.*\S)/gm, wide)

let editor: Editor
let plain: string
let moved: string
beforeAll(async () => {
	plain = await makeFolder(texts)
	moved = await makeFolder(Object.fromEntries(Object.entries(texts).map(([name, text]) => [name, widened(text)])))
	editor = await Editor.start([plain, moved], {}, '2026-11-20')
	for (const folder of [plain, moved]) for (const name of Object.keys(texts)) await editor.open(folder, name)
	await editor.settled()
})
afterAll(() => editor.stop())

/** The words, numbers and signs that say something, without texts and comments. */
function wordsOf(text: string): { at: number; word: string }[] {
	const found = text.matchAll(
		/“[^”\n]*”|"(?:\\.|[^"\n])*"|\/\/.*|\d+(?:-(?:\d+|x)){2,}|\d+(?:\.\d+)?|[A-Za-z][A-Za-z0-9-]*|[%×+]/g,
	)
	return [...found].filter(({ 0: word }) => !/^["“/]/.test(word)).map(({ 0: word, index }) => ({ at: index, word }))
}

const documentOf = (name: string) => TextDocument.create(name, 'barstave', 1, texts[name]!)
const ask = <T>(folder: string, name: string, method: string, more: object = {}) =>
	editor.request<T>(`textDocument/${method}`, { textDocument: { uri: uriOf(folder, name) }, ...more })

describe('at every word of every form', () => {
	it('a hover has something to say, about the word', async () => {
		const silent: string[] = []
		let asked = 0
		for (const [name, text] of Object.entries(texts)) {
			const document = documentOf(name)
			for (const { at, word } of wordsOf(text)) {
				asked++
				const hover = await ask<Hover | null>(plain, name, 'hover', { position: document.positionAt(at) })
				const { start, end } = hover?.range ?? { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }
				const isAboutIt = document.offsetAt(start) <= at && at + word.length <= document.offsetAt(end)
				const says = (hover?.contents as { value: string } | undefined)?.value ?? ''
				if (!isAboutIt || !/[a-z]{3}/.test(says) || /undefined|\[object|NaN/.test(says))
					silent.push(`${word} in ${JSON.stringify(text.slice(Math.max(0, at - 30), at + 30))}: ${says}`)
			}
		}
		expect(asked).toBeGreaterThan(2000)
		expect(silent).toEqual([])
	})

	it('a hover on a word of the language says what the form means that it belongs to, with that word', async () => {
		const silent: string[] = []
		let asked = 0
		for (const [name, text] of Object.entries(texts)) {
			// What does not read, or is written in other words, may stand for anything.
			if (/expect: (syntax|old-spelling)/.test(text)) continue
			const document = documentOf(name)
			for (const { at, leaf, kind } of keywordsOf(text)) {
				asked++
				const { contents } = (await ask<Hover | null>(plain, name, 'hover', { position: document.positionAt(at) }))!
				const texts = (contents as { value: string }).value.split('\n\n---\n\n')
				const [said] = entriesAbout(leaf, kind).flatMap(({ page, title, prose }) => {
					const text = texts.find(one => one.endsWith(`/reference/${page}#${anchorOf(title)})`))
					return text && withoutLinks(text).includes(firstSentenceOf(prose)) ? [text] : []
				})
				const word = leaf.text.replace(/(?<=..)s$/, '')
				if (!said || !new RegExp(`(?<![a-z])${word}s?(?![a-z])`).test(said))
					silent.push(`${leaf.text} (${leaf.astNode.$type}): ${said}`)
			}
		}
		expect(asked).toBeGreaterThan(2500)
		expect([...new Set(silent)]).toEqual([])
	})

	it('completion has the word that stands there, where it knows it', async () => {
		const missing: string[] = []
		let asked = 0
		for (const [name, text] of Object.entries(texts)) {
			// Behind words that do not read nothing is known.
			if (text.includes('expect: syntax')) continue
			const document = documentOf(name)
			for (const { range, type, isOurs } of await coloured(plain, name)) {
				const word = document.getText(range)
				// A name is the coach's own, and may be defined nowhere in an example.
				if (!/^[a-z]/.test(word) || !(isOurs || ['keyword', 'enumMember', 'decorator'].includes(type))) continue
				asked++
				const at = document.offsetAt(range.start)
				const list = await ask<CompletionList | null>(plain, name, 'completion', { position: range.start })
				const labels = list?.items.map(item => item.label) ?? []
				if (!labels.some(label => label === word || label.startsWith(`${word} `)))
					missing.push(`${word} in ${JSON.stringify(text.slice(Math.max(0, at - 40), at + 20))}`)
			}
		}
		expect(asked).toBeGreaterThan(500)
		expect(missing).toEqual([])
	})

	it('wide letters before it move each answer by their own length, and change nothing else', async () => {
		for (const [name, text] of Object.entries(texts)) {
			const document = documentOf(name)
			const lines = text.split('\n')
			const there = (position: Position): Position =>
				lines[position.line]?.trim() ? { ...position, character: position.character + wide.length } : position
			const whole = { range: { start: { line: 0, character: 0 }, end: document.positionAt(text.length) } }
			const wholeThere = { range: { start: whole.range.start, end: there(whole.range.end) } }
			/** Both answers, the second one with its places moved back. */
			const both = async (method: string, more: object = {}, moreThere: object = more) => {
				const one = await ask<object | null>(plain, name, method, more)
				const other = await ask<object | null>(moved, name, method, moreThere)
				return [one, movedBack(other, name)]
			}
			const same = async (...question: Parameters<typeof both>) => {
				const [one, other] = await both(...question)
				expect(other, `${question[0]} in ${text}`).toEqual(one)
			}
			expect(movedBack(editor.problemsOf(uriOf(moved, name)), name), text).toEqual(editor.problemsOf(uriOf(plain, name)))
			await same('documentSymbol')
			await same('foldingRange')
			await same('codeLens')
			await same('documentLink')
			await same('inlayHint', whole, wholeThere)
			const [colours, coloursThere] = await Promise.all([coloured(plain, name), coloured(moved, name)])
			expect(movedBack(coloursThere, name), text).toEqual(colours)
			for (const { at } of wordsOf(text)) {
				const position = document.positionAt(at)
				const [here, over] = [{ position }, { position: there(position) }]
				await same('hover', here, over)
				const definition = await ask<LocationLink[] | null>(plain, name, 'definition', here)
				if (!definition) continue
				await same('definition', here, over)
				await same('documentHighlight', here, over)
				await same('prepareRename', here, over)
			}
		}
	})
})

/** The words of the language in a text, where they stand in the tree. */
function keywordsOf(text: string): { at: number; leaf: LeafCstNode; kind: string }[] {
	return reader.read('a.stave', text).parts.flatMap(part =>
		treesOf(part, reader).flatMap(({ tree, start }) => {
			const leaves = tree?.$cstNode ? CstUtils.flattenCst(tree.$cstNode).toArray() : []
			return leaves
				.filter(leaf => GrammarAST.isKeyword(leaf.grammarSource) || ['AT_MOST', 'EACH_SIDE'].includes(leaf.tokenType.name))
				.filter(leaf => /^[a-z%]/.test(leaf.text))
				.map(leaf => ({ at: part.start + start + leaf.offset, leaf, kind: part.definition!.kind }))
		}),
	)
}

/** How numbers are written is not what a line is about. */
const numberForms = ['Mass', 'Time', 'Range', 'DateBound']

/** The entries about the innermost form of the grammar around a word that has some; of a form that several kinds share those of the kind. */
function entriesAbout(leaf: LeafCstNode, kind: string) {
	const forms = [AstUtils.getContainerOfType(leaf.grammarSource, GrammarAST.isParserRule)!.name]
	for (let node: AstNode | undefined = leaf.astNode; node; node = node.$container) {
		// A log reads both with one rule.
		if (node.$type === 'InClause' && !('took' in node)) return about('ClustersClause')
		forms.push(node.$type)
	}
	const form = forms.find(one => !numberForms.includes(one) && about(one).length > 0)!
	const ofKind = about(form).filter(({ page }) => page === `${kind}.md`)
	return ofKind.length > 0 ? ofKind : about(form)
}

const withoutLinks = (markdown: string) => markdown.replace(/\]\([^)]*\)/g, ']').replace(/\s+/g, ' ')

function firstSentenceOf(prose: string): string {
	return /^.*?[.:](?= |$)/.exec(withoutLinks(prose.split('\n\n')[0]!))![0]
}

const about = (form: string) => entries.filter(entry => entry.forms.includes(form))

const builtIn = tokenModifiers.indexOf('defaultLibrary')

interface Coloured {
	readonly range: Range
	readonly type: string
	/** Is it the name of something built in? */
	readonly isOurs: boolean
}

/** The colours of a text but for those of the letters before its lines. */
async function coloured(folder: string, name: string): Promise<Coloured[]> {
	const { data } = await ask<SemanticTokens>(folder, name, 'semanticTokens/full')
	const found: Coloured[] = []
	let line = 0
	let character = 0
	for (let index = 0; index < data.length; index += 5) {
		const [down, along, length, type, bits] = data.slice(index, index + 5) as [number, number, number, number, number]
		line += down
		character = down > 0 ? along : character + along
		const range = { start: { line, character }, end: { line, character: character + length } }
		found.push({ range, type: tokenTypes[type]!, isOurs: (bits & (1 << builtIn)) !== 0 })
	}
	return found.filter(({ range, type }) => folder === plain || type !== 'comment' || range.start.character > 0)
}

/** An answer about a file in which letters stand before each line, as if they did not. */
function movedBack(answer: unknown, name: string | undefined): unknown {
	if (typeof answer === 'string') return answer.replaceAll(uriOf(moved), uriOf(plain))
	if (Array.isArray(answer)) return answer.map(one => movedBack(one, name))
	if (typeof answer !== 'object' || answer === null) return answer
	if ('line' in answer && 'character' in answer) {
		const { line, character } = answer as Position
		const isMoved = name !== undefined && texts[name]!.split('\n')[line]?.trim()
		return { line, character: character - (isMoved ? wide.length : 0) }
	}
	const other = 'targetUri' in answer ? answer.targetUri : 'uri' in answer ? answer.uri : undefined
	const fileOf = (uri: string) => (uri.startsWith(uriOf(moved)) ? uri.slice(uri.lastIndexOf('/') + 1) : undefined)
	const owner = typeof other === 'string' ? fileOf(other) : name
	return Object.fromEntries(
		Object.entries(answer).map(([key, value]) => [key, movedBack(value, key.startsWith('origin') ? name : owner)]),
	)
}
