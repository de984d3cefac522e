import type { Rule } from '../rule.ts'
import page from './bad-number.md'

export const badNumber: Rule = {
	code: 'bad-number',
	area: 'reading',
	level: 'error',
	summary:
		'A number cannot be meant: a decimal comma, no sets, an upside-down range, a percent over 150, a tempo digit out of place.',
	source: "the language's own rules",
	fix: 'safe',
	since: '0.1.0',
	page,
}
