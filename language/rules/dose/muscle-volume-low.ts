import type { Rule } from '../rule.ts'
import { muscleVolumeChecks } from './muscle-volume.ts'
import page from './muscle-volume-low.md'

export const muscleVolumeLow: Rule = {
	code: 'muscle-volume-low',
	area: 'dose',
	level: 'off',
	summary: 'A training week has fewer hard sets of a muscle that it trains than the limits.',
	source: 'the `muscle sets … a week` of the limits',
	fix: 'none',
	since: '0.1.0',
	page,
	check: muscleVolumeChecks('low'),
}
