import type { Rule } from '../rule.ts'
import page from './bad-date.md'

export const badDate: Rule = {
	code: 'bad-date',
	area: 'reading',
	level: 'error',
	summary: 'A date is not in the calendar, or an end lies before its start.',
	source: 'the calendar (ISO 8601)',
	fix: 'safe',
	since: '0.1.0',
	page,
}
