import { describe, expect, test } from 'vitest'
import { rules } from '../../../language/rules/registry.ts'
import { casesOf, fencesOf, sectionsOf } from './harness/markdown.ts'
import { corrected, type Found, isAtLeast, problemsOfTexts, type Texts } from './harness/workspace.ts'

/** A correction takes its problem away, and brings none of which a coach would hear. */
describe.each(rules)('the corrections of $code', rule => {
	const wrong = fencesOf(sectionsOf(rule.page).find(section => section.title === 'Wrong')?.body ?? '')
	const workspaces = [{ title: 'the page', texts: wrong }, ...casesOf(rule).filter(one => !one.quiet)]
	const offered = workspaces.flatMap(({ title, texts }) =>
		problemsOfTexts(texts)
			.filter(one => one.code === rule.code)
			.flatMap(found => found.problem.corrections.map(correction => ({ title, texts, found, correction }))),
	)

	test(rule.fix === 'none' ? 'there are none' : 'there is one', () => {
		expect(offered.length > 0).toBe(rule.fix !== 'none')
	})

	test.each(offered)('$correction.title ($title)', ({ texts, found, correction }) => {
		const text = corrected(texts.get(found.file) ?? '', correction.edits)
		const after = new Map([...texts, [found.file, text]])
		const before = heard(texts)
		const left = heard(after)
		expect(left.get(rule.code) ?? 0, text).toBeLessThan(before.get(rule.code) ?? 0)
		for (const [code, count] of left) expect(count, `${code} in:\n${text}`).toBeLessThanOrEqual(before.get(code) ?? 0)
	})

	const commented = workspaces.flatMap(({ title, texts }) => {
		const own = new Map([...texts].map(([file, text]) => [file, withComments(text)]))
		return problemsOfTexts(own)
			.filter(one => one.code === rule.code)
			.flatMap(({ file, problem }) => problem.corrections.map(correction => ({ title, text: own.get(file) ?? '', correction })))
	})

	test.each(commented)('$correction.title ($title) keeps the comments and the line breaks', ({ text, correction }) => {
		const after = corrected(text, correction.edits)
		expect(after).not.toMatch(/[^\r]\n/)
		expect(commentsIn(after)).toEqual(commentsIn(text))
		// New lines come below the comment of the line before, not in front of it.
		for (const edit of correction.edits) if (/^\s*\n/.test(edit.text)) expect(text.slice(edit.end)).toMatch(/^(\r\n|$)/)
	})

	/** How often each code is reported; hints about other things do not count. */
	function heard(texts: Texts): ReadonlyMap<string, number> {
		const counts = new Map<string, number>()
		const matters = (one: Found) => one.code === rule.code || isAtLeast(one.problem.level, 'info')
		for (const { code } of problemsOfTexts(texts).filter(matters)) counts.set(code, (counts.get(code) ?? 0) + 1)
		return counts
	}
})

/** A numbered comment behind each line, and the line breaks of another system. */
function withComments(text: string): string {
	const lines = text.replace(/ *\/\/ expect.*$/gm, '').split('\n')
	return lines.map((line, index) => (line.trim() === '' ? line : `${line} // c${index}`)).join('\r\n')
}

function commentsIn(text: string): readonly string[] {
	return text.match(/\/\/ c\d+$/gm) ?? []
}
