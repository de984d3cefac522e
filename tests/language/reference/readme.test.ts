import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { fileProblems } from '../../../language/workspace/file-problems.ts'
import { workspaceOf } from '../../support/workspace.ts'

test('the examples of the first page are one sound workspace', () => {
	const page = readFileSync(new URL('../../../README.md', import.meta.url), 'utf8')
	const texts = [...page.matchAll(/^```stave\n([\s\S]*?)^```$/gm)].map(([, text]) => text!)
	expect(texts.length).toBeGreaterThan(3)
	const folder = workspaceOf(...texts)
	expect(folder.fileUris().flatMap(uri => fileProblems(folder, uri).map(({ message }) => message))).toEqual([])
})
