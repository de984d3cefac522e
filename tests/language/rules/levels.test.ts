import { describe, expect, test } from 'vitest'
import { rules } from '../../../language/rules/registry.ts'
import type { Rule } from '../../../language/rules/rule.ts'
import { fencesOf, sectionsOf } from './harness/markdown.ts'
import { type Found, problemsOfTexts, type Texts } from './harness/workspace.ts'

/** Definitions that take an `allow` line of their own, right behind their header. */
const excepting = /^(block|plan|lifter)\b[^\n]*\n/

const wrongOf = (rule: Rule): Texts => fencesOf(sectionsOf(rule.page).find(section => section.title === 'Wrong')?.body ?? '')
const found = (rule: Rule, texts: Texts): readonly Found[] => problemsOfTexts(texts).filter(one => one.code === rule.code)
/** The texts in a folder that says how loud the rule is; some examples say so themselves. */
function withLevel(texts: Texts, { code }: Rule, level: string): Texts {
	const own = new RegExp(`^(\\s+${code}) (off|hint|info|warning|error)$`, 'm')
	const said = [...texts].find(([, text]) => own.test(text))
	return said
		? new Map([...texts, [said[0], said[1].replace(own, `$1 ${level}`)]])
		: new Map([...texts, ['levels.stave', `rules levels\n  ${code} ${level}\n`]])
}

describe.each(rules)('$code', rule => {
	const texts = wrongOf(rule)

	test(rule.always ? 'stays whatever a folder says' : 'is as loud as a folder says, or silent', () => {
		const before = found(rule, texts)
		expect(before.length).toBeGreaterThan(0)
		for (const level of ['hint', 'info', 'warning', 'error']) {
			const levels = found(rule, withLevel(texts, rule, level)).map(one => one.problem.level)
			expect(levels).toEqual(rule.always ? before.map(one => one.problem.level) : before.map(() => level))
		}
		expect(found(rule, withLevel(texts, rule, 'off'))).toHaveLength(rule.always ? before.length : 0)
	})
})

/** Problems that stand where a line can except them. That an exception does nothing cannot be excepted in turn. */
const exceptable = rules
	.filter(rule => rule.code !== 'unused-allow')
	.flatMap(rule => found(rule, wrongOf(rule)).map(one => ({ rule, code: rule.code, one, at: definitionAt(wrongOf(rule), one) })))
	.flatMap(({ at, ...rest }) => (at === undefined ? [] : [{ at, ...rest }]))

test.each(exceptable)('an exception with a reason silences $code, or it is said that it cannot', ({ rule, one, at }) => {
	const texts = wrongOf(rule)
	const text = texts.get(one.file)!
	const excepted = `${text.slice(0, at)}  allow ${rule.code} because "we know"\n${text.slice(at)}`
	const after = problemsOfTexts(new Map([...texts, [one.file, excepted]]))
	const isSilenced = !after.some(other => other.code === rule.code && other.problem.message === one.problem.message)
	expect(isSilenced).toBe(!rule.always)
	expect(after.some(other => other.code === 'unused-allow' && other.problem.message.includes(rule.code))).toBe(!isSilenced)
})

/** Behind the header of the definition that a problem stands in, where that one takes exceptions. */
function definitionAt(texts: Texts, { file, problem }: Found): number | undefined {
	const text = texts.get(file)!
	const headers = [...text.matchAll(/^(movement|breakdown|progression|limits|gym|lifter|block|plan|log|team|rules)\b[^\n]*\n/gm)]
	const header = headers.findLast(one => one.index <= problem.start)
	return header && excepting.test(header[0]) ? header.index + header[0].length : undefined
}
