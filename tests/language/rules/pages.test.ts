import { describe, expect, test } from 'vitest'
import { rules } from '../../../language/rules/registry.ts'
import { fencesOf, sectionsOf } from './harness/markdown.ts'
import { described, listed, marksIn, problemsOfTexts } from './harness/workspace.ts'

describe.each(rules)('the page of $code', rule => {
	const sections = new Map(sectionsOf(rule.page).map(({ title, body }) => [title, body]))
	const wrong = fencesOf(sections.get('Wrong') ?? '')
	const right = fencesOf(sections.get('Right') ?? '')

	test('says what it checks, why, what is wrong and right, how to fix it and when to allow it', () => {
		const [title, lead] = rule.page.split('\n\n')
		expect(title).toMatch(/^# [A-Z"`0-9].+[^.]$/)
		expect(lead?.trim()).toMatch(/^[^#].*\.$/s)
		expect([...sections.keys()]).toEqual(['Why', 'Wrong', 'Right', 'How to fix it', 'When to allow it'])
		for (const body of sections.values()) expect(body.trim()).not.toBe('')
	})

	test('shows a wrong example that is reported, where it is marked, and for nothing else', () => {
		const marks = marksIn(wrong)
		expect(marks.map(mark => mark.code)).toContain(rule.code)
		const found = problemsOfTexts(wrong).filter(one => one.code !== 'unused-definition' || rule.code === 'unused-definition')
		expect(listed(found)).toEqual(listed(marks))
	})

	test('shows a right example that nothing is said about', () => {
		expect(right.size).toBeGreaterThan(0)
		expect(marksIn(right)).toEqual([])
		expect(described(problemsOfTexts(right).filter(one => one.code !== 'unused-definition'))).toEqual([])
	})
})
