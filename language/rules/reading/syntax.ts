import type { Rule } from '../rule.ts'
import page from './syntax.md'

export const syntax: Rule = {
	code: 'syntax',
	area: 'reading',
	level: 'error',
	summary: 'A text does not read.',
	source: "the language's own rules",
	fix: 'safe',
	since: '0.1.0',
	page,
}
