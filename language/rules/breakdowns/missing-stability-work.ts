import type { Rule } from '../rule.ts'
import page from './missing-stability-work.md'
import { missingWorkChecks } from './missing-work.ts'

export const missingStabilityWork: Rule = {
	code: 'missing-stability-work',
	area: 'breakdowns',
	level: 'warning',
	summary: 'A training week falls short of what a breakdown needs whose weak link is stability.',
	source: 'the `needs` of the breakdown',
	fix: 'to confirm',
	since: '0.1.0',
	page,
	check: missingWorkChecks('stability'),
}
