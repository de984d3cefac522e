import { readdirSync } from 'node:fs'
import { expect, test } from 'vitest'
import type { Level } from '../../../language/model/vocabulary.ts'
import { rules } from '../../../language/rules/registry.ts'
import type { RuleArea } from '../../../language/rules/rule.ts'
import { pathOf } from './harness/markdown.ts'

/** The table of rules: what there is, where, and how loudly it speaks. */
const table: Readonly<Record<RuleArea, Readonly<Record<string, Level>>>> = {
	reading: {
		syntax: 'error',
		'unknown-name': 'error',
		'duplicate-name': 'error',
		'stated-twice': 'error',
		'bad-number': 'error',
		'bad-date': 'error',
		'mixed-units': 'warning',
		'unused-definition': 'hint',
		'unused-allow': 'warning',
		'old-spelling': 'hint',
		'replaces-built-in': 'hint',
	},
	shape: {
		'week-out-of-range': 'error',
		'week-without-work': 'warning',
		'week-stated-twice': 'error',
		'empty-session': 'warning',
		'day-clash': 'warning',
		'session-too-long': 'warning',
		'role-not-allowed': 'warning',
		'order-in-session': 'warning',
		'target-untrained': 'warning',
	},
	dose: {
		'frequency-cap': 'warning',
		'too-close': 'warning',
		'sets-outside-range': 'warning',
		'reps-outside-range': 'warning',
		'hold-outside-range': 'warning',
		'carry-outside-range': 'warning',
		'intensity-outside-range': 'warning',
		'heavy-exposures': 'warning',
		'heavy-back-to-back': 'warning',
		'load-jump': 'warning',
		'volume-jump': 'warning',
		'back-too-fast': 'warning',
		'no-lighter-week': 'info',
		'deload-not-lighter': 'warning',
		'beyond-rep-max': 'warning',
		'effort-disagrees': 'warning',
		'above-limit': 'warning',
		'lifts-outside-table': 'off',
		'muscle-volume-low': 'off',
		'muscle-volume-high': 'info',
	},
	breakdowns: {
		'missing-stability-work': 'warning',
		'missing-drive-work': 'warning',
		'past-position-limit': 'warning',
		'over-ceiling': 'error',
		'emphasis-mismatch': 'info',
		'unanswered-breakdown': 'info',
		'load-before-position': 'warning',
		'pain-caution': 'warning',
	},
	gates: {
		'gate-not-passed': 'error',
		'gate-to-earn': 'info',
		'gate-stale': 'info',
		'gate-order': 'info',
		'step-skipped': 'warning',
	},
	loads: {
		'no-best': 'error',
		'stale-best': 'info',
		'uncertain-estimate': 'info',
		'not-loadable': 'warning',
		'below-bar': 'warning',
		'beyond-supply': 'error',
		'no-equipment': 'error',
		'avoided-movement': 'error',
		'day-not-available': 'warning',
		'day-not-given': 'error',
	},
	calendar: {
		'plans-overlap': 'warning',
		'plan-gap': 'info',
		'meet-outside-plan': 'warning',
		'no-taper': 'info',
	},
	logs: {
		'not-in-plan': 'info',
		'missed-work': 'info',
		'new-best': 'info',
		'gate-earned': 'hint',
		'effort-drift': 'info',
		'broke-again': 'info',
	},
}

const expected = Object.entries(table).flatMap(([area, codes]) =>
	Object.entries(codes).map(([code, level]) => `${area}/${code} ${level}`),
)

test('the registry holds every code of the table, in its area and at its level, and no other', () => {
	expect(rules.map(rule => `${rule.area}/${rule.code} ${rule.level}`).sort()).toEqual(expected.sort())
})

test('every code is a plain kebab name and stands once', () => {
	for (const { code } of rules) expect(code).toMatch(/^[a-z]+(-[a-z]+)*$/)
	expect(new Set(rules.map(rule => rule.code)).size).toBe(rules.length)
})

test('every rule says in a line when it speaks, and where its limit comes from', () => {
	for (const { code, summary, source } of rules) {
		expect(summary, code).toMatch(/^[A-Z"].*\.$/)
		expect(source.trim(), code).not.toBe('')
	}
})

test('every page and every list of cases belongs to a rule', () => {
	const folder = pathOf('language/rules')
	const beside = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter(path => path.endsWith('.md'))
	const known = rules.flatMap(({ area, code }) => [`${area}/${code}.md`, `${area}/${code}.cases.md`])
	expect(beside.map(path => path.replaceAll('\\', '/')).sort()).toEqual(known.sort())
})
