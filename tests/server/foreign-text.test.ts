import { writeFile } from 'node:fs/promises'
import path from 'node:path'
import { afterAll, beforeAll, describe, expect, it, test } from 'vitest'
import type {
	Diagnostic,
	DocumentSymbol,
	Hover,
	LocationLink,
	Range,
	SemanticTokens,
	TextEdit,
	WorkspaceEdit,
} from 'vscode-languageserver'
import { barstave } from '../client/terminal/support/program.ts'
import { Editor, makeFolder, uriOf } from './support/editor.ts'

/** Texts as they come from anywhere: other scripts, word processors, data files. Editor and command line must read them alike. */

let editor: Editor
let folder: string
beforeAll(async () => {
	folder = await makeFolder({ 'people.stave': 'lifter ann "Ann"\n  bodyweight 60 kg\n' })
	editor = await Editor.start([folder])
})
afterAll(() => editor.stop())

interface Place {
	readonly line: number
	readonly character: number
	readonly code: string
}

async function inEditor(name: string, text: string): Promise<readonly Diagnostic[]> {
	const uri = uriOf(folder, name)
	await editor.openText(uri, text)
	// The answer comes after all that was published for it.
	await editor.settled()
	return editor.problemsOf(uri)
}

/** What the command line says of the same text, as places of the editor. */
async function inTerminal(name: string, text: string): Promise<readonly Place[]> {
	await writeFile(path.join(folder, name), text)
	const { out } = await barstave(['check', '--format', 'json', '--workspace', folder, path.join(folder, name)])
	const { problems } = JSON.parse(out) as { problems: readonly { line: number; column: number; code: string }[] }
	return problems.map(({ line, column, code }) => ({ line: line - 1, character: column - 1, code }))
}

const placesOf = (problems: readonly Diagnostic[]): readonly Place[] =>
	problems.map(({ range, code }) => ({ ...range.start, code: String(code) }))
const blockOf = (name: string, line: string) => `block ${name} "One"\n  weeks 1\n\n  session one on monday\n${line}\n`

describe('letters that are wider than one unit, before a word on its line', () => {
	const before = '/* 💪🏽💪 深蹲 e\u0301 */ '
	const wordAt = before.length + 'main '.length

	it('shift no place: a fault, in editor and command line', async () => {
		const text = blockOf('wide', `${before}main dedlift 3 x 5 at 60 kg`)
		const problems = await inEditor('wide.stave', text)
		const misspelt = problems.find(one => one.code === 'unknown-name')!
		expect(misspelt.range).toEqual({ start: { line: 4, character: wordAt }, end: { line: 4, character: wordAt + 7 } })
		expect(await inTerminal('wide.stave', text)).toEqual(placesOf(problems))
	})

	it('shift no place: what is said over a word, where it is defined, where it is renamed, how it is coloured', async () => {
		const text = `movement slow-pull "Slow 💪🏽 pull"\n\n${blockOf('wide-too', `${before}main slow-pull 3 x 5 at 60 kg`)}`
		await inEditor('wide-too.stave', text)
		const uri = uriOf(folder, 'wide-too.stave')
		const at = editor.at(uri, 6, wordAt + 2)
		const name: Range = { start: { line: 6, character: wordAt }, end: { line: 6, character: wordAt + 9 } }
		expect((await editor.request<Hover>('textDocument/hover', at)).range).toEqual(name)
		const [definition] = await editor.request<LocationLink[]>('textDocument/definition', at)
		expect(definition?.targetSelectionRange.start).toEqual({ line: 0, character: 9 })
		const renamed = await editor.request<WorkspaceEdit>('textDocument/rename', { ...at, newName: 'quick-pull' })
		expect(JSON.stringify(renamed)).toContain(JSON.stringify(name))
		const { data } = await editor.request<SemanticTokens>('textDocument/semanticTokens/full', { textDocument: { uri } })
		let line = 0
		let character = 0
		const starts: string[] = []
		for (let index = 0; index < data.length; index += 5) {
			character = data[index] === 0 ? character + data[index + 1]! : data[index + 1]!
			line += data[index]!
			starts.push(`${line}:${character}+${data[index + 2]}`)
		}
		expect(starts).toContain(`6:${wordAt}+9`)
	})
})

describe('a byte-order mark', () => {
	it('is no fault, shifts no column of its line, and stays', async () => {
		const text = '\ufeffmovement one "One" pattern hinj\n'
		const problems = await inEditor('mark.stave', text)
		expect(placesOf(problems).filter(one => one.code !== 'unused-definition')).toEqual([
			{ line: 0, character: expect.any(Number), code: 'unknown-name' },
		])
		const edits = await editor.request<TextEdit[]>('textDocument/formatting', {
			textDocument: { uri: uriOf(folder, 'mark.stave') },
			options: { tabSize: 2, insertSpaces: true },
		})
		expect(edits.filter(({ range }) => range.start.line === 0 && range.start.character === 0)).toEqual([])
		const plain = await inTerminal('plain.stave', text.slice(1).replace('one', 'two'))
		const marked = await inTerminal('mark.stave', text)
		expect(marked.map(one => one.character)).toEqual(plain.map(one => one.character))
	})
})

describe('what a word processor makes of a line', () => {
	const ours = 'main deadlift 3 x 5 at 60 kg rest 2 min'
	test.each([
		['no-break spaces', ours.replaceAll(' ', '\u00a0'), 0],
		['thin spaces', ours.replaceAll(' ', '\u2009'), 0],
		['line separators', ours.replaceAll(' ', '\u2028'), 0],
		['full-width digits', ours.replaceAll('5', '５').replaceAll('60', '６０'), 1],
		['en dashes in a range', ours.replace('3 x 5', '3–4 x 5'), 1],
		['a capital at its beginning', ours.replace('main', 'Main'), 1],
		['curly quotes', `${ours}\n      note “Slow down”`, 1],
		['a list’s bullet', `• ${ours}`, 1],
		['signs that mean nothing', `${ours} ☞`, 1],
	])('%s: read as meant, with one message at most, in editor and command line', async (_, line, messages) => {
		const name = 'pasted.stave'
		const text = blockOf('pasted', `    ${line}`)
		const problems = (await inEditor(name, text)).filter(one => one.code !== 'unused-definition')
		expect(problems.map(one => one.message)).toHaveLength(messages)
		for (const { range } of problems) expect(range.start.line).toBeGreaterThanOrEqual(4)
		expect((await inTerminal(name, text)).filter(one => one.code !== 'unused-definition')).toEqual(placesOf(problems))
		const [symbol] = await editor.request<DocumentSymbol[]>('textDocument/documentSymbol', {
			textDocument: { uri: uriOf(folder, name) },
		})
		expect(JSON.stringify(symbol)).toContain('eadlift')
	})
})

describe('a text that is none of ours, or one without end', () => {
	const numbers = Array.from({ length: 40_000 }, (_, index) => `${index};${index * 7};"row ${index}";${index / 3}`).join('\n')
	const items = Array.from({ length: 10_000 }, (_, index) => `    accessory plank ${(index % 5) + 1} x 30 s`).join('\n')
	test.each([
		['24 KB of signs', '@#$%^'.repeat(4900)],
		['a data file of more than a megabyte', numbers],
		['10,000 items in one session', blockOf('many', items)],
		[
			'10,000 items in one session, each pasted',
			blockOf('many-pasted', items.replaceAll(' x ', 'x').replaceAll('30 s', '30" @8')),
		],
		[
			'one line of a megabyte',
			`block long "Long" weeks 1 note "${'long '.repeat(200_000)}" session s on monday main dedlift 3 x 5`,
		],
		['one line of 10,000 items', blockOf('wide-line', items.replaceAll('\n', ' '))],
	])('%s: a hundred messages at most, and the server answers', async (_, text) => {
		const problems = await inEditor('odd.stave', text)
		expect(problems.length).toBeGreaterThan(0)
		expect(problems.length).toBeLessThanOrEqual(101)
		const document = { textDocument: { uri: uriOf(folder, 'odd.stave') } }
		for (const method of ['documentSymbol', 'foldingRange'])
			expect(await editor.request(`textDocument/${method}`, document)).toBeInstanceOf(Array)
		await editor.request('textDocument/formatting', { ...document, options: { tabSize: 2, insertSpaces: true } })
		await editor.openText(uriOf(folder, 'odd.stave'), '')
		expect(editor.process.exitCode).toBeNull()
	})
})
