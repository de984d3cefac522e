import type { Rule } from '../rule.ts'
import { carryOutsideRange } from './carry-outside-range.ts'
import { frequencyCap } from './frequency-cap.ts'
import { holdOutsideRange } from './hold-outside-range.ts'
import { intensityOutsideRange } from './intensity-outside-range.ts'
import { repsOutsideRange } from './reps-outside-range.ts'
import { setsOutsideRange } from './sets-outside-range.ts'
import { tooClose } from './too-close.ts'

export const doseRules: readonly Rule[] = [
	frequencyCap,
	tooClose,
	setsOutsideRange,
	repsOutsideRange,
	holdOutsideRange,
	carryOutsideRange,
	intensityOutsideRange,
]
