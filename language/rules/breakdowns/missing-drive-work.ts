import type { Rule } from '../rule.ts'
import page from './missing-drive-work.md'
import { missingWorkChecks } from './missing-work.ts'

export const missingDriveWork: Rule = {
	code: 'missing-drive-work',
	area: 'breakdowns',
	level: 'warning',
	summary: 'A training week falls short of what a breakdown needs whose weak link is drive.',
	source: 'the `needs` of the breakdown',
	fix: 'to confirm',
	since: '0.1.0',
	page,
	check: missingWorkChecks('drive'),
}
