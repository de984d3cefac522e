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

const people = ['lena-sol', 'mara-tal', 'nora-vik']
	.map(name => `lifter ${name}\n  best deadlift 120 kg on 2026-09-12\n  bodyweight 70 kg\n`)
	.join('')
const weeks = (item: string) => `block first\n  weeks 3\n  session one on monday\n    ${item}\n`
const ofTeam = (lines: string) =>
	`${people}team all\n  members lena-sol, mara-tal, nora-vik\nblock first\n  weeks 1\n  session one on monday\n    accessory plank 3 x 30 s\nplan autumn for all\n  start 2026-10-05\n  run first\n${lines}`
const weighted = 'swap plank for weighted-plank 3 x 30 s at 5 kg'

/** Where a correction is offered, by its first title and the text that it makes. */
const offers: readonly (readonly [code: string, text: string, title: string, line: RegExp])[] = [
	['hold-outside-range', weeks('accessory plank 3 x 20 s'), 'Bring it to 30 s', /plank 3 x 30 s/],
	['hold-outside-range', weeks('accessory plank 3 x 20 s each week add 5 s'), 'Bring it to 30 s', /plank 3 x 30 s/],
	['sets-outside-range', weeks('accessory plank 8 x 40 s'), 'Bring it to 6 sets a session', /plank 6 x 40 s/],
	['reps-outside-range', weeks('accessory romanian-deadlift 3 x 20 rir 4'), 'Bring it to 15 reps', /3 x 15 rir 4/],
	['carry-outside-range', weeks('accessory suitcase-carry 3 x 60 m each side'), 'Bring it to 40 m', /3 x 40 m/],
	['load-jump', weeks('main deadlift 3 x 5 at 50% each week add 6%'), 'Add 5% each week', /each week add 5%/],
	['gate-not-passed', ofTeam(`    ${weighted}`), 'Go back to Plank in this plan', /\n {4}swap weighted-plank for plank/],
	[
		'gate-not-passed',
		ofTeam(`    for lena-sol\n      ${weighted}\n    for nora-vik\n      ${weighted}`),
		'Go back to Plank in this plan, for lena-sol and nora-vik',
		/for lena-sol\n {6}swap weighted-plank for plank\n {4}for nora-vik\n {6}swap weighted-plank for plank/,
	],
]

test.each(offers)('%s in %j: %s', (code, text, title, line) => {
	const found = problemsOfTexts(new Map([['a.stave', text]])).find(one => one.code === code)
	const [correction] = found?.problem.corrections ?? []
	expect(correction?.title).toBe(title)
	expect(corrected(text, correction?.edits ?? [])).toMatch(line)
})

/** A numbered comment behind each line, and the line breaks of another system. */
function withComments(text: string): string {
	const lines = text.replace(/ *\/\/ expect.*$/gm, '').split('\n')
	return lines.map((line, index) => (line.trim() === '' ? line : `${line} // c${index}`)).join('\r\n')
}

function commentsIn(text: string): readonly string[] {
	return text.match(/\/\/ c\d+$/gm) ?? []
}
