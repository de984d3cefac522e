import fc from 'fast-check'
import { afterAll, beforeAll, expect, it } from 'vitest'
import type {
	CodeAction,
	CompletionList,
	DocumentSymbol,
	Position,
	Range,
	SelectionRange,
	SemanticTokens,
	SignatureHelp,
	TextDocumentEdit,
	TextEdit,
} from 'vscode-languageserver/node'
import { TextDocument } from 'vscode-languageserver-textdocument'
import { entries } from '../language/reference/support/pages.ts'
import { Editor, makeFolder, uriOf } from './support/editor.ts'

/**
 * Texts that are broken anyhow, with any line breaks and letters of any width: no question fails, and whatever place is answered lies in the
 * text, in order, and divides no letter.
 */

let editor: Editor
let uri: string
beforeAll(async () => {
	const folder = await makeFolder({})
	uri = uriOf(folder, 'a.stave')
	editor = await Editor.start([folder], {}, '2026-11-20')
	await editor.openText(uri, '')
})
afterAll(() => editor.stop())

const examples = [...new Set(entries.flatMap(entry => entry.examples.map(example => example.whole)))]
const slips = ['', '@@@', '"', '“', '/*', '*/', '//', '\n', 'x', '-', '%', ',', 'block ', 'week 1: ', 'plan for ', 'Main ', '\t']
const letters = ['💪🏽', '漢é', 'e\u0301', '５', '\u00a0', '\u2028', '\u200b']

const brokenText = fc
	.record({
		text: fc.constantFrom(...examples),
		slips: fc.array(fc.tuple(fc.nat(), fc.nat(12), fc.constantFrom(...slips, ...letters)), { minLength: 0, maxLength: 5 }),
		lineBreak: fc.constantFrom('\n', '\r\n', '\r'),
		mark: fc.constantFrom('', '\ufeff', '/* 💪🏽 深蹲 e\u0301 */ '),
	})
	.map(({ text, slips, lineBreak, mark }) => {
		const broken = slips.reduce((all, [at, length, by]) => {
			const from = at % (all.length + 1)
			return all.slice(0, from) + by + all.slice(from + length)
		}, text)
		return mark + broken.replaceAll('\n', lineBreak)
	})

it('every answer about any text lies in it', async () => {
	let version = 1
	await fc.assert(
		fc.asyncProperty(brokenText, fc.array(fc.nat(), { minLength: 4, maxLength: 4 }), async (text, places) => {
			version = await editor.change(uri, text)
			await editor.settled()
			const look = new Look(text)
			await look.atWhole()
			for (const place of [text.length, ...places]) await look.at(place % (text.length + 1), places[0]! % 200)
		}),
		{ numRuns: 60 },
	)
	expect(version).toBeGreaterThan(1)
})

const options = { tabSize: 2, insertSpaces: true }

class Look {
	private readonly document: TextDocument

	constructor(private readonly text: string) {
		this.document = TextDocument.create(uri, 'barstave', 1, text)
	}

	async atWhole(): Promise<void> {
		const end = this.document.positionAt(this.text.length)
		for (const { range, code } of editor.problemsOf(uri)) this.isInText(range, String(code))
		const symbol = (one: DocumentSymbol, outer?: DocumentSymbol) => {
			this.isInText(one.range, 'symbol')
			this.isInside(one.selectionRange, one.range, 'name of a symbol')
			if (outer) this.isInside(one.range, outer.range, 'symbol in a symbol')
			expect(one.name).not.toBe('')
			for (const child of one.children ?? []) symbol(child, one)
		}
		for (const one of await this.ask<DocumentSymbol[]>('documentSymbol')) symbol(one)
		for (const { startLine, endLine } of await this.ask<{ startLine: number; endLine: number }[]>('foldingRange')) {
			expect(startLine).toBeLessThan(endLine)
			expect(endLine).toBeLessThanOrEqual(end.line)
		}
		this.areColours((await this.ask<SemanticTokens>('semanticTokens/full')).data)
		const whole = { range: { start: { line: 0, character: 0 }, end } }
		for (const { position } of await this.ask<{ position: Position }[]>('inlayHint', whole))
			this.isInText({ start: position, end: position }, 'hint')
		for (const method of ['codeLens', 'documentLink'])
			for (const { range } of await this.ask<{ range: Range }[]>(method)) this.isInText(range, method)
		this.areEdits(await this.ask<TextEdit[]>('formatting', { options }), 'formatting')
		const all = { ...whole, context: { diagnostics: [], only: ['source.fixAll'] } }
		this.areActions(await this.ask<CodeAction[]>('codeAction', all))
	}

	async at(offset: number, length: number): Promise<void> {
		const position = this.positionNear(offset)
		const here = { position }
		const range = { start: position, end: this.positionNear(Math.min(this.text.length, offset + length)) }
		const hover = await this.ask<{ range: Range; contents: { value: string } } | null>('hover', here)
		if (hover) {
			this.isInText(hover.range, 'hover')
			expect(hover.contents.value).toMatch(/\S/)
			expect(hover.contents.value).not.toMatch(/undefined|NaN|\[object/)
		}
		for (const { textEdit } of (await this.ask<CompletionList>('completion', here)).items) {
			const word = (textEdit as TextEdit).range
			this.isInText(word, 'completion')
			expect([word.start.line, word.end]).toEqual([position.line, position])
		}
		const help = await this.ask<SignatureHelp | null>('signatureHelp', here)
		for (const { label } of help?.signatures[0]?.parameters ?? []) expect(help!.signatures[0]!.label).toContain(label)
		for (const one of (await this.ask<{ originSelectionRange: Range }[] | null>('definition', here)) ?? [])
			this.isInText(one.originSelectionRange, 'definition')
		for (const one of (await this.ask<{ range: Range }[] | null>('documentHighlight', here)) ?? [])
			this.isInText(one.range, 'highlight')
		await this.ask('references', { ...here, context: { includeDeclaration: true } })
		if (await this.ask('prepareRename', here)) {
			const { documentChanges } = await this.ask<{ documentChanges: TextDocumentEdit[] }>('rename', { ...here, newName: 'zz' })
			for (const change of documentChanges) this.areEdits(change.edits as TextEdit[], 'rename')
		}
		const [selection] = await this.ask<SelectionRange[]>('selectionRange', { positions: [position] })
		this.isInside({ start: position, end: position }, selection!.range, 'selection')
		for (let one = selection; one; one = one.parent) {
			this.isInText(one.range, 'selection')
			if (one.parent) this.isInside(one.range, one.parent.range, 'selection in a selection')
		}
		this.areActions(await this.ask<CodeAction[]>('codeAction', { range, context: { diagnostics: [] } }))
		this.areEdits(await this.ask<TextEdit[]>('rangeFormatting', { range, options }), 'formatting of a part')
		for (const edit of (await this.ask<TextEdit[] | null>('onTypeFormatting', { ...here, ch: '\n', options })) ?? [])
			expect([edit.range.start.line, edit.range.end.line]).toEqual([position.line - 1, position.line - 1])
		this.areColours((await this.ask<SemanticTokens>('semanticTokens/range', { range })).data)
		await editor.request('barstave/preview', { uri, position })
	}

	private ask<T>(method: string, more: object = {}): Promise<T> {
		return editor.request(`textDocument/${method}`, { textDocument: { uri }, ...more })
	}

	/** Where a cursor can stand: before a letter of two units, and not in it. */
	private positionNear(offset: number) {
		return this.document.positionAt(this.divides(offset) ? offset - 1 : offset)
	}

	/** Does a place lie inside of a letter, or of a line break? */
	private divides(offset: number): boolean {
		return /^([\ud800-\udbff][\udc00-\udfff]|\r\n)$/.test(this.text.slice(offset - 1, offset + 1))
	}

	private isInText({ start, end }: Range, what: string): void {
		for (const place of [start, end]) {
			const offset = this.document.offsetAt(place)
			expect(this.document.positionAt(offset), what).toEqual(place)
			expect(this.divides(offset), `${what} divides a letter or a line break`).toBe(false)
		}
		expect(this.document.offsetAt(start), what).toBeLessThanOrEqual(this.document.offsetAt(end))
	}

	private isInside(inner: Range, outer: Range, what: string): void {
		expect(this.document.offsetAt(outer.start), what).toBeLessThanOrEqual(this.document.offsetAt(inner.start))
		expect(this.document.offsetAt(outer.end), what).toBeGreaterThanOrEqual(this.document.offsetAt(inner.end))
	}

	private areColours(data: readonly number[]): void {
		let line = 0
		let character = 0
		let last = 0
		for (let index = 0; index < data.length; index += 5) {
			const [down, along, length] = data.slice(index, index + 3) as [number, number, number]
			line += down
			character = down > 0 ? along : character + along
			if (down === 0) expect(character, 'colours lie beside each other').toBeGreaterThanOrEqual(last)
			last = character + length
			this.isInText({ start: { line, character }, end: { line, character: last } }, 'colour')
		}
	}

	private areEdits(edits: readonly TextEdit[], what: string): void {
		for (const edit of edits) this.isInText(edit.range, what)
		// Edits that overlap throw.
		const after = TextDocument.applyEdits(this.document, [...edits])
		expect(after.startsWith('\ufeff'), `${what}: the byte-order mark`).toBe(this.text.startsWith('\ufeff'))
	}

	private areActions(actions: readonly CodeAction[]): void {
		for (const { title, edit } of actions)
			for (const change of (edit?.documentChanges ?? []) as TextDocumentEdit[]) this.areEdits(change.edits as TextEdit[], title)
	}
}
