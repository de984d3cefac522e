import { readFileSync } from 'node:fs'
import path from 'node:path'
import { afterEach, describe, expect, it } from 'vitest'
import { barstave, root } from '../client/terminal/support/program.ts'
import { makeFolder, uriOf } from './support/editor.ts'
import { type Message, PlainClient } from './support/plain-client.ts'

const text = `/* 😀😀 漢 é */ lifter ann "Ann 😀" best dedlift 100 kg on 2026-09-01
block pull "Pull"
  weeks 1
  session a on monday
    main deadlift 3 x 5 at 70%
plan p for ann
  start 2026-10-05
  run pull
`

let client: PlainClient | undefined
afterEach(async () => {
	client?.closeInput()
	await client?.ended
	client = undefined
})

const initialize = (folder: string, capabilities: object = {}): Message => ({
	id: 'begin',
	method: 'initialize',
	params: { processId: null, rootUri: uriOf(folder), capabilities },
})
const initialized: Message = { method: 'initialized', params: {} }

async function start(capabilities: object = {}, files: Readonly<Record<string, string>> = {}) {
	const folder = await makeFolder(files)
	client = await PlainClient.start()
	client.write([initialize(folder, capabilities), initialized])
	const answer = (await client.answerTo('begin')).result as { capabilities: { positionEncoding: string } }
	const uri = uriOf(folder, 'a.stave')
	return { client, folder, uri, answer }
}

const open = (uri: string, content = text, version = 1): Message => ({
	method: 'textDocument/didOpen',
	params: { textDocument: { uri, languageId: 'barstave', version, text: content } },
})
const at = (uri: string, line: number, character: number) => ({ textDocument: { uri }, position: { line, character } })
/** The column of a word in the first line, in UTF-16 units. */
const column = (word: string) => text.indexOf(word)

describe('an editor of few abilities', () => {
	it('is told of problems in UTF-16 columns, and is asked for nothing', async () => {
		const { client, uri, answer } = await start()
		expect(answer.capabilities.positionEncoding).toBe('utf-16')
		client.write([open(uri)])
		const problems = await client.until(() => client.problemsOf(uri)?.filter(one => one.code === 'unknown-name'))
		expect(problems.map(one => one.range)).toEqual([
			{ start: { line: 0, character: column('dedlift') }, end: { line: 0, character: column('dedlift') + 7 } },
		])
		// No registration, no configuration, no refresh: it could answer none of them.
		await client.request('textDocument/documentSymbol', { textDocument: { uri } })
		expect(client.asked).toEqual([])
		expect(client.noise).toEqual([])
	})

	it('that knows UTF-8 columns too hears which ones count', async () => {
		const { answer } = await start({ general: { positionEncodings: ['utf-8', 'utf-16'] } })
		expect(answer.capabilities.positionEncoding).toBe('utf-16')
	})

	it('gets places, words and changes in the plainest form', async () => {
		const { client, uri } = await start()
		client.write([open(uri)])
		const definition = await client.request('textDocument/definition', at(uri, 5, 12))
		expect(definition.result).toMatchObject([{ uri, range: { start: { line: 0, character: column('ann') } } }])
		const completion = (await client.request('textDocument/completion', at(uri, 8, 0))).result as {
			items: { insertTextFormat?: number }[]
		}
		expect(completion.items.length).toBeGreaterThan(0)
		expect(completion.items.some(one => one.insertTextFormat === 2)).toBe(false)
		const rename = (await client.request('textDocument/rename', { ...at(uri, 5, 12), newName: 'anna' })).result
		expect(Object.keys((rename as { changes: object }).changes)).toEqual([uri])
	})

	it.each([
		['address', (folder: string) => ({ rootUri: uriOf(folder) })],
		['address that ends with a stroke', (folder: string) => ({ rootUri: `${uriOf(folder)}/` })],
		['path', (folder: string) => ({ rootUri: null, rootPath: folder })],
		['list of folders that is none', (folder: string) => ({ rootUri: uriOf(folder), workspaceFolders: null })],
	])('may name its folder by its %s alone', async (_, root) => {
		const folder = await makeFolder({ 'people.stave': 'lifter zed "Zed"\n' })
		client = await PlainClient.start()
		client.write([{ ...initialize(folder), params: { processId: null, capabilities: {}, ...root(folder) } }, initialized])
		await client.answerTo('begin')
		const uri = uriOf(folder, 'plan.stave')
		client.write([open(uri, 'plan p for zed\n')])
		await client.request('barstave/plans', {})
		const definition = await client.request('textDocument/definition', at(uri, 0, 12))
		expect(definition.result).toMatchObject([{ uri: uriOf(folder, 'people.stave') }])
	})

	it('may have no folder at all', async () => {
		const folder = await makeFolder({ 'people.stave': 'lifter zed "Zed"\n' })
		client = await PlainClient.start()
		client.write([{ ...initialize(folder), params: { processId: null, rootUri: null, capabilities: {} } }, initialized])
		await client.answerTo('begin')
		// What is open is checked; the files beside it are not its folder's.
		for (const uri of [uriOf(folder, 'plan.stave'), 'untitled:Untitled-1']) {
			client.write([open(uri, 'plan p for zed\n')])
			const problems = await client.until(() => client!.problemsOf(uri))
			expect(
				problems.map(one => one.code),
				uri,
			).toContain('unknown-name')
		}
	})

	it('sends changes of a part of a line behind wide letters', async () => {
		const { client, uri } = await start()
		const start_ = { line: 0, character: column('dedlift') }
		client.write([
			open(uri),
			{
				method: 'textDocument/didChange',
				params: {
					textDocument: { uri, version: 2 },
					contentChanges: [{ range: { start: start_, end: { ...start_, character: start_.character + 3 } }, text: 'dead' }],
				},
			},
		])
		await client.request('textDocument/documentSymbol', { textDocument: { uri } })
		await client.until(() => (client.problemsOf(uri)?.some(one => one.code === 'unknown-name') === false ? true : undefined))
	})
})

describe('messages', () => {
	it('may come in pieces of any size, all at once', async () => {
		const folder = await makeFolder({})
		client = await PlainClient.start()
		const uri = uriOf(folder, 'a.stave')
		// Seven bytes at a time: through headers, and through the four bytes of a letter.
		client.write([initialize(folder), initialized, open(uri), { id: 1, method: 'textDocument/hover', params: at(uri, 4, 10) }], 7)
		const hover = (await client.answerTo(1)).result as { contents: { value: string } }
		expect(hover.contents.value).toContain('Deadlift')
	})

	it('are answered each with its own name, whatever their order', async () => {
		const { client, uri } = await start()
		const asked: Message[] = [
			{ id: 'z', method: 'textDocument/hover', params: at(uri, 4, 10) },
			{ id: 7, method: 'textDocument/documentSymbol', params: { textDocument: { uri } } },
			{ id: 3, method: 'no/such/method', params: {} },
			{ id: 'seven', method: 'textDocument/foldingRange', params: { textDocument: { uri } } },
			{ id: 1, method: 'textDocument/references', params: { ...at(uri, 5, 12), context: { includeDeclaration: true } } },
			{ id: 2, method: 'barstave/preview', params: { uri } },
		]
		client.write([open(uri), ...asked])
		for (const { id } of asked) await client.answerTo(id!)
		const answers = client.received.filter(one => one.method === undefined && one.id !== 'begin')
		expect(answers.map(one => one.id).sort()).toEqual(asked.map(one => one.id).sort())
		const resultOf = (id: number | string) => answers.find(one => one.id === id)!.result
		expect(resultOf('z')).toMatchObject({ contents: { kind: 'markdown' } })
		expect(resultOf(7)).toHaveLength(3)
		expect((resultOf('seven') as object[])[0]).toHaveProperty('startLine')
		expect(resultOf(1)).toHaveLength(2)
		expect(answers.find(one => one.id === 3)!.error!.code).toBe(-32601)
	})

	it('about what is not open, before the beginning, or of no known shape do no harm', async () => {
		const folder = await makeFolder({})
		const uri = uriOf(folder, 'a.stave')
		client = await PlainClient.start()
		expect((await client.request('textDocument/hover', at(uri, 0, 0))).error!.code).toBe(-32002)
		client.write([initialize(folder), initialized])
		await client.answerTo('begin')
		client.notify('textDocument/didChange', { textDocument: { uri, version: 9 }, contentChanges: [{ text: 'block b "B"\n' }] })
		client.notify('textDocument/didClose', { textDocument: { uri } })
		client.notify('no/such/notification', { odd: true })
		for (const method of ['hover', 'completion', 'definition', 'documentHighlight', 'signatureHelp', 'prepareRename'])
			expect((await client.request(`textDocument/${method}`, at(uri, 99, 99))).result ?? null, method).toBeNull()
		client.write([open(uri), { id: 'far', method: 'textDocument/hover', params: at(uri, 999, 999) }])
		expect((await client.answerTo('far')).error).toBeUndefined()
		expect((await client.request('textDocument/documentSymbol', { textDocument: { uri } })).result).toHaveLength(3)
	})
})

describe('changes that an editor should not send', () => {
	type Range = Readonly<Record<'start' | 'end', { readonly line: number; readonly character: number }>>
	const range = (line: number, character: number, endLine: number, endCharacter: number): Range => ({
		start: { line, character },
		end: { line: endLine, character: endCharacter },
	})
	const cases: [string, number, readonly { text: string; range?: Range }[], string[]][] = [
		['behind the last line', 2, [{ range: range(50, 0, 90, 9), text: 'team t "T"' }], ['Ann 😀', 'Pull', 'p', 'T']],
		['behind the end of a line', 2, [{ range: range(7, 500, 7, 900), text: ' team t "T"' }], ['Ann 😀', 'Pull', 'p', 'T']],
		['upside down', 2, [{ range: range(8, 0, 5, 0), text: '' }], ['Ann 😀', 'Pull']],
		['before the first line', 2, [{ range: range(-1, -1, 1, 0), text: '' }], ['Pull', 'p']],
		['of an older version', -3, [{ text: 'team t "T"\n' }], ['T']],
		['that are none', 2, [], ['Ann 😀', 'Pull', 'p']],
	]

	it('leave the text whole, and the next are taken', async () => {
		const { client, folder } = await start()
		for (const [index, [what, version, contentChanges, names]] of cases.entries()) {
			const uri = uriOf(folder, `${index}.stave`)
			const symbols = async () =>
				((await client.request('textDocument/documentSymbol', { textDocument: { uri } })).result as { name: string }[]).map(
					one => one.name,
				)
			client.write([open(uri)])
			client.notify('textDocument/didChange', { textDocument: { uri, version }, contentChanges })
			expect(await symbols(), what).toEqual(names)
			client.notify('textDocument/didChange', { textDocument: { uri, version: 7 }, contentChanges: [{ text: 'gym g "G"\n' }] })
			expect(await symbols(), what).toEqual(['G'])
			// A text that is opened again is that text.
			client.write([open(uri, 'team u "U"\n')])
			expect(await symbols(), what).toEqual(['U'])
		}
	})
})

describe('a question that is taken back', () => {
	it('is answered as such, and the ones after it as ever', async () => {
		const { client, uri } = await start()
		const many = Array.from({ length: 30 }, (_, id): Message => ({ id: 100 + id, method: 'barstave/preview', params: { uri } }))
		const back = [110, 129].map((id): Message => ({ method: '$/cancelRequest', params: { id } }))
		client.write([
			open(uri),
			...many,
			...back,
			{ id: 'after', method: 'textDocument/documentSymbol', params: { textDocument: { uri } } },
		])
		expect((await client.answerTo('after')).result).toHaveLength(3)
		for (const { id } of many) await client.answerTo(id!)
		const cancelled = client.received.filter(one => one.error).map(one => [one.id, one.error!.code])
		expect(cancelled.length).toBeGreaterThan(0)
		for (const [id, code] of cancelled) expect([[110, 129].includes(id as number), code]).toEqual([true, -32800])
		// Each is answered once.
		expect(new Set(client.received.filter(one => one.method === undefined).map(one => one.id)).size).toBe(32)
		expect(client.received.filter(one => one.method === undefined)).toHaveLength(32)
	})

	it('may have waited for news', async () => {
		const { client, uri } = await start({ textDocument: { diagnostic: {} } }, { 'a.stave': text })
		const first = (await client.request('workspace/diagnostic', { previousResultIds: [] })).result as {
			items: { resultId: string }[]
		}
		const previousResultIds = first.items.map(one => ({ uri, value: one.resultId }))
		client.write([{ id: 'news', method: 'workspace/diagnostic', params: { previousResultIds } }])
		await client.request('textDocument/documentSymbol', { textDocument: { uri } })
		expect(client.received.some(one => one.id === 'news')).toBe(false)
		client.notify('$/cancelRequest', { id: 'news' })
		const answer = await client.answerTo('news')
		expect(answer.error?.code ?? (answer.result as { items: unknown[] }).items).toEqual(answer.error ? -32800 : [])
	})
})

describe('the end', () => {
	it('leaves no process: asked for, or with the pipe', async () => {
		const asked = await start()
		await asked.client.request('shutdown', null)
		asked.client.notify('exit', null)
		expect((await asked.client.ended).status).toBe(0)
		const broken = await start()
		broken.client.closeInput()
		expect((await broken.client.ended).status).toBe(1)
		// Without a word before, the end is no good one.
		const hasty = await start()
		hasty.client.notify('exit', null)
		expect((await hasty.client.ended).status).toBe(1)
	})

	it('is the end of questions, as the beginning is one', async () => {
		const { client, folder, uri } = await start()
		client.write([open(uri)])
		client.write([{ ...initialize(folder), id: 'again' }])
		expect((await client.answerTo('again')).error!.code).toBe(-32600)
		expect((await client.request('textDocument/hover', at(uri, 4, 10))).result).not.toBeNull()
		expect(await client.request('shutdown', null)).toMatchObject({ result: null })
		for (const method of ['textDocument/hover', 'barstave/preview', 'no/such/method', 'shutdown'])
			expect((await client.request(method, at(uri, 4, 10))).error!.code, method).toBe(-32600)
		client.notify('exit', null)
		expect((await client.ended).status).toBe(0)
	})

	it('says nothing on standard output or error but messages', async () => {
		const { client, uri } = await start()
		client.write([open(uri)])
		await client.request('barstave/preview', { uri })
		await client.request('shutdown', null)
		client.notify('exit', null)
		expect((await client.ended).said).toBe('')
		expect(client.noise).toEqual([])
	})
})

describe('the page about other editors', () => {
	const page = readFileSync(path.join(root, 'server/OTHER-EDITORS.md'), 'utf8')

	it('names messages that the server knows', async () => {
		const { client, uri } = await start()
		const named = new Set([...page.matchAll(/`(barstave\/[A-Za-z]+)`/g)].map(([, name]) => name!))
		expect(named.size).toBeGreaterThan(4)
		for (const name of named)
			if (!name.endsWith('Changed')) expect((await client.request(name, { uri })).error, name).toBeUndefined()
		client.write([open(uri)])
		await client.request('textDocument/documentSymbol', { textDocument: { uri } })
		const told = new Set(client.received.map(one => one.method))
		for (const name of named) if (name.endsWith('Changed')) expect([...told], name).toContain(name)
	})

	it('shows the command that the program has', async () => {
		expect(page.match(/language-server", "--stdio"|'language-server', '--stdio'|language-server --stdio/g)).toHaveLength(3)
		expect((await barstave(['language-server', '--help'])).out).toContain('--stdio')
	})
})
