import type { Rule } from '../rule.ts'
import { emphasisMismatch } from './emphasis-mismatch.ts'
import { loadBeforePosition } from './load-before-position.ts'
import { missingDriveWork } from './missing-drive-work.ts'
import { missingStabilityWork } from './missing-stability-work.ts'
import { overCeiling } from './over-ceiling.ts'
import { painCaution } from './pain-caution.ts'
import { pastPositionLimit } from './past-position-limit.ts'
import { unansweredBreakdown } from './unanswered-breakdown.ts'

export const breakdownsRules: readonly Rule[] = [
	missingStabilityWork,
	missingDriveWork,
	pastPositionLimit,
	overCeiling,
	emphasisMismatch,
	unansweredBreakdown,
	loadBeforePosition,
	painCaution,
]
