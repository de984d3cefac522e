import { describe, expect, test } from 'vitest'
import { rules } from '../../../language/rules/registry.ts'
import { casesOf } from './harness/markdown.ts'
import { described, isAtLeast, listed, marksIn, problemsOfTexts } from './harness/workspace.ts'

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
})
