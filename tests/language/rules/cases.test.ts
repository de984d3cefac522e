import { describe, expect, test } from 'vitest'
import { definitionKinds } from '../../../language/model/definitions.ts'
import { rules } from '../../../language/rules/registry.ts'
import { casesOf } from './harness/markdown.ts'
import { described, type Found, isAtLeast, listed, marksIn, problemsOfTexts, type Texts } from './harness/workspace.ts'

describe.each(rules)('$code', rule => {
	const cases = casesOf(rule)

	test('has at least two cases that are reported and two that are quiet', () => {
		expect(cases.filter(one => !one.quiet).length).toBeGreaterThanOrEqual(2)
		expect(cases.filter(one => one.quiet).length).toBeGreaterThanOrEqual(2)
	})

	test.each(cases)('$title', ({ quiet, texts, also }) => {
		const marks = marksIn(texts)
		const codes = new Set(marks.map(mark => mark.code))
		const found = problemsOfTexts(texts)
		// What is marked is reported there and nowhere else; of what is not marked, a hint is no matter.
		const beside = found.filter(one => !codes.has(one.code) && !also.includes(one.code))
		expect(texts.size).toBeGreaterThan(0)
		expect(codes.has(rule.code)).toBe(!quiet)
		expect(listed(found.filter(one => codes.has(one.code)))).toEqual(listed(marks))
		expect(described(beside.filter(one => one.code === rule.code || isAtLeast(one.problem.level, 'info')))).toEqual([])
		if (quiet) expect(described(found.filter(one => one.code === rule.code))).toEqual([])
	})

	// Which file a definition stands in means nothing.
	test.each(cases)('$title, each definition in a file of its own', ({ texts }) => {
		const messages = (all: Texts) =>
			problemsOfTexts(all)
				.filter(one => one.code === rule.code)
				.map(({ problem }: Found) => `${problem.level} ${problem.message}`)
		expect(messages(inFilesOfTheirOwn(texts))).toEqual(messages(texts))
	})
})

function inFilesOfTheirOwn(texts: Texts): Texts {
	const begin = new RegExp(`^(?=(?:${definitionKinds.join('|')}) )`, 'm')
	const parts = [...texts].flatMap(([file, text]) =>
		text.split(begin).map((part, index) => [`${file}-${index}.stave`, part] as const),
	)
	return new Map(parts)
}
