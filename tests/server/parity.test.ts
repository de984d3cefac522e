import { readdirSync } from 'node:fs'
import path from 'node:path'
import { afterEach, describe, expect, it } from 'vitest'
import type { Diagnostic } from 'vscode-languageserver/node'
import { barstave, root } from '../client/terminal/support/program.ts'
import { copyOfExample, Editor, uriOf } from './support/editor.ts'

/** Every folder of ours with texts that belong together. */
const examples = ['club', ...readdirSync(path.join(root, 'examples/faults')).map(name => `faults/${name}`)]

/** A day on which the log of the example of missed work is still kept. */
const today = '2026-10-20'

const levels = ['error', 'warning', 'info', 'hint']

interface Reported {
	readonly problems: readonly {
		file: string
		line: number
		column: number
		endLine: number
		endColumn: number
		code: string
		level: string
		message: string
	}[]
}

let editor: Editor | undefined

afterEach(async () => {
	await editor?.stop()
	editor = undefined
})

const asReported = (file: string, { range, severity, code, message }: Diagnostic) => ({
	file,
	line: range.start.line + 1,
	column: range.start.character + 1,
	endLine: range.end.line + 1,
	endColumn: range.end.character + 1,
	code: String(code),
	level: levels[(severity ?? 1) - 1]!,
	message: String(message),
})

describe('editor and command line say the same', () => {
	it.each(examples)('on %s', async example => {
		const folder = await copyOfExample(example)
		const { out } = await barstave(['check', '--format', 'json', '--today', today, '--workspace', folder])
		const { problems } = JSON.parse(out) as Reported
		const expected = problems.map(({ file, line, column, endLine, endColumn, code, level, message }) => {
			return { file, line, column, endLine, endColumn, code, level, message }
		})
		editor = await Editor.start([folder], {}, today)
		// The answer comes when every file has been read, and after all that was published for them.
		await editor.settled()
		const files = [...new Set(editor.published.map(one => one.uri))].sort()
		const found = files.flatMap(uri =>
			editor!.problemsOf(uri).map(one => asReported(decodeURIComponent(uri.slice(uriOf(folder).length + 1)), one)),
		)
		expect(found).toEqual(expected)
		if (example.startsWith('faults/')) expect(found.length).toBeGreaterThan(0)
	})
})
