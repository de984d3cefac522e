import { readdirSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { pathOf } from './harness/markdown.ts'
import { described, isAtLeast, listed, marksIn, problemsOfTexts, textsBelow } from './harness/workspace.ts'

describe('examples/faults', () => {
	test.each(readdirSync(pathOf('examples/faults')))('%s', folder => {
		const texts = textsBelow(pathOf(`examples/faults/${folder}`))
		const marks = marksIn(texts)
		const codes = new Set(marks.map(mark => mark.code))
		const found = problemsOfTexts(texts)
		expect(codes).toContain(folder)
		expect(listed(found.filter(one => codes.has(one.code)))).toEqual(listed(marks))
		const beside = found.filter(one => !codes.has(one.code) && isAtLeast(one.problem.level, 'warning'))
		expect(described(beside)).toEqual([])
	})
})

test('nothing is wrong with the example club', () => {
	const found = problemsOfTexts(textsBelow(pathOf('examples/club')))
	expect(described(found.filter(one => isAtLeast(one.problem.level, 'warning')))).toEqual([])
})
