import type { Rule } from '../rule.ts'
import { muscleVolumeChecks } from './muscle-volume.ts'
import page from './muscle-volume-high.md'

export const muscleVolumeHigh: Rule = {
	code: 'muscle-volume-high',
	area: 'dose',
	level: 'info',
	summary: 'A training week has more hard sets of a muscle than the limits.',
	source: 'the `muscle sets … a week` of the limits',
	fix: 'none',
	since: '0.1.0',
	page,
	check: muscleVolumeChecks('high'),
}
