import type { Rule } from '../rule.ts'
import page from './unused-allow.md'

export const unusedAllow: Rule = {
	code: 'unused-allow',
	area: 'reading',
	level: 'warning',
	summary: 'An exception silences nothing.',
	source: "the language's own rules",
	fix: 'safe',
	since: '0.1.0',
	page,
}
