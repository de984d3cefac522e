import type { Rule } from '../rule.ts'
import page from './old-spelling.md'

export const oldSpelling: Rule = {
	code: 'old-spelling',
	area: 'reading',
	level: 'hint',
	summary: 'A form reads, but the formatter writes it otherwise.',
	source: "the language's own rules",
	fix: 'safe',
	since: '0.1.0',
	page,
}
